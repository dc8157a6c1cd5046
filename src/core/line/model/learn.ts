/**
 * Learns a station's usual day from past days of the operation's own tickets, one after another: each day is explained
 * once, with what was known before it, so that a new day only adds its own.
 */
import { minutesBetween } from '../../units.ts';
import type { Minutes } from '../../units.ts';
import { mean, quantile } from '../../statistics.ts';
import { MIN_PER_TRUCK } from '../assumptions.ts';
import { filterOf } from '../wait-forecast.ts';
import { countsOf, hoursOn, learnArrivals, ticketsOf } from './arrivals.ts';
import { HABITS_MIN, likelyHabits } from './lateness.ts';
import { learnNoise } from './noise.ts';
import { heardAtOnce } from '../observations.ts';
import { BIN_MIN, DAY_BINS, TICKETS, USUAL_BLOCK_MIN, defaultProfile } from './usual-day.ts';
import type { Filter } from './filter.ts';
import type { Particle } from './particle.ts';
import type { TicketHabit, UsualDay, UsualWait } from './usual-day.ts';
import { timelineOf } from './timeline.ts';
import { lastHeardMs, tripsOf } from './trips.ts';
import type { LineObservations } from '../types.ts';

/** Fewer waits, or times in the yard, are not learned from. Grade: chosen. */
const FEWEST_WAITS = 8;
/** What the filter found on one day, started from what was known before it. */
export interface DayLearned {
  /** Log-likelihood of the day, by `RETURNING` and by `HABITS_MIN`. */
  returning: readonly number[];
  habits: readonly number[];
  /** Log of the minutes per truck that the day alone shows, and how sure that is (1 / variance). */
  pace: { logMin: number; precision: number };
  open: readonly number[];
  line: readonly number[];
}

/** `days` in order of time, each with everything that was heard of it, and what was found on each. */
export const profileFrom = (
  heard: readonly LineObservations[],
  found: readonly DayLearned[],
  usualPilers: number,
): UsualDay => {
  const fresh = defaultProfile(usualPilers);
  if (heard.length === 0) return fresh;
  const days = heard.map(heardAtOnce);
  const counts = countsOf(days, fresh);
  const arrivalsPerMin = learnArrivals(counts, hoursOn(ticketsOf(days, fresh)), fresh, days.length);
  return {
    ...fresh,
    ...learnNoise(counts, arrivalsPerMin),
    arrivalsPerMin,
    yardMin: learnYard(days) ?? fresh.yardMin,
    tickets: learnTickets(heard),
    usual: learnUsual(days, fresh),
    days: days.length,
    ...explainedBy(found, fresh),
  };
};

/** What the newest of `days` shows, `found` being what the earlier ones did. */
export const learnDay = (
  days: readonly LineObservations[],
  found: readonly DayLearned[],
  usualPilers: number,
): DayLearned => dayLearned(days.slice(-1).map(heardAtOnce), profileFrom(days, found, usualPilers));

/** The usual day after all of `days`, learned one after another. */
export const learnProfile = (days: readonly LineObservations[], usualPilers: number): UsualDay => {
  const found: DayLearned[] = [];
  days.forEach((_, at) => found.push(learnDay(days.slice(0, at + 1), found, usualPilers)));
  return profileFrom(days, found, usualPilers);
};

/** Trips that the usual habit counts for. Grade: chosen. */
const HABIT_PRIOR = 20;
/** A ticket that is told later is as good as lost while the line is asked for. Grade: chosen. */
const TOLD_IN_TIME_MIN: Minutes = 60;

