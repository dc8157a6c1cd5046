/** What the crew should be told of the line without asking: that it stands still, that it passes the set limit. */
import type { FactOf } from '../book/facts.ts';
import type { StationId, TruckId } from '../roster.ts';
import { addMinutes, minutesBetween } from '../units.ts';
import type { EpochMs, Minutes, Span } from '../units.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { asHeardBy, lineObservations } from '../line/observations.ts';
import type { LineObservations, LineWarning, Visit, WaitForecast, WaitNeed } from '../line/types.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { calendarDay } from '../zone-clock.ts';

/** How often the line is looked at while trucks of ours are in it. */
const LOOK_EVERY_MIN: Minutes = 5;
/** A truck in line for longer has gone home without a word. */
const LONGEST_WAIT_MIN: Minutes = 300;

/** The next look, at whole five minutes, so that messages that keep coming do not put it off. */
export const nextLookMs = (nowMs: EpochMs): EpochMs => {
  const everyMs = addMinutes(0, LOOK_EVERY_MIN);
  return (Math.floor(nowMs / everyMs) + 1) * everyMs;
};

interface Waiting {
  trucks: readonly TruckId[];
  firstJoinedMs: EpochMs;
  /** The last weighing that is known, or when the first of them joined, whichever is later. */
  silentSinceMs: EpochMs;
}

const wordsOfServing = ({ firstWeighedMs, dumpedMs, secondWeighedMs }: Visit): EpochMs[] =>
  [firstWeighedMs, dumpedMs, secondWeighedMs].flatMap((atMs) => atMs ?? []);

type OwnVisit = Visit & { truck: TruckId };

const isWaiting = (visit: Visit, nowMs: EpochMs): visit is OwnVisit =>
  visit.truck !== null &&
  visit.joinedMs !== null &&
  visit.joinedMs <= nowMs &&
  minutesBetween(visit.joinedMs, nowMs) < LONGEST_WAIT_MIN &&
  wordsOfServing(visit).length === 0;

/** First come, first served: a truck that joined later has been weighed, so this one's ticket was never told. */
const isOvertaken = ({ joinedMs }: Visit, visits: readonly Visit[]): boolean =>
  visits.some((other) => (other.joinedMs ?? -Infinity) > (joinedMs ?? 0) && wordsOfServing(other).length > 0);

/** Trucks of ours that stand in the line; null = none. `inLine`: the trucks that have said nothing else since. */
const waitingTrucks = (
  { visits }: LineObservations,
  inLine: (truck: TruckId) => boolean,
  nowMs: EpochMs,
): Waiting | null => {
  const waiting = visits
    .filter((visit) => isWaiting(visit, nowMs))
    .filter((visit) => inLine(visit.truck) && !isOvertaken(visit, visits));
  if (waiting.length === 0) return null;
  const firstJoinedMs = Math.min(...waiting.map((visit) => visit.joinedMs ?? nowMs));
  const served = visits.flatMap(wordsOfServing);
  return {
    trucks: waiting.map((visit) => visit.truck),
    firstJoinedMs,
    silentSinceMs: Math.max(firstJoinedMs, ...served.filter((atMs) => atMs <= nowMs)),
  };
};

/** Tickets are told so late, even in a moving line. Grade: common practice. */
const TELLING_MIN: Minutes = 20;
/** A line in which trucks of ours were weighed within this time moves. Grade: common practice. */
const MOVING_MIN: Minutes = 30;
/** The longest wait that counts as usual where nothing was known of the line. Grade: common practice. */
const UNKNOWN_HIGH_MIN: Minutes = 60;

const highMin = (forecast: WaitForecast): Minutes =>
  forecast.known ? forecast.highMin : (forecast.usual?.highMin ?? UNKNOWN_HIGH_MIN);

/** A warning that a line may deserve, and the forecast that decides it. */
export type LineDoubt = { station: StationId; need: WaitNeed } & (
  | { about: 'stopped'; waiting: readonly TruckId[]; silentMin: Minutes; waitedMin: Minutes }
  | { about: 'limit'; wasAbove: boolean; limitMin: Minutes }
);

/**
 * The line is taken to stand when the first of our trucks has waited well beyond the top of the interval that was
 * forecast when it joined, and none of ours was weighed for a while.
 */
