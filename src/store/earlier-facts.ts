import type { Fact } from '../core/book/facts.ts';

const FORECAST_BEFORE = { freezeAlerts: null, rain: [] };

/** Completes a fact written by an earlier version, which lacks fields that were added since. */
export const completed = (fact: Fact): Fact =>
  fact.kind === 'forecast-issued' ? { ...FORECAST_BEFORE, ...fact } : fact;