/** From the days as they were heard. */
const learnTickets = (days: readonly LineObservations[]): TicketHabit => {
  const joined = days.flatMap(({ visits }) =>
    visits.filter(({ truck, joinedMs }) => truck !== null && joinedMs !== null),
  );
  const told = joined.filter(
    ({ firstWeighedMs, dumpedMs, secondWeighedMs }) =>
      (firstWeighedMs ?? dumpedMs ?? secondWeighedMs) !== null,
  );
  const afterMin = told.flatMap(({ secondWeighedMs, secondIsSending, heardMs }) =>
    secondWeighedMs === null || secondIsSending ? [] : Math.max(0, minutesBetween(secondWeighedMs, heardMs)),
  );
  const toldAfterMin = afterMin.filter((min) => min <= TOLD_IN_TIME_MIN);
  const lost = joined.length - told.length + afterMin.length - toldAfterMin.length;
  return {
    lostShare: (lost + HABIT_PRIOR * TICKETS.lostShare) / (joined.length + HABIT_PRIOR),
    toldAfterMin:
      (toldAfterMin.reduce((a, b) => a + b, 0) + HABIT_PRIOR * TICKETS.toldAfterMin) /
      (toldAfterMin.length + HABIT_PRIOR),
  };
};

const learnYard = (days: readonly LineObservations[]): Minutes | null => {
  const yards = days
    .flatMap(({ visits }) => visits)
    .flatMap(({ firstWeighedMs, secondWeighedMs }) =>
      firstWeighedMs === null || secondWeighedMs === null
        ? []
        : minutesBetween(firstWeighedMs, secondWeighedMs),
    )
    .sort((a, b) => a - b);
  return yards.length < FEWEST_WAITS ? null : quantile(yards, 0.5);
};

const learnUsual = (days: readonly LineObservations[], profile: UsualDay): (UsualWait | null)[] => {
  const waits = days.flatMap((seen) => {
    if (seen.opening === null) return [];
    return tripsOf(seen, seen.opening, lastHeardMs(seen), profile).flatMap(({ joinedMin, weighedMin }) =>
      joinedMin === null || weighedMin === null ? [] : { joinedMin, waitMin: weighedMin - joinedMin },
    );
  });
  const ofAll = waits.map(({ waitMin }) => waitMin).sort((a, b) => a - b);
  // Of hours of which little was seen, the usual wait of the whole day is known.
  return Array.from({ length: (DAY_BINS * BIN_MIN) / USUAL_BLOCK_MIN }, (_, block) => {
    const of = waits
      .filter(({ joinedMin }) => Math.floor(joinedMin / USUAL_BLOCK_MIN) === block)
      .map(({ waitMin }) => waitMin)
      .sort((a, b) => a - b);
    return usualOf(of.length < FEWEST_WAITS ? ofAll : of);
  });
};

/** The top is never that of no wait at all: half a truck's time more than the middle, at least. */
const usualOf = (sorted: readonly Minutes[]): UsualWait | null => {
  if (sorted.length < FEWEST_WAITS) return null;
  const medianMin = quantile(sorted, 0.5);
  const highMin = Math.max(quantile(sorted, 0.9), medianMin + MIN_PER_TRUCK / 2);
  return { medianMin, lowMin: quantile(sorted, 0.1), highMin };
};

const runOf = (seen: LineObservations, profile: UsualDay): Filter => {
  const timeline = timelineOf(seen, profile, lastHeardMs(seen));
  return filterOf(seen, profile, timeline, minutesBetween(timeline.openingMs, lastHeardMs(seen)));
};

/** Trucks that come by themselves, or go round in fleets of 50, 20, 10. Grade: chosen. */
const RETURNING = [0, 0.02, 0.05, 0.1] as const;

/** A day that moves the pace no nearer to itself than this shows nothing of it. Grade: chosen. */
const LEAST_GAIN = 0.1;

/** What the day alone says, given what was supposed before it and what it came to. */
const paceOf = (paths: readonly Particle[], before: { logMin: number; sd: number }): DayLearned['pace'] => {
  const logs = paths.map(({ perPilerMin }) => -Math.log(perPilerMin));
  const after = mean(logs);
  const variance = Math.max(1e-4, mean(logs.map((log) => (log - after) ** 2)));
  const gain = 1 - variance / before.sd ** 2;
  if (gain < LEAST_GAIN) return { logMin: before.logMin, precision: 0 };
  return { logMin: before.logMin + (after - before.logMin) / gain, precision: gain / variance };
};