const stoppedDoubt = (
  observations: LineObservations,
  { trucks, firstJoinedMs, silentSinceMs }: Waiting,
  told: readonly FactOf<'line-warned'>[],
  nowMs: EpochMs,
): LineDoubt | null => {
  const silentMin = minutesBetween(silentSinceMs, nowMs);
  const isTold = told.some(({ warning, atMs }) => warning.about === 'stopped' && atMs >= silentSinceMs);
  if (isTold || silentMin < MOVING_MIN) return null;
  const then = asHeardBy(observations, firstJoinedMs - 1);
  return {
    about: 'stopped',
    station: observations.station,
    need: { observations: then, ask: { nowMs: firstJoinedMs, arriveInMin: 0 } },
    waiting: trucks,
    silentMin: Math.round(silentMin),
    waitedMin: minutesBetween(firstJoinedMs, nowMs),
  };
};

/** Told again only when the forecast had fallen so far below the limit, so that one that hovers there is told once. */
const REARMED_BELOW = 0.7;

export const limitWarning = (
  wasAbove: boolean,
  forecast: WaitForecast,
  limitMin: Minutes,
): LineWarning | null => {
  if (!forecast.known) return null;
  const above = forecast.medianMin > limitMin;
  const below = forecast.medianMin < REARMED_BELOW * limitMin;
  return (!wasAbove && above) || (wasAbove && below) ? { about: 'limit', above, limitMin, forecast } : null;
};

const warningFact = (station: StationId, warning: LineWarning, nowMs: EpochMs): FactOf<'line-warned'> => {
  const cause = `line:${station}:${warning.about}:${nowMs}`;
  const times = { atMs: nowMs, sentMs: nowMs, heardMs: nowMs };
  return {
    id: `${cause}#0`,
    cause,
    ...times,
    by: null,
    timeStated: false,
    kind: 'line-warned',
    station,
    warning,
  };
};

/** A count this old says nothing of the line that stands there. */
const COUNT_HOLDS_MIN: Minutes = 30;

interface StationLook {
  doubts: LineDoubt[];
  /** Somebody of ours is there. */
  again: boolean;
}

const lookAt = (harvest: Harvest, station: StationId, today: Span, nowMs: EpochMs): StationLook => {
  const observations = asHeardBy(lineObservations(harvest, station, today), nowMs);
  const told = harvest.lineWarnings.filter((fact) => fact.station === station && fact.atMs >= today.fromMs);
  const inLine = (truck: TruckId): boolean => harvest.trucks.get(truck)?.phase === 'in-line';
  const waiting = waitingTrucks(observations, inLine, nowMs);
  const isCounted = observations.headCounts.some(({ atMs }) => minutesBetween(atMs, nowMs) < COUNT_HOLDS_MIN);
  if (waiting === null && !isCounted) return { doubts: [], again: false };
  const stopped = waiting && stoppedDoubt(observations, waiting, told, nowMs);
  const { lineLimitMin: limitMin } = harvest.roster.limits;
  const last = told.findLast(({ warning }) => warning.about === 'limit')?.warning;
  const wasAbove = last?.about === 'limit' && last.above;
  const need = { observations, ask: { nowMs, arriveInMin: 0 } };
  const limit = limitMin === null ? [] : [{ about: 'limit', station, need, wasAbove, limitMin } as const];
  return { doubts: [...(stopped ? [stopped] : []), ...limit], again: true };
};

/** What may be worth a word of the lines now, and when to look again; null = nobody of ours is there. */
export const lookAtLines = (
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): { doubts: readonly LineDoubt[]; wakeAtMs: EpochMs | null } => {
  const today = calendarDay(clock, harvest.roster.zone, nowMs);
  const looks = harvest.roster.stations.map(({ id }) => lookAt(harvest, id, today, nowMs));
  return {
    doubts: looks.flatMap(({ doubts }) => doubts),
    wakeAtMs: looks.some(({ again }) => again) ? nextLookMs(nowMs) : null,
  };
};

const warningOf = (doubt: LineDoubt, forecast: WaitForecast): LineWarning | null => {
  switch (doubt.about) {
    case 'stopped': {
      const { waiting, silentMin, waitedMin } = doubt;
      return waitedMin > highMin(forecast) + TELLING_MIN ? { about: 'stopped', waiting, silentMin } : null;
    }
    case 'limit':
      return limitWarning(doubt.wasAbove, forecast, doubt.limitMin);
  }
};

/** What grower and foreman should hear of the lines. `forecasts`: those that the doubts need, in their order. */
export const lineWarnings = (
  doubts: readonly LineDoubt[],
  forecasts: readonly WaitForecast[],
  nowMs: EpochMs,
): FactOf<'line-warned'>[] =>
  doubts.flatMap((doubt, at) => {
    const forecast = forecasts[at];
    const warning = forecast && warningOf(doubt, forecast);
    return warning ? [warningFact(doubt.station, warning, nowMs)] : [];
  });
