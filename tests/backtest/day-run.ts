/** One simulated day of a station, as it was and as the bot heard of it. */
import { randomFrom, seedOf } from '../../src/core/line/model/random.ts';
import type { Random } from '../../src/core/line/model/random.ts';
import type { LineObservations } from '../../src/core/line/types.ts';
import { correctedWait } from './rules/naive.ts';
import type { TestSet } from './sets.ts';
import { hearDay, observed } from './simulator/crew.ts';
import type { DayHeard, Hearing, Rolls } from './simulator/crew.ts';
import { newDay, runDay } from './simulator/day.ts';
import type { DayState } from './simulator/day.ts';
import type { DayPlan } from './simulator/plan.ts';
import { drawDay } from './simulator/station.ts';
import type { Station } from './simulator/station.ts';

export interface TrueDay {
  station: Station;
  seed: number;
  day: number;
  plan: DayPlan;
  state: DayState;
}

export interface DayRun extends TrueDay {
  hearing: Hearing;
  heard: DayHeard;
}

/** After the last truck has gone. */
export const NIGHT_MIN = 2000;

export const trueDay = (station: Station, seed: number, day: number): TrueDay => {
  const plan = drawDay(station, day, seed);
  const run = { station, seed, day, plan };
  return { ...run, state: dayUntil(run, NIGHT_MIN) };
};

/** The same day, run again up to a moment. */
export const dayUntil = ({ station, seed, day, plan }: Omit<TrueDay, 'state'>, nowMin: number): DayState => {
  const random = randomFrom(seedOf(seed, station.number, day, 1));
  const state = newDay(plan, random);
  runDay(state, plan, random, nowMin);
  return state;
};

/** `days` as the bot hears of them under `set`, in order: serials go on from day to day. */
export const heardUnder = (
  days: readonly TrueDay[],
  { hearing, rollsApart }: Pick<TestSet, 'hearing' | 'rollsApart'>,
): DayRun[] => {
  const rolls: Rolls = [4000, 52_000];
  return days.map((one) => {
    if (rollsApart !== null) rolls[1] = rolls[0] + rollsApart;
    const ear = randomFrom(seedOf(one.seed, one.station.number, one.day, 2));
    return { ...one, hearing, heard: hearDay(one.station, rolls, one.state, hearing, ear) };
  });
};

export const seenAt = ({ station, day, heard, hearing }: DayRun, nowMin: number): LineObservations =>
  observed(station, day, heard, hearing, nowMin);

export interface JoinAndWait {
  joinedMin: number;
  waitMin: number;
}

const some = <T>(all: readonly T[], most: number, random: Random): T[] =>
  all
    .map((one) => ({ one, by: random() }))
    .sort((a, b) => a.by - b.by)
    .slice(0, most)
    .map(({ one }) => one);

/** What the bot itself comes to know of its trucks' waits: only with a join and a ticket, the join late. */
export const feedback = (run: DayRun, most: number, random: Random): JoinAndWait[] =>
  some(
    run.heard.trips.flatMap((trip) => {
      if (trip.joinHeardMin === null || trip.ticketHeardMin === null) return [];
      const waitMin = correctedWait(trip.joinStampMin, trip.truck.weighedMin);
      return [{ joinedMin: trip.truck.weighedMin - waitMin, waitMin }];
    }),
    most,
    random,
  );

const TARGETS_PER_DAY = 5;

/** Trucks that the rules are asked about: any of the station, each at every lead. */
export const targets = ({ state, station, seed, day }: DayRun): JoinAndWait[] =>
  some(
    state.trucks
      .filter(({ joinedMin, weighedMin }) => joinedMin > 60 && joinedMin < 780 && !Number.isNaN(weighedMin))
      .map(({ joinedMin, weighedMin }) => ({ joinedMin, waitMin: weighedMin - joinedMin })),
    TARGETS_PER_DAY,
    randomFrom(seedOf(seed, station.number, day, 5)),
  );

export const trueLine = ({ state }: TrueDay, nowMin: number): number =>
  state.trucks.filter(({ joinedMin, weighedMin }) => joinedMin < nowMin && weighedMin > nowMin).length;
