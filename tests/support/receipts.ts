import type { Fact, FactOf, Happening, HaulStep } from '../../src/core/book/facts.ts';
import type { FactWithLine } from '../../src/core/book/kinds.ts';
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

/** What a receipt can repeat; the type makes it complete. */
const facts: Record<FactWithLine['kind'], readonly Fact[]> = {
  'truck-reported': [
    ...Object.values(haulSteps),
    step('3', 'first-weighed', '10:15'),
    step('3', 'parked', '10:15', { untilMs: at('13:00') }),
    step('3', 'left-field', '10:15', { field: 'north-40' }),
  ],
  'ticket-booked': [
    ticket('3', '10:40', 50_520, { serial: '048213', grossLb: 79_840, tareLb: 29_320, field: 'north-40' }),
    ticket('3', '10:40', 50_520),
  ],
  'line-seen': [0, 1, 14].map((ahead) => at1015({ kind: 'line-seen', ...place, ahead, truck: '3' })),
  'pilers-seen': [
    ...[0, 1, 2].map((open) => at1015({ kind: 'pilers-seen', ...place, open, down: null })),
    ...[0, 1, 2].map((down) => at1015({ kind: 'pilers-seen', ...place, open: null, down })),
  ],
  'station-reported': [
    at1015({ kind: 'station-reported', ...place, open: true, untilMs: null }),
    at1015({ kind: 'station-reported', ...place, open: false, untilMs: null }),
    at1015({ kind: 'station-reported', ...place, open: false, untilMs: at('18:00') }),
  ],
  'loads-turned-away': [
    at1015({ kind: 'loads-turned-away', ...place, truck: '3', words: 'too warm' }),
    at1015({ kind: 'loads-turned-away', ...place, truck: null, words: null }),
  ],
  'root-measured': [
    at1015({ kind: 'root-measured', station: null, field: 'north-40', temperatureF: 54.5 }),
    at1015({ kind: 'root-measured', ...place, field: null, temperatureF: 55 }),
    at1015({ kind: 'root-measured', station: null, field: null, temperatureF: 55 }),
  ],
  'crown-checked': [
    at1015({ kind: 'crown-checked', field: 'north-40', sound: true }),
    at1015({ kind: 'crown-checked', field: null, sound: false }),
  ],
  'field-dug': [at1015({ kind: 'field-dug', field: 'north-40' })],
  'acres-told': (['digger', 'topper'] as const).map((machine) =>
    at1015({ kind: 'acres-told', machine, field: 'north-40', acres: 26.5 }),
  ),
  'machine-reported': (['digger', 'topper'] as const).flatMap((machine) => [
    at1015({ kind: 'machine-reported', machine, runs: true, untilMs: null, words: null }),
    at1015({ kind: 'machine-reported', machine, runs: false, untilMs: null, words: 'chain' }),
    at1015({ kind: 'machine-reported', machine, runs: false, untilMs: at('11:30'), words: null }),
  ]),
  'word-taught': [
    at1015({ kind: 'word-taught', said: 'rollin', means: 'full' }),
    at1015({ kind: 'word-taught', said: 'rollin', means: null }),
  ],
  'truck-taken': [at1015({ kind: 'truck-taken', person: 'ana', truck: '4' })],
  'shift-told': [
    at1015({ kind: 'shift-told', person: 'ana', off: true, noticesWhenOff: null }),
    at1015({ kind: 'shift-told', person: 'ana', off: false, noticesWhenOff: null }),
    at1015({ kind: 'shift-told', person: 'ana', off: null, noticesWhenOff: true }),
    at1015({ kind: 'shift-told', person: 'ana', off: null, noticesWhenOff: false }),
  ],
  'entry-corrected': [
    at1015({
      kind: 'entry-corrected',
      target: { by: 'latest', person: 'ana', truck: null },
      set: {
        ...{ truck: '4', field: null, atMs: null, grossLb: null, tareLb: null, netLb: null },
        ...{ serial: '48213', count: { value: 6, of: 'line' } },
      },
    }),
  ],
};

export const receiptFacts: readonly Fact[] = Object.values(facts).flat();

/** Of one kind alone. */
export const receiptsOf = <K extends FactWithLine['kind']>(kind: K): FactOf<K>[] =>
  receiptFacts.filter((one): one is FactOf<K> => one.kind === kind);
