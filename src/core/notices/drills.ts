import type { Fact } from '../book/facts.ts';
import { newestStep, openDrills, raisedByBot } from './notices.ts';
import type { EpochMs } from '../units.ts';
import { allClear } from '../weather/steps.ts';
import type { Harvest } from '../harvest/harvest.ts';

/** Drills end by themselves. */
export const endDrills = (harvest: Harvest, nowMs: EpochMs): { facts: Fact[]; wakeAtMs: EpochMs | null } => {
  const drills = openDrills(harvest).map((event) => newestStep(event).step);
  const over = drills.filter(({ resumeAtMs }) => resumeAtMs !== null && resumeAtMs <= nowMs);
  const ends = drills.flatMap(({ resumeAtMs }) =>
    resumeAtMs !== null && resumeAtMs > nowMs ? [resumeAtMs] : [],
  );
  return {
    facts: over.map((step) => raisedByBot(allClear(step, nowMs, 'drill'), null, nowMs)),
    wakeAtMs: ends.length > 0 ? Math.min(...ends) : null,
  };
};
