/** What is learned about a station's line from the operation's own book: derived from the facts, never stored. */
import { MIN_PER_HOUR, MS_PER_MINUTE, minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { TRIPS_KEPT } from './assumptions.ts';
import { LEADS_MIN } from './model/calibration.ts';
import { forecastsOf, makeBlend } from './wait-forecast.ts';
import { FRESH_MIXTURE, mixtureFrom } from './model/mixture.ts';
import type { Forecasts, Mixture } from './model/mixture.ts';
import { waitOf } from './model/plain-rules.ts';
import { signOfDay } from './history.ts';
import type { LineHistory } from './history.ts';
import { learnDay, profileFrom } from './model/learn.ts';
import type { DayLearned } from './model/learn.ts';
import { asHeardBy, openedAfter } from './observations.ts';
import { defaultProfile } from './model/usual-day.ts';
import type { UsualDay } from './model/usual-day.ts';
import { tripsOf } from './model/trips.ts';
import type { Trip } from './model/trips.ts';
import type { ForecastWait, LineObservations, Visit } from './types.ts';

export interface LineKnowledge {
  /** Minutes from midnight to an hour before the first truck that ever joined; null = nothing is learned. */
  opensAfterMin: Minutes | null;
  profile: UsualDay;
  mixture: Mixture;
}

export const noKnowledge = (usualPilers: number): LineKnowledge => ({
  opensAfterMin: null,
  profile: defaultProfile(usualPilers),
  mixture: FRESH_MIXTURE,
});

export const forecastWith = ({ opensAfterMin, profile, mixture }: LineKnowledge): ForecastWait => {
  const forecast = makeBlend(profile, mixture);
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

/** One past day as learned, after the days before it. */
export interface LearnedDay {
  /** Equal for equal days up to and with this one. */
  sign: string;
  found: DayLearned;
  /** What was known on the morning of that day. */
  before: LineKnowledge;
}

/** The past days one after another; those of `known` that still hold are not learned again. */
export const learnDays = (
  { station, past, usualPilers }: LineHistory,
  known: readonly LearnedDay[] = [],
): LearnedDay[] => {
  const opensAfterMin = opensAfter(past);
  const days = past.map((day) => openedAfter(day, opensAfterMin, Infinity));
  const learned: LearnedDay[] = [];
  let sign = [station, usualPilers, opensAfterMin].join(' ');
  past.forEach((day, at) => {
    sign = `${sign};${signOfDay(day)}`;
    const old = known[at];
    if (old?.sign === sign) {
      learned.push(old);
      return;
    }
    const found = learned.map((one) => one.found);
    const profile = profileFrom(days.slice(0, at), found, usualPilers);
    const before = { ...noKnowledge(usualPilers), opensAfterMin, profile };
    learned.push({ sign, found: learnDay(days.slice(0, at + 1), found, usualPilers), before });
  });
  return learned;
};

/** The station's usual day, by its past days as learned. Not calibrated. */
export const usualDayFrom = (
  { past, usualPilers }: LineHistory,
  learned: readonly LearnedDay[],
): LineKnowledge => {
  const opensAfterMin = opensAfter(past);
  const days = past.map((day) => openedAfter(day, opensAfterMin, Infinity));
  const found = learned.map((one) => one.found);
  return { ...noKnowledge(usualPilers), opensAfterMin, profile: profileFrom(days, found, usualPilers) };
};

/** Learns the station's usual day. Takes seconds for a season. */
export const learnUsualDay = (history: LineHistory): LineKnowledge =>
  usualDayFrom(history, learnDays(history));

/** A trip of ours whose wait is known: it has a stated "in line" and a weighing. */
export interface Settled {
  observations: LineObservations;
  visit: Visit;
  /** As told. */
  joinedMs: EpochMs;
  /** With what is learned of how late that was. */
  waitMin: Minutes;
}

const settledOf = (observations: LineObservations, trip: Trip, profile: UsualDay): Settled[] => {
  const { visit } = trip;
  const waitMin = waitOf(trip, profile);
  return waitMin === null || visit.joinedMs === null
    ? []
    : [{ observations, visit, joinedMs: visit.joinedMs, waitMin }];
};

/** In the order in which their tickets were reported, newest last. */
export const settledTrips = ({ past, today }: LineHistory, profile: UsualDay): Settled[] =>
  [...past, today]
    .flatMap((observations) =>
      tripsOf(observations, observations.opening ?? 0, Infinity, profile).flatMap((trip) =>
        settledOf(observations, trip, profile),
      ),
    )
    .sort((a, b) => a.visit.heardMs - b.visit.heardMs || a.joinedMs - b.joinedMs)
    .slice(-TRIPS_KEPT);

/** What was known of the trip's line `leadMin` before it joined, without the trip itself. */
export const knownBefore = (
  { observations, visit, joinedMs }: Settled,
  leadMin: Minutes,
): { nowMs: EpochMs; seen: LineObservations } => {
  const nowMs = joinedMs - leadMin * MS_PER_MINUTE;
  const others = observations.visits.filter((other) => other !== visit);
  return { nowMs, seen: asHeardBy({ ...observations, visits: others }, nowMs) };
};

/** What each rule would have said of that trip `leadMin` before it joined; null = no usable evidence. */
export const forecastsBefore = (
  trip: Settled,
  leadMin: Minutes,
  { opensAfterMin, profile }: LineKnowledge,
): Forecasts | null => {
  const { nowMs, seen } = knownBefore(trip, leadMin);
  return forecastsOf(profile, openedAfter(seen, opensAfterMin, nowMs), { nowMs, arriveInMin: leadMin });
};

/** `before` gives the forecasts of one trip and lead; it is passed in so that the caller can cache what it computed. */
export const earnedOn = (
  trips: readonly Settled[],
  before: (trip: Settled, leadMin: Minutes) => Forecasts | null,
): Mixture =>
  trips.reduce(
    (mixture, trip) =>
      LEADS_MIN.reduce((learned, leadMin) => {
        const forecasts = before(trip, leadMin);
        return forecasts === null ? learned : mixtureFrom(learned, leadMin, forecasts, trip.waitMin);
      }, mixture),
    FRESH_MIXTURE,
  );
