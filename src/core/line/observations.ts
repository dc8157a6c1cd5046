import { begunIn } from '../haul/load.ts';
import type { Load } from '../haul/load.ts';
import { stationById } from '../roster.ts';
import type { StationId } from '../roster.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs, Minutes, Span } from '../units.ts';
import { happenedIn } from '../sorted.ts';
import { sharedVisits } from './shared-tickets.ts';
import type { LineObservations, PilerReport, Visit } from './types.ts';
import type { Harvest } from '../harvest/harvest.ts';

const visitOf = ({ truck, stamps, ticket, heardMs }: Load): Visit => {
  const joined = stamps['joined-line'];
  return {
    truck,
    joinedMs: joined?.atMs ?? null,
    joinedStated: joined?.source === 'stated',
    ...(joined?.telling && { joinedTelling: joined.telling }),
    firstWeighedMs: stamps['first-weighed']?.atMs ?? null,
    dumpedMs: stamps.dumped?.atMs ?? null,
    secondWeighedMs: stamps['second-weighed']?.atMs ?? null,
    serial: ticket?.serial ?? null,
    heardMs,
  };
};

/** At a closed station no piler runs; the report of the closing may say when it opens again. */
const closings = (harvest: Harvest, station: StationId, pilers: number): PilerReport[] =>
  harvest.stationReports
    .filter((report) => report.station === station)
    .flatMap(({ atMs, open, untilMs }) => [
      { atMs, open: null, down: open ? 0 : pilers },
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
        .flatMap(({ loads }) => begunIn(loads, { fromMs, toMs }))
        .filter((load) => load.station === station)
        .sort((a, b) => a.startMs - b.startMs)
        .map(visitOf),
      ...sharedVisits(harvest, station, within),
    ],
    headCounts: happenedIn(harvest.headCounts, { fromMs, toMs })
      .filter((count) => count.station === station)
      .map(({ atMs, ahead, truck }) => ({ atMs, ahead, truck })),
    pilers: [
      ...harvest.pilerReports.filter((report) => report.station === station),
      ...closings(harvest, station, pilers),
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

/** With the opening moved to the hour at which the station's day begins, as learned; never later than now. */
export const openedAfter = (
  observations: LineObservations,
  opensAfterMin: Minutes | null,
  nowMs: EpochMs,
): LineObservations => {
  const { opening } = observations;
  if (opening === null || opensAfterMin === null) return { ...observations, opening: null };
  return { ...observations, opening: Math.min(nowMs, addMinutes(opening, opensAfterMin)) };
};
