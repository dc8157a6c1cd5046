/** What our crew writes of its rounds, as facts of the book: late, incomplete, held up on the way. */
import { exponential, normal } from '../../../src/core/line/model/random.ts';
import type { Random } from '../../../src/core/line/model/random.ts';
import type { Fact, FactHeader, Happening } from '../../../src/core/book/facts.ts';
import type { Roster } from '../../../src/core/roster.ts';
import { sampleRoster } from '../../support/roster.ts';
import type { Round } from './day.ts';
import { between } from './habits.ts';
import type { StationHabit } from './habits.ts';

const STATION = 'north-station';
const MIN_MS = 60_000;
/** 7 a.m. on October 1, 2026, in Idaho. */
const FIRST_OPENING_MS = Date.UTC(2026, 9, 1, 13);

export const instantOf = (day: number, atMin: number): number =>
  FIRST_OPENING_MS + Math.round((day * 1440 + atMin) * MIN_MS);

export const rosterOf = (station: StationHabit): Roster => ({
  ...sampleRoster,
  trucks: Array.from({ length: station.farms[0]?.trucks ?? 0 }, (_, truck) => ({
    id: String(truck),
    name: `Truck ${truck}`,
    aliases: [],
    grossLimitLb: null,
    usualTareLb: null,
  })),
  stations: sampleRoster.stations.map((one) => ({ ...one, pilers: station.pilers })),
});

/** A wait that the crew itself can reckon from its messages, and when the last of these was heard. */
export interface ToldWait {
  joinedMs: number;
  weighedMs: number;
  heardMs: number;
}

export interface Told {
  facts: Fact[];
  waits: ToldWait[];
}

interface Times {
  atMs: number;
  sentMs: number;
  heardMs: number;
  timeStated: boolean;
}

const factOf = (happening: Happening, cause: string, times: Times): Fact => {
  const header: FactHeader = { id: `${cause}#0`, cause, by: 'ana', ...times };
  return { ...header, ...happening };
};

const held = (station: StationHabit, sentMs: number, random: Random): number =>
  sentMs + (random() < station.crew.heldUpShare ? between(random, 5, 40) * MIN_MS : 0);

const sentNow = (station: StationHabit, sentMs: number, random: Random): Times => ({
  atMs: sentMs,
  sentMs,
  heardMs: held(station, sentMs, random),
  timeStated: false,
});

/** "In line at 9:05": half of the drivers round to five minutes. */
const joinTimes = (station: StationHabit, joinedMs: number, random: Random): Times => {
  const { lateMin, timeSaidShare } = station.crew;
  const sentMs = joinedMs + Math.round(2 * lateMin * random() * MIN_MS);
  if (random() >= timeSaidShare) return sentNow(station, sentMs, random);
  const wholeMs = (random() < 0.5 ? 5 : 1) * MIN_MS;
  const saidMs = Math.min(sentMs, Math.round(joinedMs / wholeMs) * wholeMs);
  const laterMs = sentMs + Math.round(10 * random()) * MIN_MS;
  return { atMs: saidMs, sentMs: laterMs, heardMs: held(station, laterMs, random), timeStated: true };
};

const silent = { field: null, station: STATION, grossLb: null, words: null };

const ticketTimes = (station: StationHabit, day: number, round: Round, random: Random): Times => {
  const { crew, openMin, printsFirstWeight } = station;
  const afterMin = random() < crew.ticketAtNightShare ? 0 : exponential(random, crew.ticketAfterMin);
  const sentMin = afterMin === 0 ? Math.max(openMin + 30, round.secondMin + 1) : round.secondMin + afterMin;
  const sentMs = instantOf(day, sentMin);
  const heardMs = held(station, sentMs, random);
  return printsFirstWeight
    ? { atMs: instantOf(day, round.secondMin), sentMs, heardMs, timeStated: true }
    : { atMs: sentMs, sentMs, heardMs, timeStated: false };
};

const tellRound = (station: StationHabit, day: number, round: Round, random: Random): Told => {
  const { crew, printsFirstWeight } = station;
  const truck = String(round.truck);
  const cause = `told:${day}:${truck}:${Math.round(round.joinedMin)}`;
  const facts: Fact[] = [];
  const overnight = Number.isNaN(round.loadedMin);
  const joinedMs = instantOf(day, round.joinedMin);
  const join = joinTimes(station, joinedMs, random);
  const joinTold = random() >= (overnight ? 0.5 : crew.joinMissingShare);
  if (!overnight && random() < crew.loadedShare) {
    const leftMs = instantOf(day, round.loadedMin + 3 * random());
    facts.push(
      factOf(
        { kind: 'truck-reported', truck, step: 'left-field', ...silent },
        `${cause}:left`,
        sentNow(station, leftMs, random),
      ),
    );
  }
  if (joinTold)
    facts.push(
      factOf({ kind: 'truck-reported', truck, step: 'joined-line', ...silent }, `${cause}:join`, join),
    );
  if (joinTold && random() < crew.countShare) {
    const ahead = Math.max(0, Math.round(round.ahead * (1 + 0.15 * normal(random))));
    facts.push(factOf({ kind: 'line-seen', station: STATION, ahead, truck }, `${cause}:seen`, join));
  }
  if (Number.isNaN(round.secondMin) || random() < crew.ticketMissingShare) return { facts, waits: [] };
  const times = ticketTimes(station, day, round, random);
  const weighedMs = instantOf(day, round.weighedMin);
  const ticket = {
    station: STATION,
    serial: String(round.serial),
    truck,
    field: null,
    grossLb: 78_000,
    tareLb: 30_000,
    netLb: 48_000,
    firstWeighedMs: printsFirstWeight ? weighedMs : null,
  };
  facts.push(factOf({ kind: 'ticket-booked', ticket }, `${cause}:ticket`, times));
  if (overnight || !joinTold || !printsFirstWeight) return { facts, waits: [] };
  const known = Math.max(times.heardMs, join.heardMs);
  return { facts, waits: [{ joinedMs: Math.min(join.atMs, weighedMs), weighedMs, heardMs: known }] };
};

export const tellDay = (
  station: StationHabit,
  day: number,
  rounds: readonly Round[],
  random: Random,
): Told => {
  const told = rounds.filter(({ farm }) => farm === 0).map((round) => tellRound(station, day, round, random));
  return { facts: told.flatMap(({ facts }) => facts), waits: told.flatMap(({ waits }) => waits) };
};
