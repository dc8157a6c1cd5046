/** The day's observations as events in order of time, in minutes since opening, ready to be scored. */
import { addMinutes, minutesBetween } from '../../units.ts';
import type { TruckId } from '../../roster.ts';
import type { EpochMs, Minutes } from '../../units.ts';
import type { UsualDay } from './usual-day.ts';
import { tellingOf } from './lateness.ts';
import type { JoinTelling } from './lateness.ts';
import { mostBelievable, onRolls, servedBetween } from './rolls.ts';
import type { LineObservations, Visit } from '../types.ts';

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
  slots: number;
  rolls: number;
  /** When the line itself was last seen: a join, a weighing, a count. */
  newestMin: Minutes | null;
  pendingTrucks: number;
}

/** Digits of the serial; null = it has none. */
const serialNumber = (serial: string | null): number | null => {
  const digits = serial?.replace(/\D/g, '') ?? '';
  return digits === '' ? null : Number(digits.slice(-9));
};

interface Trip {
  joinedMin: Minutes | null;
  telling: JoinTelling;
  toldAfterMin: Minutes;
  /** First weight, and how uncertain its time is. */
  weighedMin: Minutes | null;
  sdMin: Minutes;
  serial: number | null;
  pending: boolean;
  truck: TruckId | null;
}

/**
 * How long before these the first weight was, and how uncertain that is (standard deviation): shares of the usual time
 * between the weights. Grade: chosen.
 */
const BACK_FROM = { dumped: { ago: 0.8, sd: 0.4 }, secondWeight: { ago: 1, sd: 0.5 } };

interface UnsureTime {
  atMs: EpochMs;
  sdMin: Minutes;
}

const estimatedFrom = (
  fromMs: EpochMs,
  { ago, sd }: { ago: number; sd: number },
  { yardMin }: UsualDay,
): UnsureTime => ({ atMs: addMinutes(fromMs, -1 * ago * yardMin), sdMin: sd * yardMin });

/** First weight as reported, else estimated from what came after it. */
const weighedAt = (visit: Visit, profile: UsualDay): UnsureTime | null => {
  if (visit.firstWeighedMs !== null) return { atMs: visit.firstWeighedMs, sdMin: 0 };
  if (visit.dumpedMs !== null) return estimatedFrom(visit.dumpedMs, BACK_FROM.dumped, profile);
  if (visit.secondWeighedMs !== null)
    return estimatedFrom(visit.secondWeighedMs, BACK_FROM.secondWeight, profile);
  return null;
};

/** Only a weighing that is itself known shows that "in line" was told too late. */
const toldAfter = ({ joinedMs, firstWeighedMs }: Visit): Minutes =>
  joinedMs === null || firstWeighedMs === null ? 0 : Math.max(0, minutesBetween(firstWeighedMs, joinedMs));

const tripOf = (visit: Visit, openingMs: EpochMs, nowMs: EpochMs, profile: UsualDay): Trip => {
  const weighed = weighedAt(visit, profile);
  const weighedMs = weighed === null ? null : Math.min(weighed.atMs, nowMs);
  const joinedMs = visit.joinedMs === null ? null : Math.min(visit.joinedMs, weighedMs ?? nowMs);
  return {
    joinedMin: joinedMs === null ? null : minutesBetween(openingMs, joinedMs),
    telling: tellingOf(visit),
    toldAfterMin: toldAfter(visit),
    weighedMin: weighedMs === null ? null : minutesBetween(openingMs, weighedMs),
    sdMin: weighed?.sdMin ?? 0,
    serial: serialNumber(visit.serial),
    pending: joinedMs !== null && weighed === null && (visit.goneByMs ?? Infinity) > nowMs,
    truck: visit.truck,
  };
};

/** "In line" this long after the weighing was not sent late: the clocks differ. Grade: chosen. */
const CONTRADICTS_MIN: Minutes = 12;
/** So many trips, and such a share of all, must contradict. Grade: chosen. */
const CONTRADICTING = { trips: 2, share: 1 / 3 };

/** The clock of the scale or of the crew is off: many trucks were weighed long before they joined. */
const clocksDisagree = (visits: readonly Visit[]): boolean => {
  const bothKnown = visits.flatMap(({ joinedMs, joinedStated, firstWeighedMs }) =>
    joinedMs !== null && joinedStated && firstWeighedMs !== null
      ? [minutesBetween(firstWeighedMs, joinedMs)]
      : [],
  );
  const contradicting = bothKnown.filter((min) => min > CONTRADICTS_MIN).length;
  return contradicting >= CONTRADICTING.trips && contradicting >= CONTRADICTING.share * bothKnown.length;
};

/** How far off the clocks may be, as a standard deviation. Grade: chosen. */
const CLOCKS_SD_MIN: Minutes = 20;

/** If clocks disagree, the order of events still counts, but their times count for little. */
const ofUnsureTime = (trip: Trip): Trip => ({
  ...trip,
  telling: 'inferred',
  toldAfterMin: 0,
  sdMin: trip.weighedMin === null ? trip.sdMin : Math.max(trip.sdMin, CLOCKS_SD_MIN),
});

/** A truck that joined again has been through, even if its ticket was never reported. */
const joinedAgain = (trip: Trip, trips: readonly Trip[]): boolean =>
  trips.some((other) => other.truck === trip.truck && (other.joinedMin ?? -1) > (trip.joinedMin ?? 0));

/** When the newest word of that day was heard. */
export const lastHeardMs = ({ visits, opening }: LineObservations): EpochMs =>
  Math.max(opening ?? 0, ...visits.map((visit) => visit.heardMs));

export const tripsOf = (
  observations: LineObservations,
  openingMs: EpochMs,
  nowMs: EpochMs,
  profile: UsualDay,
): Trip[] => {
  const heard = observations.visits.filter((visit) => visit.heardMs <= nowMs);
  const reported = heard.map((visit) => tripOf(visit, openingMs, nowMs, profile));
  const trips = clocksDisagree(heard) ? reported.map(ofUnsureTime) : reported;
  return trips.filter((trip) => !trip.pending || !joinedAgain(trip, trips));
};

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
