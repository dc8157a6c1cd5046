import { begunIn } from '../haul/load.ts';
import type { Load, LoadedStep, Stamp } from '../haul/load.ts';
import { stationById } from '../roster.ts';
import type { StationId } from '../roster.ts';
import { MS_PER_DAY, addMinutes } from '../units.ts';
import type { EpochMs, Minutes, Span } from '../units.ts';
import { happenedIn } from '../sorted.ts';
import { sharedVisits } from './shared-tickets.ts';
import type { LineObservations, PilerReport, Visit } from './types.ts';
import type { Harvest } from '../harvest/harvest.ts';

/**
 * The load at the station within the span; null = it was not there. The line begins anew each day: a truck that stood
 * overnight joined on the one day and was weighed on the other, and its night is no wait.
 */
const visitWithin = (load: Load, { fromMs, toMs }: Span): Visit | null => {
  const within = (step: LoadedStep): Stamp | null => {
    const stamp = load.stamps[step];
    return stamp !== null && stamp.atMs >= fromMs && stamp.atMs < toMs ? stamp : null;
  };
  const [joined, first, second] = [within('joined-line'), within('first-weighed'), within('second-weighed')];
  const dumped = within('dumped');
  const told = dumped?.source === 'inferred' ? null : dumped;
  if (joined === null && first === null && second === null && told === null) return null;
  return {
    truck: load.truck,
    joinedMs: joined?.atMs ?? null,
    joinedStated: joined?.source === 'stated',
    ...(joined?.telling && { joinedTelling: joined.telling }),
    firstWeighedMs: first?.atMs ?? null,
    dumpedMs: told?.atMs ?? null,
    secondWeighedMs: second?.atMs ?? null,
    ...(second !== null && second.telling !== 'time-said' && { secondIsSending: true }),
    ...(dumped !== null && told === null && { goneByMs: dumped.atMs }),
    serial: first === null && second === null ? null : (load.ticket?.serial ?? null),
    heardMs: Math.min(load.heardMs, toMs),
  };
};

/** Loads that began earlier are long off the truck. */
const OLDEST_LOAD_MS = MS_PER_DAY;

/**
 * At a closed station no piler runs; the report of the closing may say when it opens again. One of the day before that
 * reaches into this day closes it from `fromMs` on.
 */
const closings = (harvest: Harvest, station: StationId, pilers: number, fromMs: EpochMs): PilerReport[] =>
  harvest.stationReports
    .filter((report) => report.station === station)
    .flatMap(({ atMs, open, untilMs }) => [
      {
        atMs: untilMs !== null && untilMs > fromMs ? Math.max(atMs, fromMs) : atMs,
        open: null,
        down: open ? 0 : pilers,
      },
      ...(open || untilMs === null ? [] : [{ atMs: untilMs, open: null, down: 0 }]),
    ]);

/** What the crew saw of one station's line in the span, a day or part of one. Opening: the start of the span. */
export const lineObservations = (
  harvest: Harvest,
  station: StationId,
  { fromMs, toMs }: Span,
): LineObservations => {
  const within = (atMs: EpochMs): boolean => atMs >= fromMs && atMs < toMs;
  const pilers = stationById(harvest.roster, station)?.pilers ?? 1;
  return {
    station,
    visits: [
      ...[...harvest.trucks.values()]
        .flatMap(({ loads }) => begunIn(loads, { fromMs: fromMs - OLDEST_LOAD_MS, toMs }))
        .filter((load) => load.station === station)
        .sort((a, b) => a.startMs - b.startMs)
        .flatMap((load) => visitWithin(load, { fromMs, toMs }) ?? []),
      ...sharedVisits(harvest, station, within),
    ],
    headCounts: happenedIn(harvest.headCounts, { fromMs, toMs })
      .filter((count) => count.station === station)
      .map(({ atMs, ahead, truck }) => ({ atMs, ahead, truck })),
    pilers: [
      ...harvest.pilerReports.filter((report) => report.station === station),
      ...closings(harvest, station, pilers, fromMs),
    ]
      .filter(({ atMs }) => within(atMs))
      .map(({ atMs, open, down }) => ({ atMs, open, down })),
    opening: fromMs,
    usualPilers: pilers,
  };
};

/**
 * The observations as they were known at `atMs`. Of a visit whose last report came later, only the join is kept:
 * when each step was heard is not stored, but most are reported at once, and the rest with the ticket.
 */
export const asHeardBy = (observations: LineObservations, atMs: EpochMs): LineObservations => ({
  ...observations,
  visits: observations.visits.flatMap((visit) => {
    if (visit.heardMs <= atMs) return [visit];
    // Other operations' trucks are not heard of before their ticket.
    if (visit.truck === null) return [];
    if (!visit.joinedStated || visit.joinedMs === null || visit.joinedMs > atMs) return [];
    const later = { firstWeighedMs: null, dumpedMs: null, secondWeighedMs: null, serial: null };
    return [{ ...visit, ...later, heardMs: visit.joinedMs }];
  }),
});

/** A past day as if each word of it had been heard when it happened: the day ends with its last truck. */
export const heardAtOnce = (observations: LineObservations): LineObservations => ({
  ...observations,
  visits: observations.visits.map((visit) => {
    const { joinedMs, firstWeighedMs, dumpedMs, secondWeighedMs, heardMs } = visit;
    const newestMs = Math.max(
      joinedMs ?? -Infinity,
      firstWeighedMs ?? -Infinity,
      dumpedMs ?? -Infinity,
      secondWeighedMs ?? -Infinity,
    );
    return { ...visit, heardMs: Math.min(heardMs, newestMs) };
  }),
});

/** The station was open for so long before the first truck that was seen on a day. Grade: chosen. */
const OPEN_BEFORE_MIN = 60;

/**
 * With the opening moved to the hour at which the station's day begins, as learned; never later than now, nor than an
 * hour before the first truck of the day: a station that opened earlier than on any other day has opened.
 */
export const openedAfter = (
  observations: LineObservations,
  opensAfterMin: Minutes | null,
  nowMs: EpochMs,
): LineObservations => {
  const { opening } = observations;
  if (opening === null || opensAfterMin === null) return { ...observations, opening: null };
  const seen = observations.visits
    .flatMap(({ joinedMs, firstWeighedMs }) => joinedMs ?? firstWeighedMs ?? [])
    .map((atMs) => addMinutes(atMs, -1 * OPEN_BEFORE_MIN));
  const counted = observations.headCounts.map(({ atMs }) => addMinutes(atMs, -1 * OPEN_BEFORE_MIN));
  const latestMs = Math.min(nowMs, addMinutes(opening, opensAfterMin), ...seen, ...counted);
  return { ...observations, opening: Math.max(opening, latestMs) };
};
