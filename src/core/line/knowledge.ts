/** What is learned about a station's line from the operation's own book: derived from the facts, never stored. */
import { MIN_PER_HOUR, MS_PER_MINUTE, minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { IN_LINE_LATE_MIN, TRIPS_KEPT, UNSURE_MIN } from './assumptions.ts';
import { FEWEST_SCORES, FRESH_CALIBRATION, LEADS_MIN, learnedFrom } from './model/calibration.ts';
import type { Calibration, WaitInterval } from './model/calibration.ts';
import { makeForecast } from './wait-forecast.ts';
import type { LineHistory } from './history.ts';
import { learnProfile } from './model/learn.ts';
import { asHeardBy, openedAfter } from './observations.ts';
import { defaultProfile } from './model/usual-day.ts';
import type { UsualDay } from './model/usual-day.ts';
import { tripsOf } from './model/timeline.ts';
import type { ForecastWait, LineObservations, Visit } from './types.ts';

export interface LineKnowledge {
  /** Minutes from midnight to an hour before the first truck that ever joined; null = nothing is learned. */
  opensAfterMin: Minutes | null;
  profile: UsualDay;
  calibration: Calibration;
}

export const noKnowledge = (usualPilers: number): LineKnowledge => ({
  opensAfterMin: null,
  profile: defaultProfile(usualPilers),
  calibration: FRESH_CALIBRATION,
});

export const forecastWith = ({ opensAfterMin, profile, calibration }: LineKnowledge): ForecastWait => {
  const forecast = makeForecast(profile, calibration);
  return (observations, ask) => forecast(openedAfter(observations, opensAfterMin, ask.nowMs), ask);
};

const opensAfter = (past: readonly LineObservations[]): Minutes | null => {
  const seen = past.flatMap(({ visits, opening }) =>
    visits.flatMap(({ joinedMs, firstWeighedMs, secondWeighedMs }) => {
      const atMs = joinedMs ?? firstWeighedMs ?? secondWeighedMs;
      return atMs === null || opening === null ? [] : minutesBetween(opening, atMs);
    }),
  );
  if (seen.length === 0) return null;
  const hour = Math.floor(Math.min(...seen) / MIN_PER_HOUR) * MIN_PER_HOUR;
  return Math.max(0, hour - MIN_PER_HOUR);
};

/** Learns the station's usual day. Takes seconds for a season. */
export const learnUsualDay = ({ past, usualPilers }: LineHistory): LineKnowledge => {
  const fresh = noKnowledge(usualPilers);
  if (past.length === 0) return fresh;
  const opensAfterMin = opensAfter(past);
  const days = past.map((day) => openedAfter(day, opensAfterMin, Infinity));
  return { ...fresh, opensAfterMin, profile: learnProfile(days, usualPilers) };
};

/** A trip of ours whose wait is known: it has a stated "in line" and a weighing. */
export interface Settled {
  observations: LineObservations;
  visit: Visit;
  /** Corrected for "in line" being reported late. */
  joinedMs: EpochMs;
  waitMin: Minutes;
}

const settledOf = (observations: LineObservations, visit: Visit, profile: UsualDay): Settled[] => {
  const { opening } = observations;
  const { joinedMs, joinedStated, heardMs } = visit;
  if (opening === null || joinedMs === null || !joinedStated) return [];
  const [trip] = tripsOf({ ...observations, visits: [visit] }, opening, heardMs, profile);
  if (trip === undefined || trip.joinedMin === null || trip.weighedMin === null || trip.sdMin > UNSURE_MIN)
    return [];
  const reportedMin = Math.max(0, trip.weighedMin - trip.joinedMin);
  const lateMin = Math.min(IN_LINE_LATE_MIN, reportedMin);
  return [
    { observations, visit, joinedMs: joinedMs - lateMin * MS_PER_MINUTE, waitMin: reportedMin + lateMin },
  ];
};

/** In the order in which their tickets were reported, newest last. */
export const settledTrips = ({ past, today }: LineHistory, profile: UsualDay): Settled[] =>
  [...past, today]
    .flatMap((observations) =>
      observations.visits.flatMap((visit) => settledOf(observations, visit, profile)),
    )
    .sort((a, b) => a.visit.heardMs - b.visit.heardMs || a.joinedMs - b.joinedMs)
    .slice(-TRIPS_KEPT);

/** The forecast for that trip as made `leadMin` before it joined, without the trip itself; null = no usable evidence. */
export const forecastBefore = (
  { observations, visit, joinedMs }: Settled,
  leadMin: Minutes,
  { opensAfterMin, profile }: LineKnowledge,
): WaitInterval | null => {
  const nowMs = joinedMs - leadMin * MS_PER_MINUTE;
  const others = observations.visits.filter((other) => other !== visit);
  const seen = asHeardBy({ ...observations, visits: others }, nowMs);
  const forecast = forecastWith({ opensAfterMin, profile, calibration: FRESH_CALIBRATION });
  const told = forecast(seen, { nowMs, arriveInMin: leadMin });
  return told.known ? { lowMin: told.lowMin, medianMin: told.medianMin, highMin: told.highMin } : null;
};

/** `before` gives the forecast of one trip and lead; it is passed in so that the caller can cache what it computed. */
export const calibrateOn = (
  trips: readonly Settled[],
  before: (trip: Settled, leadMin: Minutes) => WaitInterval | null,
): Calibration => {
  if (trips.length < FEWEST_SCORES) return FRESH_CALIBRATION;
  return trips.reduce(
    (calibration, trip) =>
      LEADS_MIN.reduce((learned, leadMin) => {
        const raw = before(trip, leadMin);
        return raw === null ? learned : learnedFrom(learned, leadMin, raw, trip.waitMin);
      }, calibration),
    FRESH_CALIBRATION,
  );
};
