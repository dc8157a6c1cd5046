import type { Fact } from '../core/book/facts.ts';

const FORECAST_BEFORE = { freezeAlerts: null, rain: [] };
const PERSON_BEFORE = { shiftHours: null };

const withShift = (fact: Fact): Fact => {
  if (fact.kind !== 'list-changed' || fact.change.list !== 'people' || !('put' in fact.change)) return fact;
  const put = { ...PERSON_BEFORE, ...fact.change.put };
  return { ...fact, change: { list: 'people', put } };
};

/** Completes a fact written by an earlier version, which lacks fields that were added since. */
export const completed = (fact: Fact): Fact =>
  fact.kind === 'forecast-issued' ? { ...FORECAST_BEFORE, ...fact } : withShift(fact);
