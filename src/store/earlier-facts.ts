import type { Fact } from '../core/book/facts.ts';

const FORECAST_BEFORE = { freezeAlerts: null, rain: [] };

/** Facts of a book that an earlier version wrote lack what was added since. */
export const completed = (fact: Fact): Fact =>
  fact.kind === 'forecast-issued' ? { ...FORECAST_BEFORE, ...fact } : fact;
