/**
 * What a crew can tell without a model, by its own waits alone: the last one, those of the last hour, and the usual one
 * of the hour (delay-history predictors: Ibrahim & Whitt, MSOM 11(3), 2009). Each with a range to begin with.
 */
import { Z_80, mean } from '../../statistics.ts';
import type { Minutes } from '../../units.ts';
import { FIRST_ESTIMATE_SD, RECENT_WAITS_MIN, UNSURE_MIN } from '../assumptions.ts';
import type { WaitInterval } from './calibration.ts';
import { lateMinOf, meanHabitMin } from './lateness.ts';
import { usualAt } from './usual-day.ts';
import type { UsualDay } from './usual-day.ts';
import type { Trip } from './trips.ts';

export const PLAIN_RULES = ['last-wait', 'last-hour', 'usual-wait'] as const;
export type PlainRule = (typeof PLAIN_RULES)[number];
export type PlainForecasts = Readonly<Partial<Record<PlainRule, WaitInterval>>>;

interface KnownWait {
  weighedMin: Minutes;
  waitMin: Minutes;
}

/** The wait of a trip with a stated join and a sure weighing, with what is learned of how late "in line" is told. */
export const waitOf = (
  { joinedMin, weighedMin, sdMin, telling }: Trip,
  { late }: UsualDay,
): Minutes | null => {
  if (joinedMin === null || weighedMin === null || telling === 'inferred' || sdMin > UNSURE_MIN) return null;
  const reportedMin = Math.max(0, weighedMin - joinedMin);
  return reportedMin + Math.min(lateMinOf(telling, meanHabitMin(late)), reportedMin);
};

const around = (medianMin: Minutes, olderMin: Minutes): WaitInterval => {
  const { leastMin, ofMedian, variancePerMin } = FIRST_ESTIMATE_SD;
  const sdMin = Math.sqrt(leastMin ** 2 + (ofMedian * medianMin) ** 2 + variancePerMin * olderMin);
  return {
    lowMin: Math.max(0, medianMin - Z_80 * sdMin),
    medianMin,
    highMin: medianMin + Z_80 * sdMin,
  };
};

/** Nine tickets in ten are told within so many times the mean. */
const TOLD_BY = 2.3;

/** How long the first of ours that stands there has waited at least; 0 = none does. */
const standsMin = (trips: readonly Trip[], { yardMin, tickets }: UsualDay, nowMin: Minutes): Minutes =>
  Math.max(
    0,
    ...trips
      .filter(({ pending }) => pending)
      .map(({ joinedMin }) => nowMin - (joinedMin ?? nowMin) - yardMin - TOLD_BY * tickets.toldAfterMin),
  );

/** `trips` as known now. A rule that has nothing to go by is left out. */
export const plainForecasts = (
  trips: readonly Trip[],
  profile: UsualDay,
  nowMin: Minutes,
  arriveInMin: Minutes,
): PlainForecasts => {
  const waits = trips
    .flatMap((trip): KnownWait[] => {
      const waitMin = waitOf(trip, profile);
      return waitMin === null || trip.weighedMin === null ? [] : [{ weighedMin: trip.weighedMin, waitMin }];
    })
    .sort((a, b) => a.weighedMin - b.weighedMin);
  const usual = usualAt(profile, nowMin + arriveInMin);
  const ofUsual = usual && { 'usual-wait': usual };
  const last = waits.at(-1);
  if (last === undefined) return { ...ofUsual };
  const olderMin = nowMin - last.weighedMin + arriveInMin;
  const soFarMin = standsMin(trips, profile, nowMin);
  const recent = waits.filter(({ weighedMin }) => weighedMin > last.weighedMin - RECENT_WAITS_MIN);
  return {
    'last-wait': around(Math.max(last.waitMin, soFarMin), olderMin),
    'last-hour': around(mean(recent.map(({ waitMin }) => waitMin)), olderMin),
    ...ofUsual,
  };
};
