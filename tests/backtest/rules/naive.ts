/** Rules of thumb over the operation's own waits (names: Ibrahim & Whitt, MSOM 11(3), 2009). */
import type { LineObservations } from '../../../src/core/line/types.ts';
import { minutesBetween } from '../../../src/core/units.ts';
import { mean } from '../scoring.ts';

export interface SeenWait {
  joinedMin: number;
  weighedMin: number;
  waitMin: number;
}

/** "In line" is told this much late on average. */
const LATE_MIN = 4;

/** The wait between a late "in line" and the first weight, corrected; none where it came after the weighing. */
export const correctedWait = (stampMin: number, weighedMin: number): number => {
  const heardMin = Math.max(0, weighedMin - stampMin);
  return heardMin + Math.min(LATE_MIN, heardMin);
};

export const seenWaits = ({ visits, opening }: LineObservations): SeenWait[] =>
  visits
    .flatMap(({ joinedMs, firstWeighedMs }) => {
      if (joinedMs === null || firstWeighedMs === null) return [];
      const weighedMin = minutesBetween(opening ?? 0, firstWeighedMs);
      const waitMin = correctedWait(minutesBetween(opening ?? 0, joinedMs), weighedMin);
      return [{ joinedMin: weighedMin - waitMin, weighedMin, waitMin }];
    })
    .sort((a, b) => a.weighedMin - b.weighedMin);

export type NaiveRule = (waits: readonly SeenWait[], nowMin: number, usualMin: number) => number;

export const lastObserved: NaiveRule = (waits, _now, usualMin) => waits.at(-1)?.waitMin ?? usualMin;

export const meanOfLastHour: NaiveRule = (waits, nowMin, usualMin) => {
  const recent = waits.filter(({ weighedMin }) => nowMin - weighedMin <= 60);
  return recent.length > 0
    ? mean(recent.map(({ waitMin }) => waitMin))
    : lastObserved(waits, nowMin, usualMin);
};

const EWMA_KEEP = 0.6;

export const ewma: NaiveRule = (waits, _now, usualMin) =>
  waits.reduce((level, { waitMin }) => EWMA_KEEP * level + (1 - EWMA_KEEP) * waitMin, usualMin);

/** Mean wait of the past days by two hours since opening, else of all. */
export const usualWaits = (past: readonly SeenWait[]): ((atMin: number) => number) => {
  const all = past.length > 0 ? mean(past.map(({ waitMin }) => waitMin)) : 15;
  const blocks = Array.from({ length: 12 }, (_, block) => {
    const waits = past.filter(({ joinedMin }) => Math.floor(Math.max(0, joinedMin) / 120) === block);
    return waits.length >= 5 ? mean(waits.map(({ waitMin }) => waitMin)) : all;
  });
  return (atMin) => blocks[Math.floor(Math.max(0, atMin) / 120)] ?? all;
};
