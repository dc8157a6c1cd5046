import type { Fact, Happening, HaulStep } from '../../src/core/book/facts.ts';
import { at, fact, step, ticket } from './given.ts';

const haulSteps: Record<HaulStep, Fact> = {
  'at-field': step('3', 'at-field', '10:15', { field: 'north-40' }),
  loading: step('3', 'loading', '10:15'),
  'left-field': step('3', 'left-field', '10:15'),
  'joined-line': step('3', 'joined-line', '10:15'),
  'first-weighed': step('3', 'first-weighed', '10:15', { grossLb: 79_840 }),
  dumped: step('3', 'dumped', '10:15'),
  returning: step('3', 'returning', '10:15'),
  parked: step('3', 'parked', '10:15'),
  down: step('3', 'down', '10:15', { words: 'flat' }),
  up: step('3', 'up', '10:15'),
};

const at1015 = (happening: Happening): Fact => fact(happening, '10:15');
const place = { station: 'north-station' } as const;

/** Facts that a receipt can hold; none of those that have a telling of their own. */
export const receiptFacts: readonly Fact[] = [
  ...Object.values(haulSteps),
  step('3', 'first-weighed', '10:15'),
  step('3', 'left-field', '10:15', { field: 'north-40' }),
  ticket('3', '10:40', 50_520, { serial: '048213', grossLb: 79_840, tareLb: 29_320, field: 'north-40' }),
  ticket('3', '10:40', 50_520),
  ...[0, 1, 14].map((ahead) => at1015({ kind: 'line-seen', ...place, ahead, truck: '3' })),
  ...[0, 1, 2].map((open) => at1015({ kind: 'pilers-seen', ...place, open, down: null })),
  ...[0, 1, 2].map((down) => at1015({ kind: 'pilers-seen', ...place, open: null, down })),
  at1015({ kind: 'station-reported', ...place, open: true, untilMs: null }),
  at1015({ kind: 'station-reported', ...place, open: false, untilMs: null }),
  at1015({ kind: 'station-reported', ...place, open: false, untilMs: at('18:00') }),
  at1015({ kind: 'root-measured', station: null, field: 'north-40', temperatureF: 54.5 }),
  at1015({ kind: 'root-measured', ...place, field: null, temperatureF: 55 }),
  at1015({ kind: 'root-measured', station: null, field: null, temperatureF: 55 }),
  at1015({ kind: 'crown-checked', field: 'north-40', sound: true }),
  at1015({ kind: 'crown-checked', field: null, sound: false }),
  at1015({ kind: 'field-dug', field: 'north-40' }),
  at1015({ kind: 'truck-taken', person: 'ana', truck: '4' }),
  at1015({ kind: 'shift-told', person: 'ana', off: true, noticesWhenOff: null }),
  at1015({ kind: 'shift-told', person: 'ana', off: false, noticesWhenOff: null }),
  at1015({ kind: 'shift-told', person: 'ana', off: null, noticesWhenOff: true }),
  at1015({ kind: 'shift-told', person: 'ana', off: null, noticesWhenOff: false }),
];
