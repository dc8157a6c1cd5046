/** The wait forecast: paths of the day, scored by what the crew reported, and run on until the truck arrives. */
import { quantile } from '../statistics.ts';
import { MIN_PER_HOUR, MS_PER_MINUTE, addMinutes, minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { LONGEST_WAIT_MIN, OLDEST_USABLE_LEARNED_MIN, OLDEST_USABLE_MIN } from './assumptions.ts';
import { calibrated } from './model/calibration.ts';
import type { Calibration, WaitInterval } from './model/calibration.ts';
import { mixed } from './model/mixture.ts';
import type { Forecasts, Mixture } from './model/mixture.ts';
import { plainForecasts } from './model/plain-rules.ts';
import { waitCourses } from './model/courses.ts';
import { newFilter, runFilter, stepAt } from './model/filter.ts';
import type { Filter } from './model/filter.ts';
import { STEP_MIN, serve, stepParticle, turnPilers } from './model/particle.ts';
import type { Particle, SharedStep } from './model/particle.ts';
import { usualAt } from './model/usual-day.ts';
import type { UsualDay } from './model/usual-day.ts';
import { randomFrom, seedOf } from './model/random.ts';
import { timelineOf } from './model/timeline.ts';
import type { Timeline } from './model/timeline.ts';
import type { Evidence, ForecastWait, LineObservations, WaitAsk, WaitForecast } from './types.ts';

/** Paths that are run. Grade: chosen, for an answer within a fraction of a second. */
const PATHS = 360;

/** The forecast of the filter alone. */
export const makeForecast = (profile: UsualDay, calibration: Calibration): ForecastWait =>
  forecaster(profile, ({ filter }, arriveInMin) => calibrated(calibration, arriveInMin, filter));

/** The filter's forecast, blended with those of the plain rules. */
export const makeBlend = (profile: UsualDay, mixture: Mixture): ForecastWait =>
  forecaster(
    profile,
    (forecasts, arriveInMin, isToldDirectly) =>
      mixed(mixture, arriveInMin, isToldDirectly ? { filter: forecasts.filter } : forecasts) ??
      forecasts.filter,
  );

type AllForecasts = Forecasts & { filter: WaitInterval };

/** What each rule says by itself; null = no usable evidence. */
export const forecastsOf = (
  profile: UsualDay,
  observations: LineObservations,
  { nowMs, arriveInMin }: WaitAsk,
): AllForecasts | null => {
  const timeline = timelineOf(observations, profile, nowMs);
  const nowMin = minutesBetween(timeline.openingMs, nowMs);
  if (!usable(timeline, profile, nowMin)) return null;
  const runs = runOn(filterOf(observations, profile, timeline, nowMin), arriveInMin);
  return withPlain(runs, profile, timeline, nowMin, arriveInMin);
};

const withPlain = (
  { wait }: Runs,
  profile: UsualDay,
  timeline: Timeline,
  nowMin: Minutes,
  arriveInMin: Minutes,
): AllForecasts => ({
  filter: behindOurs(
    { lowMin: wait(0.1), medianMin: wait(0.5), highMin: wait(0.9) },
    isOursAhead(timeline, profile, nowMin, arriveInMin) ? profile.minPerTruck / 2 : 0,
  ),
  ...plainForecasts(timeline.trips, profile, nowMin, arriveInMin),
});

const forecaster =
  (
    profile: UsualDay,
    blend: (forecasts: AllForecasts, arriveInMin: Minutes, isToldDirectly: boolean) => WaitInterval,
  ): ForecastWait =>
  (observations, { nowMs, arriveInMin, withCourses }) => {
    const timeline = timelineOf(observations, profile, nowMs);
    const nowMin = minutesBetween(timeline.openingMs, nowMs);
    if (!usable(timeline, profile, nowMin)) return unknown(timeline, profile, nowMin, arriveInMin);
    const filter = filterOf(observations, profile, timeline, nowMin);
    const courses = withCourses && { courses: waitCourses(filter) };
    const runs = runOn(filter, arriveInMin);
    const forecasts = withPlain(runs, profile, timeline, nowMin, arriveInMin);
    const told = blend(forecasts, arriveInMin, isToldDirectly(timeline, nowMin));
    return {
      known: true,
      ...(isCountedEmpty(observations, nowMs, arriveInMin) ? told : neverSure(told, profile.minPerTruck)),
      evidence: {
        ...evidenceOf(observations, timeline, nowMin),
        trucksAhead: runs.trucksAhead,
        ratePerHour: runs.ratePerHour,
      },
      ...courses,
    };
  };

/** What somebody saw of line or pilers counts alone for so long. Grade: chosen. */
const SEEN_MIN: Minutes = 45;

/** Somebody counted, or saw the pilers, since a truck of ours was last weighed: the plain rules know nothing of that. */
const isToldDirectly = ({ events }: Timeline, nowMin: Minutes): boolean => {
  const weighedMin = events.findLast(({ is }) => is === 'weighed')?.atMin ?? -Infinity;
  return events.some(
    (event) =>
      (event.is === 'counted' || event.is === 'pilers' || (event.is === 'joined' && event.ahead !== null)) &&
      event.atMin > weighedMin &&
      nowMin - event.atMin <= SEEN_MIN,
  );
};

/** A count older than this does not show that nobody is there. Grade: chosen. */
const FRESH_COUNT_MIN: Minutes = 10;

const isCountedEmpty = ({ headCounts }: LineObservations, nowMs: EpochMs, arriveInMin: Minutes): boolean =>
  headCounts.some(
    ({ atMs, ahead }) =>
      ahead === 0 && atMs <= nowMs && minutesBetween(atMs, nowMs) + arriveInMin <= FRESH_COUNT_MIN,
  );

/** Nobody has just counted, so one truck may stand there: the top of the range is never 0. */
const neverSure = (told: WaitInterval, oneTruckMin: Minutes): WaitInterval => ({
  ...told,
  highMin: Math.max(told.highMin, told.medianMin + oneTruckMin),
});

/** One of ours stands there: whoever joins now waits at least for it. Calibration sees whether that holds. */
const behindOurs = ({ lowMin, medianMin, highMin }: WaitInterval, leastMin: Minutes): WaitInterval => ({
  lowMin: Math.max(lowMin, leastMin),
  medianMin: Math.max(medianMin, leastMin),
  highMin: Math.max(highMin, leastMin),
});

/** Of a truck that arrives later, one that stands there now shows nothing for sure. Grade: chosen. */
const SOON_MIN: Minutes = 10;
/** By then a truck that was not held up has been weighed twice, and its ticket was told; much later it was lost. Grade: chosen. */
const OVERDUE = { timesMean: 3, untilMin: 120 };
/** A crew that loses more of its tickets than the range leaves below its low end shows nothing by a silent truck. */
const MOST_LOST = 0.1;

/** One of ours has joined, and its ticket is overdue: it stands there. */
const isOursAhead = (
  { events }: Timeline,
  { yardMin, tickets }: UsualDay,
  nowMin: Minutes,
  arriveInMin: Minutes,
): boolean =>
  arriveInMin < SOON_MIN &&
  tickets.lostShare <= MOST_LOST &&
  events.some((event) => {
    const silentMin = nowMin - event.atMin;
    const isOverdue =
      silentMin > yardMin + OVERDUE.timesMean * tickets.toldAfterMin && silentMin < OVERDUE.untilMin;
    return event.is === 'joined' && event.pending && isOverdue;
  });

const usable = (timeline: Timeline, profile: UsualDay, nowMin: Minutes): boolean => {
  const oldestMin = profile.days > 0 ? OLDEST_USABLE_LEARNED_MIN : OLDEST_USABLE_MIN;
  return (
    timeline.pendingTrucks > 0 || (timeline.newestMin !== null && nowMin - timeline.newestMin <= oldestMin)
  );
};

const unknown = (
  timeline: Timeline,
  profile: UsualDay,
  nowMin: Minutes,
  arriveInMin: Minutes,
): WaitForecast => ({
  known: false,
  newestAgeMin: timeline.newestMin === null ? null : nowMin - timeline.newestMin,
  usual: usualAt(profile, nowMin + arriveInMin),
});

export const filterOf = (
  observations: LineObservations,
  profile: UsualDay,
  timeline: Timeline,
  nowMin: Minutes,
): Filter => {
  const random = randomFrom(seedOf(timeline.openingMs / MS_PER_MINUTE, timeline.events.length));
  const prior = {
    perPilerMin: 1 / profile.minPerTruck,
    rateSd: profile.paceSd,
    daySd: profile.daySd,
    levelSd: profile.levelSd,
    pilers: Math.max(1, observations.usualPilers),
    slots: timeline.slots,
    rolls: timeline.rolls,
    late: profile.late,
  };
  const filter = newFilter(profile, prior, PATHS, Math.max(2, observations.usualPilers), random);
  runFilter(filter, timeline, nowMin);
  return filter;
};

interface Runs {
  wait: (share: number) => Minutes;
  trucksAhead: number;
  ratePerHour: number;
}

const runOn = (filter: Filter, arriveInMin: Minutes): Runs => {
  const steps = Math.round(arriveInMin / STEP_MIN);
  for (let step = 0; step < steps; step += 1) {
    const shared = stepAt(filter, filter.step * STEP_MIN);
    for (const particle of filter.paths) stepParticle(particle, shared, filter.random);
    filter.step += 1;
  }
  const shared = stepAt(filter, filter.step * STEP_MIN);
  const ahead = filter.paths.map((particle) => particle.joined - particle.weighed).sort((a, b) => a - b);
  const rates = filter.paths.map((particle) => particle.perPilerMin * (particle.open - particle.down));
  const waits = filter.paths.map((particle) => waitOf(particle, shared, filter)).sort((a, b) => a - b);
  return {
    wait: (share) => quantile(waits, share),
    trucksAhead: Math.round(quantile(ahead, 0.5)),
    ratePerHour: (MIN_PER_HOUR * rates.reduce((sum, rate) => sum + rate, 0)) / rates.length,
  };
};

/** Minutes until the trucks now in the path's line are weighed. Later arrivals do not matter. */
const waitOf = (particle: Particle, shared: SharedStep, filter: Filter): Minutes => {
  const number = particle.joined;
  if (number - particle.weighed < 0.5) return 0;
  for (let min = 0; min < LONGEST_WAIT_MIN; min += STEP_MIN) {
    const before = particle.weighed;
    turnPilers(particle, shared, filter.random);
    serve(particle, filter.random);
    if (particle.weighed >= number - 0.01)
      return min + (STEP_MIN * (number - before)) / Math.max(0.01, particle.weighed - before);
  }
  return LONGEST_WAIT_MIN;
};

const evidenceOf = (
  observations: LineObservations,
  timeline: Timeline,
  nowMin: Minutes,
): Pick<Evidence, 'lastSerial' | 'newestAgeMin'> => {
  const nowMs = addMinutes(timeline.openingMs, nowMin);
  const lastSerial = observations.visits.reduce<Evidence['lastSerial']>((last, visit) => {
    const { serial, firstWeighedMs, secondWeighedMs, heardMs } = visit;
    const atMs = firstWeighedMs ?? secondWeighedMs;
    if (serial === null || atMs === null || heardMs > nowMs) return last;
    return last === null || atMs > last.atMs ? { serial, atMs } : last;
  }, null);
  return { lastSerial, newestAgeMin: timeline.newestMin === null ? null : nowMin - timeline.newestMin };
};
