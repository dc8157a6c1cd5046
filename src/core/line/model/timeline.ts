/** The day's observations as events in order of time, in minutes since opening, ready to be scored. */
import { addMinutes, minutesBetween } from '../../units.ts';
import type { EpochMs, Minutes } from '../../units.ts';
import type { UsualDay } from './usual-day.ts';
import type { JoinTelling } from './lateness.ts';
import { mostBelievable, onRolls, servedBetween } from './rolls.ts';
import { tripsOf } from './trips.ts';
import type { Trip } from './trips.ts';
import type { LineObservations } from '../types.ts';

export type LineEvent = { atMin: Minutes } & (
  | {
      is: 'joined';
      slot: number;
      pending: boolean;
      telling: JoinTelling;
      /** It was told so long after the first weight; `atMin` is then that weight. */
      toldAfterMin: Minutes;
      ahead: number | null;
    }
  /** `served`: trucks weighed since the ticket before it on the roll; null = first of its roll, or after a gap. */
  | {
      is: 'weighed';
      slot: number | null;
      sdMin: Minutes;
      ticket: { roll: number; served: { count: number; sd: number } | null } | null;
    }
  | { is: 'counted'; slot: number | null; ahead: number }
  | { is: 'pilers'; open: number | null; down: number | null }
);

export interface Timeline {
  openingMs: EpochMs;
  events: readonly LineEvent[];
  trips: readonly Trip[];
  slots: number;
  rolls: number;
  /** When the line itself was last seen: a join, a weighing, a count. */
  newestMin: Minutes | null;
  pendingTrucks: number;
}

/** If no opening is known, the station opened this long before the first truck. Grade: chosen. */
const OPENS_BEFORE_MIN: Minutes = 60;
/** The most that the pilers of a station serve, against their usual pace with two of them. Grade: chosen. */
const MOST_OF_USUAL_PACE = 4;

const opened = (observations: LineObservations, nowMs: EpochMs): EpochMs => {
  if (observations.opening !== null && observations.opening <= nowMs) return observations.opening;
  const times = observations.visits.flatMap((visit) => visit.joinedMs ?? visit.firstWeighedMs ?? []);
  return addMinutes(Math.min(nowMs, ...times), -1 * OPENS_BEFORE_MIN);
};

export const timelineOf = (observations: LineObservations, profile: UsualDay, nowMs: EpochMs): Timeline => {
  const openingMs = opened(observations, nowMs);
  const trips = tripsOf(observations, openingMs, nowMs, profile);
  const slots = slotsOf(trips);
  const events = [
    ...joins(trips, slots.of, observations, openingMs),
    ...weighings(
      trips,
      slots.of,
      (MOST_OF_USUAL_PACE * Math.max(2, observations.usualPilers)) / profile.minPerTruck,
    ),
    ...counts(trips, slots.of, observations, openingMs, nowMs),
    ...pilerReports(observations, openingMs, nowMs),
  ].sort((a, b) => a.atMin - b.atMin);
  const seen = events.filter(
    (event) => event.is !== 'pilers' && !(event.is === 'weighed' && event.slot === null),
  );
  return {
    openingMs,
    events,
    trips,
    slots: slots.count,
    rolls: Math.max(
      0,
      ...events.map((event) => (event.is === 'weighed' ? (event.ticket?.roll ?? -1) + 1 : 0)),
    ),
    newestMin: seen.at(-1)?.atMin ?? null,
    pendingTrucks: trips.filter((trip) => trip.pending).length,
  };
};

/** Slots in a path's memory, each used by one of our trucks while it is in the line. */
const slotsOf = (trips: readonly Trip[]): { of: Map<Trip, number>; count: number } => {
  const freeFromMin: number[] = [];
  const of = new Map<Trip, number>();
  const inLine = trips.filter((trip) => trip.joinedMin !== null);
  for (const trip of inLine.sort((a, b) => (a.joinedMin ?? 0) - (b.joinedMin ?? 0))) {
    const found = freeFromMin.findIndex((freeMin) => freeMin < (trip.joinedMin ?? 0));
    const slot = found < 0 ? freeFromMin.length : found;
    freeFromMin[slot] = trip.weighedMin ?? Infinity;
    of.set(trip, slot);
  }
  return { of, count: freeFromMin.length };
};

/** A count that was reported with the join is scored together with it. */
const countWith = (trip: Trip, observations: LineObservations, openingMs: EpochMs): number | null =>
  observations.headCounts.find(
    (count) =>
      count.truck !== null &&
      count.truck === trip.truck &&
      Math.abs(minutesBetween(openingMs, count.atMs) - (trip.joinedMin ?? 0)) < 1,
  )?.ahead ?? null;

const joins = (
  trips: readonly Trip[],
  slots: Map<Trip, number>,
  observations: LineObservations,
  openingMs: EpochMs,
): LineEvent[] =>
  trips.flatMap((trip) => {
    const slot = slots.get(trip);
    if (trip.joinedMin === null || slot === undefined) return [];
    const { pending, telling, toldAfterMin } = trip;
    const ahead = countWith(trip, observations, openingMs);
    return { is: 'joined', atMin: trip.joinedMin, slot, pending, telling, toldAfterMin, ahead };
  });

/** Weighings in order, each ticket with what was served since the one before it on its roll. */
const weighings = (trips: readonly Trip[], slots: Map<Trip, number>, mostPerMin: number): LineEvent[] => {
  const weighed = trips
    .flatMap((trip) => (trip.weighedMin === null ? [] : [{ trip, weighedMin: trip.weighedMin }]))
    .sort((a, b) => a.weighedMin - b.weighedMin);
  const readings = weighed.flatMap(({ trip, weighedMin }) =>
    trip.serial === null ? [] : [{ trip, weighedMin, serial: trip.serial }],
  );
  const { rolls, placed } = onRolls(readings);
  const most = mostBelievable(rolls, mostPerMin);
  const ticketOf = new Map(
    placed.map(({ reading, roll, last }) => [
      reading.trip,
      { roll, served: last && servedBetween(rolls, rolls[roll] ?? [], last, reading, most) },
    ]),
  );
  return weighed.map(({ trip, weighedMin }) => ({
    is: 'weighed',
    atMin: weighedMin,
    slot: slots.get(trip) ?? null,
    sdMin: trip.sdMin,
    ticket: ticketOf.get(trip) ?? null,
  }));
};

const counts = (
  trips: readonly Trip[],
  slots: Map<Trip, number>,
  observations: LineObservations,
  openingMs: EpochMs,
  nowMs: EpochMs,
): LineEvent[] =>
  observations.headCounts.flatMap((count) => {
    const atMin = minutesBetween(openingMs, count.atMs);
    const own = trips.find(
      (trip) =>
        count.truck !== null &&
        trip.truck === count.truck &&
        trip.joinedMin !== null &&
        trip.joinedMin <= atMin &&
        (trip.weighedMin ?? Infinity) > atMin,
    );
    const withJoin = trips.some(
      (trip) => countWith(trip, { ...observations, headCounts: [count] }, openingMs) !== null,
    );
    if (count.atMs > nowMs || withJoin) return [];
    return {
      is: 'counted',
      atMin,
      slot: own === undefined ? null : (slots.get(own) ?? null),
      ahead: count.ahead,
    };
  });

const pilerReports = (observations: LineObservations, openingMs: EpochMs, nowMs: EpochMs): LineEvent[] =>
  observations.pilers.flatMap(({ atMs, open, down }) =>
    atMs > nowMs ? [] : { is: 'pilers', atMin: minutesBetween(openingMs, atMs), open, down },
  );