const dayLearned = ([seen]: readonly LineObservations[], profile: UsualDay): DayLearned => {
  if (seen === undefined) return NOTHING_LEARNED;
  const { paths } = runOf(seen, profile);
  const byBin = (of: (particle: Particle, bin: number) => number): number[] =>
    Array.from({ length: DAY_BINS }, (_, bin) => mean(paths.map((particle) => of(particle, bin))));
  return {
    returning: RETURNING.map((returning) => runOf(seen, { ...profile, returning }).evidence),
    habits: HABITS_MIN.map((_, at) => {
      const late = HABITS_MIN.map((__, other) => (other === at ? 1 : 0));
      return runOf(seen, { ...profile, late }).evidence;
    }),
    pace: paceOf(paths, { logMin: Math.log(profile.minPerTruck), sd: profile.paceSd }),
    open: byBin((particle, bin) => Math.max(1, particle.openThen[bin] ?? 1)),
    line: byBin((particle, bin) => particle.lineThen[bin] ?? 0),
  };
};

const NOTHING_LEARNED: DayLearned = {
  returning: [],
  habits: [],
  pace: { logMin: 0, precision: 0 },
  open: [],
  line: [],
};

type Explained = Pick<UsualDay, 'minPerTruck' | 'paceSd' | 'pilersOpen' | 'usualLine' | 'returning' | 'late'>;

/** A day counts half as much as one that came so many days later: fleets and crews change. Grade: chosen. */
const HALF_LIFE_DAYS = 10;
/** Log-scatter of the pace from day to day. Grade: chosen. */
const DAY_PACE_SD = 0.13;

const explainedBy = (found: readonly DayLearned[], fresh: UsualDay): Partial<Explained> => {
  if (found.length === 0) return {};
  const weights = found.map((_, at) => 0.5 ** ((found.length - 1 - at) / HALF_LIFE_DAYS));
  const sum = weights.reduce((a, b) => a + b, 0);
  const byBin = (of: (day: DayLearned) => readonly number[]): number[] =>
    Array.from(
      { length: DAY_BINS },
      (_, bin) => found.reduce((total, day, at) => total + (weights[at] ?? 0) * (of(day)[bin] ?? 0), 0) / sum,
    );
  return {
    ...usualPace(found, fresh),
    pilersOpen: byBin(({ open }) => open),
    usualLine: byBin(({ line }) => line),
    returning: likeliestReturning(found),
    late: likelyHabits(found.map(({ habits }) => habits)),
  };
};

const usualPace = (
  found: readonly DayLearned[],
  fresh: UsualDay,
): Pick<UsualDay, 'minPerTruck' | 'paceSd'> => {
  const prior = fresh.paceSd ** -2;
  const days = found.map(({ pace }) => ({
    ...pace,
    weight: pace.precision === 0 ? 0 : 1 / (DAY_PACE_SD ** 2 + 1 / pace.precision),
  }));
  const precision = days.reduce((total, { weight }) => total + weight, prior);
  const logMin =
    days.reduce((total, day) => total + day.weight * day.logMin, prior * Math.log(fresh.minPerTruck)) /
    precision;
  return { minPerTruck: Math.exp(logMin), paceSd: Math.hypot(DAY_PACE_SD, 1 / Math.sqrt(precision)) };
};

const likeliestReturning = (found: readonly DayLearned[]): number => {
  const evidence = RETURNING.map((_, at) => mean(found.map(({ returning }) => returning[at] ?? 0)));
  return RETURNING[evidence.indexOf(Math.max(...evidence))] ?? 0;
};
