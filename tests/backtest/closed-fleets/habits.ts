/**
 * Stations that the forecast was not built on: closed fleets of several farms, stops by the clock, breakdowns with heavy
 * tails, gaps in the serials, crews that report exactly or late. No figure of the forecast is used here.
 *
 * Seen in the trade, by public accounts: 4-29 trucks an hour and piler (crew diaries: travelingnaturejournal day 14,
 * mountainborn 2010, whatsnewell 2013); loads of 20 tons (rv.cjsquare.com/?p=5100); about 7 min to fill a truck, back
 * every 30 min from close fields, a dump under 5 min, lines of 3-4 trucks, hours when a piler breaks
 * (followthecougar.blogspot.com/2015/10/ten-days-of-work, everydaylutherans.com/2012/11); 20-30 min one way from far
 * ones (travelingwithtucson 2020); open 7 a.m. to 7 p.m. (powelltribune.com 27841); an hour and more a day to grease
 * and clean (crew diaries). Where no account gives a figure the range is invented, and wide.
 */
import { exponential, randomFrom, seedOf } from '../../../src/core/line/model/random.ts';
import type { Random } from '../../../src/core/line/model/random.ts';

export interface FarmHabit {
  trucks: number;
  haulMin: number;
  fillMin: number;
  /** After opening. */
  startsMin: number;
  lunch: { atMin: number; lastsMin: number };
  /** Chance that it does not dig on a day. */
  restShare: number;
}

export interface CrewHabit {
  /** "In line" is sent so late on average; up to twice that. */
  lateMin: number;
  /** Shares of the messages: with the time in words, never sent, held up on the way. */
  timeSaidShare: number;
  joinMissingShare: number;
  ticketMissingShare: number;
  heldUpShare: number;
  loadedShare: number;
  countShare: number;
  ticketAfterMin: number;
  /** Share of the tickets that are sent only when the shift is over. */
  ticketAtNightShare: number;
}

export interface StationHabit {
  number: number;
  seed: number;
  openMin: number;
  pilers: number;
  scales: number;
  scaleMin: number;
  unloadMin: number;
  /** Places behind the scale, for each piler. */
  yard: number;
  /** All work stops, by the clock, minutes after opening. */
  stops: readonly { atMin: number; lastsMin: number }[];
  /** Each piler is cleaned once a day for so long. */
  cleaningMin: number;
  brokenEveryMin: number;
  /** Chance of a gap in the serials, each day and scale. */
  gapShare: number;
  /** Share of the serials that other traffic uses. */
  otherSerials: number;
  printsFirstWeight: boolean;
  /** Number 0 is ours. */
  farms: readonly FarmHabit[];
  crew: CrewHabit;
}

export const between = (random: Random, from: number, to: number): number => from + (to - from) * random();

const oneOf = <T>(random: Random, all: readonly [T, ...T[]]): T =>
  all[Math.floor(all.length * random())] ?? all[0];

const farm = (random: Random): FarmHabit => ({
  trucks: 3 + Math.floor(4 * random()),
  haulMin: between(random, 7, 34),
  fillMin: between(random, 6.5, 13),
  startsMin: between(random, -45, 60),
  lunch: { atMin: between(random, 270, 345), lastsMin: random() < 0.5 ? between(random, 20, 50) : 0 },
  restShare: between(random, 0, 0.25),
});

const crew = (random: Random): CrewHabit => ({
  lateMin: oneOf(random, [0, 0.5, 2, 4]),
  timeSaidShare: oneOf(random, [0, 0, 0.2, 0.8]),
  joinMissingShare: between(random, 0.03, 0.35),
  ticketMissingShare: between(random, 0, 0.25),
  heldUpShare: between(random, 0, 0.12),
  loadedShare: oneOf(random, [0, 0.5, 0.9]),
  countShare: oneOf(random, [0, 0, 0.2]),
  ticketAfterMin: between(random, 1, 12),
  ticketAtNightShare: oneOf(random, [0, 0, 0.15]),
});

/** Trucks an hour that a farm brings while nothing holds it up. */
const perHour = ({ trucks, haulMin, fillMin }: FarmHabit): number =>
  60 * Math.min(1 / fillMin, trucks / (2 * haulMin + fillMin + 15));

const stopsOf = (random: Random): StationHabit['stops'] => {
  const lunch = { atMin: between(random, 285, 330), lastsMin: between(random, 20, 45) };
  const shift = { atMin: between(random, 470, 500), lastsMin: between(random, 10, 20) };
  return oneOf<StationHabit['stops']>(random, [[], [lunch], [shift], [lunch, shift]]);
};

export const drawHabits = (number: number, seed: number): StationHabit => {
  const random = randomFrom(seedOf(seed, number, 77));
  const pilers = oneOf(random, [1, 1, 2, 2, 3, 4]);
  const unloadMin = between(random, 2.4, 7.5);
  const wanted = (between(random, 0.6, 1) * pilers * 60) / unloadMin;
  const farms = [farm(random)];
  while (farms.reduce((sum, one) => sum + perHour(one) * (1 - one.restShare), 0) < wanted)
    farms.push(farm(random));
  return {
    number,
    seed,
    openMin: 720,
    pilers,
    scales: pilers > 1 && random() < 0.45 ? 2 : 1,
    scaleMin: between(random, 0.7, 1.7),
    unloadMin,
    yard: 1 + Math.floor(3 * random()),
    stops: stopsOf(random),
    cleaningMin: oneOf(random, [0, 25, 60]),
    brokenEveryMin: between(random, 300, 1500),
    gapShare: oneOf(random, [0, 0.1, 0.4]),
    otherSerials: oneOf(random, [0, 0.03, 0.12]),
    printsFirstWeight: random() < 0.8,
    farms,
    crew: crew(random),
  };
};

/** Half an hour mostly, now and then most of the day: Pareto lengths, cut off at three hours. */
export const brokenForMin = (random: Random): number => Math.min(180, 7 * (1 - random()) ** (-1 / 1.1));

/** Mostly alike; one load in twenty is mud, or a gate that sticks. */
export const unloadFor = (random: Random, meanMin: number): number =>
  random() < 0.05 ? 2.5 * meanMin : meanMin * (0.7 + exponential(random, 0.22));
