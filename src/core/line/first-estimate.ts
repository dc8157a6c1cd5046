/**
 * A simple wait forecast from the newest head count, the waits of our own trucks, and the trucks that still wait.
 *
 * The rules are the delay-history predictors of Ibrahim & Whitt, "Real-time delay estimation based on delay history",
 * MSOM 11(3), 2009, and the queue-length predictor named there; the blend and the widths are
 * common practice.
 */
import { Z_80, mean } from '../statistics.ts';
import { MIN_PER_HOUR, minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import {
  COUNT_HALF_LIFE_MIN,
  FIRST_ESTIMATE_SD,
  MIN_PER_TRUCK,
  OLDEST_USABLE_MIN,
  RECENT_WAITS_MIN,
} from './assumptions.ts';
import type { Evidence, ForecastWait, HeadCount, LineObservations, Visit } from './types.ts';

/** The wait of one of our trucks; `over` false = so far, because it still waits. */
interface SeenWait {
  waitMin: Minutes;
  atMs: EpochMs;
  over: boolean;
}

const seenWait = (visit: Visit, nowMs: EpochMs): SeenWait | null => {
  const { joinedMs, firstWeighedMs } = visit;
  if (joinedMs === null || joinedMs > nowMs) return null;
  if (firstWeighedMs !== null && firstWeighedMs <= nowMs)
    return {
      waitMin: Math.max(0, minutesBetween(joinedMs, firstWeighedMs)),
      atMs: firstWeighedMs,
      over: true,
    };
  const isGone = (visit.goneByMs ?? Infinity) <= nowMs;
  const stillWaits = !isGone && visit.dumpedMs === null && visit.secondWeighedMs === null;
  return stillWaits ? { waitMin: minutesBetween(joinedMs, nowMs), atMs: nowMs, over: false } : null;
};

const newest = <T extends { atMs: EpochMs }>(list: readonly T[], nowMs: EpochMs): T | null =>
  list.reduce<T | null>(
    (best, entry) => (entry.atMs <= nowMs && (best === null || entry.atMs >= best.atMs) ? entry : best),
    null,
  );

const pilersWorking = (observations: LineObservations, nowMs: EpochMs): number => {
  const report = newest(observations.pilers, nowMs);
  return Math.max(1, (report?.open ?? observations.usualPilers) - (report?.down ?? 0));
};

/** Last observed wait, blended half and half with the mean of the hour before it. */
const observedWait = (waits: readonly SeenWait[], nowMs: EpochMs): SeenWait | null => {
  const last = newest(
    waits.filter((wait) => wait.over),
    nowMs,
  );
  if (last === null) return null;
  const lastHour = waits.filter(
    (wait) => wait.over && minutesBetween(wait.atMs, last.atMs) <= RECENT_WAITS_MIN,
  );
  return { ...last, waitMin: (last.waitMin + mean(lastHour.map((wait) => wait.waitMin))) / 2 };
};

const countedWait = (count: HeadCount | null, minPerTruck: Minutes): SeenWait | null =>
  count === null ? null : { waitMin: count.ahead * minPerTruck, atMs: count.atMs, over: true };

const blended = (counted: SeenWait | null, observed: SeenWait | null, nowMs: EpochMs): number | null => {
  if (counted === null || observed === null) return (counted ?? observed)?.waitMin ?? null;
  const weight = 0.5 ** (minutesBetween(counted.atMs, nowMs) / COUNT_HALF_LIFE_MIN);
  return weight * counted.waitMin + (1 - weight) * observed.waitMin;
};

const lastSerial = (visits: readonly Visit[], nowMs: EpochMs): Evidence['lastSerial'] => {
  const tickets = visits.flatMap(({ serial, firstWeighedMs }) =>
    serial === null || firstWeighedMs === null ? [] : [{ serial, atMs: firstWeighedMs }],
  );
  return newest(tickets, nowMs);
};

const { leastMin, ofMedian, variancePerMin } = FIRST_ESTIMATE_SD;

/** Of a wait this long, read from observations `ageMin` old for a truck that arrives in `leadMin`. */
const sdMin = (medianMin: Minutes, ageMin: Minutes, leadMin: Minutes): Minutes =>
  Math.sqrt(leastMin ** 2 + (ofMedian * medianMin) ** 2 + variancePerMin * (ageMin + leadMin));

export const firstEstimate: ForecastWait = (observations, { nowMs, arriveInMin }) => {
  const visits = observations.visits.filter((visit) => visit.heardMs <= nowMs);
  const waits = visits.flatMap((visit) => seenWait(visit, nowMs) ?? []);
  const usable = waits.filter((wait) => minutesBetween(wait.atMs, nowMs) <= OLDEST_USABLE_MIN);
  const counts = observations.headCounts.filter(
    ({ atMs }) => minutesBetween(atMs, nowMs) <= OLDEST_USABLE_MIN,
  );
  const minPerTruck = MIN_PER_TRUCK / pilersWorking(observations, nowMs);

  const counted = countedWait(newest(counts, nowMs), minPerTruck);
  const observed = observedWait(usable, nowMs);
  const longestSoFarMin = Math.max(0, ...usable.filter((wait) => !wait.over).map((wait) => wait.waitMin));
  const newestMs = Math.max(...[counted, ...usable].flatMap((wait) => wait?.atMs ?? []));
  if (newestMs === -Infinity) {
    const last = newest([...waits, ...observations.headCounts], nowMs);
    return {
      known: false,
      newestAgeMin: last === null ? null : minutesBetween(last.atMs, nowMs),
      usual: null,
    };
  }

  const medianMin = Math.max(blended(counted, observed, nowMs) ?? 0, longestSoFarMin);
  const newestAgeMin = minutesBetween(newestMs, nowMs);
  const spreadMin = Z_80 * sdMin(medianMin, newestAgeMin, arriveInMin);
  return {
    known: true,
    medianMin,
    lowMin: Math.max(0, medianMin - spreadMin),
    highMin: medianMin + spreadMin,
    evidence: {
      lastSerial: lastSerial(visits, nowMs),
      trucksAhead: medianMin / minPerTruck,
      ratePerHour: MIN_PER_HOUR / minPerTruck,
      newestAgeMin,
    },
  };
};
