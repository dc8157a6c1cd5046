/** What the bot hears of a simulated day: late, incomplete, with wrong counts. */
import { exponential, normal } from '../../../src/core/line/model/random.ts';
import type { Random } from '../../../src/core/line/model/random.ts';
import type { HeadCount, LineObservations, PilerReport, Visit } from '../../../src/core/line/types.ts';
import type { DayState, Truck } from './day.ts';
import type { Station } from './station.ts';

export interface Hearing {
  /** Share of our joins told with a head count. */
  countShare: number;
  /** Standard deviation of a head count, as a share of the truth. */
  countError: number;
  missingShare: number;
  meanLateMin: number;
  /** Minutes that the crew's clock is ahead in join and count messages; no word is from later than when it was heard. */
  clockOffMin: number;
  /** The same of the scale's clock, for the times on the ticket. */
  scaleOffMin: number;
  /** Share of "in line" said when leaving the field, this long before the line. */
  saidAtFieldShare: number;
  /** Share of the head counts that are a lie: a fifth of the trucks that stand there. */
  lieShare: number;
  /** How many pilers of the station the operation file says; 0 = the truth. */
  pilersTold: number;
}

export const USUAL_HEARING: Hearing = {
  countShare: 0,
  countError: 0.15,
  missingShare: 0.2,
  meanLateMin: 5,
  clockOffMin: 0,
  scaleOffMin: 0,
  saidAtFieldShare: 0,
  lieShare: 0,
  pilersTold: 0,
};

/** One trip of ours, with the instants (minutes) at which the bot hears of it; null = never. */
export interface OwnTrip {
  truckName: string;
  truck: Truck;
  joinHeardMin: number | null;
  joinStampMin: number;
  count: number | null;
  ticketHeardMin: number | null;
  serial: string;
}

const LIE = 0.2;

export interface DayHeard {
  trips: readonly OwnTrip[];
  pilers: readonly { atMin: number; open: number }[];
}

const DAY_MS = 86_400_000;
export const FIRST_OPENING_MS = Date.UTC(2026, 8, 15, 13);
export const openingMs = (day: number): number => FIRST_OPENING_MS + day * DAY_MS;

/** Newest serial of each scale's roll; the rolls go on from day to day. */
export type Rolls = [number, number];

/** Two serials in a hundred are void. */
const serials = (station: Station, rolls: Rolls, state: DayState, random: Random): Map<number, string> => {
  const order = state.trucks
    .map((truck, number) => ({
      number,
      atMin: station.serialAt === 'first' ? truck.weighedMin : truck.secondMin,
      scale: truck.scale,
    }))
    .filter(({ atMin }) => !Number.isNaN(atMin))
    .sort((a, b) => a.atMin - b.atMin);
  const printed = new Map<number, string>();
  for (const { number, scale } of order) {
    const roll = scale === 1 ? 1 : 0;
    rolls[roll] += random() < 0.02 ? 2 : 1;
    printed.set(number, String(rolls[roll]));
  }
  return printed;
};

const ownNumbers = (station: Station, state: DayState, random: Random): number[] => {
  const all = state.trucks.map((truck, number) => ({ truck, number }));
  if (station.family === 'closed')
    return all.filter(({ truck }) => truck.fleet === 0).map(({ number }) => number);
  const share = station.ownLoads / Math.max(1, all.length);
  return all.filter(() => random() < share).map(({ number }) => number);
};

const heardTrip = (truck: Truck, hearing: Hearing, serial: string, name: string, random: Random): OwnTrip => {
  const lateMin = exponential(random, hearing.meanLateMin);
  // All chances are drawn, needed or not, so that two hearings of a day differ in nothing else.
  const earlyMin = 20 + 10 * random();
  const atField = random() < hearing.saidAtFieldShare ? earlyMin : 0;
  const heardMin = truck.joinedMin + lateMin - atField;
  const missing = random() < hearing.missingShare;
  const counted = random() < hearing.countShare && atField === 0;
  const honest = truck.ahead * Math.max(0, 1 + hearing.countError * normal(random));
  const seen = random() < hearing.lieShare ? LIE * honest : honest;
  const ticketMin = truck.secondMin + 1 + exponential(random, 3);
  return {
    truckName: name,
    truck,
    joinHeardMin: missing ? null : heardMin,
    joinStampMin: heardMin + Math.min(0, hearing.clockOffMin),
    count: counted && !missing ? Math.round(seen) : null,
    ticketHeardMin: random() < 0.05 || Number.isNaN(ticketMin) ? null : ticketMin,
    serial,
  };
};

export const hearDay = (
  station: Station,
  rolls: Rolls,
  state: DayState,
  hearing: Hearing,
  random: Random,
): DayHeard => {
  const printed = serials(station, rolls, state, random);
  const trips = ownNumbers(station, state, random).flatMap((number) => {
    const truck = state.trucks[number];
    if (truck === undefined) return [];
    return heardTrip(truck, hearing, printed.get(number) ?? '', `${number}`, random);
  });
  return { trips, pilers: [] };
};

/** What the bot knows at `nowMin` of the day. */
export const observed = (
  station: Station,
  day: number,
  heard: DayHeard,
  hearing: Hearing,
  nowMin: number,
): LineObservations => {
  const ms = (atMin: number): number => openingMs(day) + Math.round(atMin * 60_000);
  const visits: Visit[] = [];
  const headCounts: HeadCount[] = [];
  for (const trip of heard.trips) {
    const joined = trip.joinHeardMin !== null && trip.joinHeardMin <= nowMin;
    const ticket = trip.ticketHeardMin !== null && trip.ticketHeardMin <= nowMin;
    if (!joined && !ticket) continue;
    const onTicket = (atMin: number): number =>
      ms(Math.min(trip.ticketHeardMin ?? 0, atMin + hearing.scaleOffMin));
    visits.push({
      truck: trip.truckName,
      joinedMs: joined ? ms(trip.joinStampMin) : null,
      joinedStated: joined,
      firstWeighedMs: ticket ? onTicket(trip.truck.weighedMin) : null,
      dumpedMs: null,
      secondWeighedMs: ticket ? onTicket(trip.truck.secondMin) : null,
      serial: ticket ? trip.serial : null,
      heardMs: ms(Math.max(joined ? (trip.joinHeardMin ?? 0) : 0, ticket ? (trip.ticketHeardMin ?? 0) : 0)),
    });
    if (joined && trip.count !== null)
      headCounts.push({ atMs: ms(trip.joinStampMin), ahead: trip.count, truck: trip.truckName });
  }
  const pilers = heard.pilers
    .filter(({ atMin }) => atMin <= nowMin)
    .map(({ atMin, open }): PilerReport => ({ atMs: ms(atMin), open, down: null }));
  const usualPilers = hearing.pilersTold > 0 ? hearing.pilersTold : station.pilers;
  return { station: `station-${station.number}`, visits, headCounts, pilers, opening: ms(0), usualPilers };
};
