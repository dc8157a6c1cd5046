/** After the dig has stopped, whoever still reports from the field is told so: once, and by direct message. */
import { USUAL_FILL_MIN } from '../assumptions.ts';
import type { FactOf } from '../book/facts.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { fieldById } from '../roster.ts';
import type { StationId } from '../roster.ts';
import type { Tell } from '../telling.ts';
import { addMinutes } from '../units.ts';
import { hasBegun, isOrdered, newestStep, openNotices, orderOf } from './notices.ts';

const IN_THE_FIELD: readonly FactOf<'truck-reported'>['step'][] = ['at-field', 'loading', 'left-field'];

const stationOf = ({ roster, dugField }: Harvest, { field }: FactOf<'truck-reported'>): StationId | null => {
  const at = field ?? dugField;
  return (at === null ? undefined : fieldById(roster, at)?.station) ?? null;
};

/** A truck that was being filled when the dig stopped may leave the field after that. */
export const stillDiggingTells = (fact: FactOf<'truck-reported'>, harvest: Harvest): Tell[] => {
  const { by, atMs, heardMs, step: reported } = fact;
  if (by === null || !IN_THE_FIELD.includes(reported)) return [];
  const station = stationOf(harvest, fact);
  return openNotices(harvest).flatMap((event): Tell[] => {
    const { step } = newestStep(event);
    const holds = hasBegun(step, addMinutes(atMs, 0 - USUAL_FILL_MIN)) && isOrdered(event, heardMs);
    const isThere = step.place === null || station === null || step.place === station;
    if (!holds || !isThere || event.seen.has(by)) return [];
    const key = `still-digging:${step.event}:${orderOf(event)?.askedNumber ?? step.number}`;
    const telling = { tell: 'reminder' as const, step };
    return [{ audience: { to: 'person', person: by }, telling, urgent: true, key }];
  });
};
