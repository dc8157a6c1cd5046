/** Visits as trips through the line, in minutes since opening, with how far their times can be trusted. */
import { addMinutes, minutesBetween } from '../../units.ts';
import type { TruckId } from '../../roster.ts';
import type { EpochMs, Minutes } from '../../units.ts';
import type { UsualDay } from './usual-day.ts';
import { tellingOf } from './lateness.ts';
import type { JoinTelling } from './lateness.ts';
import type { LineObservations, Visit } from '../types.ts';

/** Digits of the serial; null = it has none. */
const serialNumber = (serial: string | null): number | null => {
  const digits = serial?.replace(/\D/g, '') ?? '';
  return digits === '' ? null : Number(digits.slice(-9));
};

export interface Trip {
  visit: Visit;
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
const BACK_FROM = {
  dumped: { ago: 0.8, sd: 0.4 },
  secondWeight: { ago: 1, sd: 0.5 },
  sending: { ago: 1.3, sd: 1 },
};

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
    return estimatedFrom(
      visit.secondWeighedMs,
      visit.secondIsSending ? BACK_FROM.sending : BACK_FROM.secondWeight,
      profile,
    );
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
    visit,
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
const CLOCKS_SD_MIN: Minutes = 25;

/** If clocks disagree, the order of events still counts, but their times count for little. */
const ofUnsureTime = (trip: Trip): Trip => ({
  ...trip,
  telling: 'inferred',
  toldAfterMin: 0,
  sdMin: trip.weighedMin === null ? trip.sdMin : Math.max(trip.sdMin, CLOCKS_SD_MIN),
});

/** The line is first come, first served, give or take so much: times are rough. Grade: chosen. */
const OUT_OF_TURN_MIN: Minutes = 10;

/**
 * Another of ours joined later and was weighed earlier: the weighing is of a later visit, whose "in line" was never told,
 * or the ticket was sent hours later without its times.
 */
const isOutOfTurn = ({ joinedMin, weighedMin }: Trip, trips: readonly Trip[]): boolean =>
  joinedMin !== null &&
  weighedMin !== null &&
  trips.some(
    (other) =>
      other.joinedMin !== null &&
      other.weighedMin !== null &&
      other.joinedMin > joinedMin + OUT_OF_TURN_MIN &&
      other.weighedMin < weighedMin - OUT_OF_TURN_MIN - other.sdMin,
  );

/** Another of ours joined later and has been weighed: so has this one, and its ticket was not told. */
const wasPassed = ({ joinedMin }: Trip, trips: readonly Trip[]): boolean =>
  joinedMin !== null &&
  trips.some(
    (other) =>
      other.weighedMin !== null &&
      other.sdMin < OUT_OF_TURN_MIN &&
      (other.joinedMin ?? -Infinity) > joinedMin + OUT_OF_TURN_MIN,
  );

/** A weighing alone: when that truck joined is not known. */
const withoutJoin = (trip: Trip): Trip => ({ ...trip, joinedMin: null, toldAfterMin: 0 });

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
  const timed = clocksDisagree(heard) ? reported.map(ofUnsureTime) : reported;
  const trips = timed.map((trip) => (isOutOfTurn(trip, timed) ? withoutJoin(trip) : trip));
  return trips
    .filter((trip) => !trip.pending || !joinedAgain(trip, trips))
    .map((trip) => (trip.pending && wasPassed(trip, trips) ? { ...trip, pending: false } : trip));
};
