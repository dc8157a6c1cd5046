/**
 * Stations as they might be: each keeps its habits from day to day, and every day differs a little.
 *
 * Ranges: 30-250 trucks in a day of 13 h; unloading 4.2-6.5 min with CV 0.4; breakdowns of 10-40 min; a second piler
 * so that the pilers are busy .66-.86 of the time. Per-piler rates seen at stations go from 4 to 29 trucks an hour
 * (crew diaries: travelingnaturejournal day 14; mountainborn 2010; whatsnewell 2013). The rest is invented.
 */
import { normal, randomFrom, seedOf } from '../../../src/core/line/model/random.ts';
import type { Random } from '../../../src/core/line/model/random.ts';
import { lognormal } from './plan.ts';
import type { DayPlan, Fleet, Window } from './plan.ts';

export type Family = 'open' | 'closed';

interface FleetHabit {
  trucks: number;
  haulMin: number;
  loadMin: number;
}

export interface Station {
  number: number;
  family: Family;
  /** Loads of ours that are wanted to be seen in a day. */
  ownLoads: number;
  trucksPerDay: number;
  unloadMin: number;
  busy: number;
  pilers: number;
  secondWindows: readonly Window[];
  secondScale: boolean;
  serialAt: 'first' | 'second';
  yardPerPiler: number;
  shape: { startBoost: number; startMin: number; lunchDip: number; lunchMin: number; noonBoost: number };
  /** Number 0 is ours. Empty in the open family. */
  fleets: readonly FleetHabit[];
}

const DAY_MIN = 780;
const between = (random: Random, from: number, to: number): number => from + (to - from) * random();

const roundTripMin = ({ trucks, haulMin, loadMin }: FleetHabit): number =>
  Math.max(2 * haulMin + loadMin + 25, trucks * loadMin);

const tripsPerDay = (habit: FleetHabit): number => (habit.trucks * 0.88 * DAY_MIN) / roundTripMin(habit);

const fleetHabits = (random: Random, ownLoads: number, trucksPerDay: number): FleetHabit[] => {
  const draw = (): FleetHabit => ({
    trucks: 2 + Math.floor(6 * random()),
    haulMin: between(random, 12, 40),
    loadMin: between(random, 9, 13),
  });
  const own = draw();
  own.trucks = Math.max(1, Math.round((ownLoads * roundTripMin({ ...own, trucks: 1 })) / (0.88 * DAY_MIN)));
  const fleets = [own];
  let trips = tripsPerDay(own);
  while (trips < 0.6 * trucksPerDay) {
    const other = draw();
    fleets.push(other);
    trips += tripsPerDay(other);
  }
  return fleets;
};

/** Truck-minutes of the day beyond what one piler can do, given to the second one, in one or two windows. */
const secondPilerWindows = (random: Random, minutes: number): Window[] => {
  if (minutes < 40) return [];
  const length = Math.min(minutes, 0.95 * DAY_MIN);
  if (random() < 0.5) {
    const fromMin = between(random, 0, DAY_MIN - length);
    return [{ fromMin, toMin: fromMin + length }];
  }
  const gap = between(random, 0, DAY_MIN - length);
  const first = between(random, 0.3, 0.7) * length;
  const fromMin = between(random, 0, DAY_MIN - length - gap);
  return [
    { fromMin, toMin: fromMin + first },
    { fromMin: fromMin + first + gap, toMin: fromMin + length + gap },
  ];
};

export const drawStation = (number: number, family: Family, ownLoads: number, seed: number): Station => {
  const random = randomFrom(seedOf(seed, number));
  const unloadMin = between(random, 4.2, 6.5);
  const trucksPerDay = between(random, 30, Math.min(250, (2 * DAY_MIN * 0.85) / unloadMin));
  const busy = between(random, 0.66, 0.86);
  const secondWindows = secondPilerWindows(random, (trucksPerDay * unloadMin) / busy - DAY_MIN);
  const pilers = secondWindows.length > 0 ? 2 : 1;
  return {
    number,
    family,
    ownLoads,
    trucksPerDay,
    unloadMin,
    busy,
    pilers,
    secondWindows,
    secondScale: pilers === 2 && random() < 0.5,
    serialAt: random() < 0.6 ? 'first' : 'second',
    yardPerPiler: between(random, 1, 3) < 2 ? 1 : 2,
    shape: {
      startBoost: between(random, 0.6, 1.6),
      startMin: between(random, 25, 60),
      lunchDip: between(random, 0.2, 0.6),
      lunchMin: between(random, 300, 390),
      noonBoost: between(random, 0, 0.5),
    },
    fleets: family === 'closed' ? fleetHabits(random, ownLoads, trucksPerDay) : [],
  };
};

const bump = (atMin: number, middleMin: number, widthMin: number): number =>
  Math.exp(-0.5 * ((atMin - middleMin) / widthMin) ** 2);

const shapeAt = ({ shape }: Station, atMin: number): number =>
  1 +
  shape.startBoost * bump(atMin, shape.startMin, 30) -
  shape.lunchDip * bump(atMin, shape.lunchMin, 30) +
  shape.noonBoost * bump(atMin, 560, 80);

const dayFleet = (habit: FleetHabit, random: Random): Fleet => {
  const lunchFromMin = between(random, 290, 380);
  const lastLoadMin = DAY_MIN - 50 - habit.haulMin;
  return {
    trucks: habit.trucks,
    // Some farms do not dig on a given day.
    firstLoadMin: random() < 0.1 && habit.trucks > 0 ? between(random, 120, 400) : between(random, -40, 30),
    loadMin: (draw) => lognormal(normal(draw), habit.loadMin, 0.2),
    haulMin: (draw) => lognormal(normal(draw), habit.haulMin, 0.2),
    lunch: { fromMin: lunchFromMin, toMin: lunchFromMin + between(random, 20, 40) },
    lastLoadMin,
  };
};

/** The piler boss opens the second piler about when he usually does. */
const dayWindows = (windows: readonly Window[], stretch: number, random: Random): Window[] => {
  let lastMin = 0;
  return windows.map(({ fromMin, toMin }) => {
    const middleMin = (fromMin + toMin) / 2 + 30 * normal(random);
    const half = ((toMin - fromMin) / 2) * stretch;
    const from = Math.max(lastMin, middleMin - half);
    lastMin = Math.max(from + 5, middleMin + half);
    return { fromMin: from, toMin: lastMin };
  });
};

export const drawDay = (station: Station, day: number, seed: number): DayPlan => {
  const random = randomFrom(seedOf(seed, station.number, day));
  const level = Math.exp(0.2 * normal(random) - 0.02);
  const unloadMin = station.unloadMin * Math.exp(0.08 * normal(random));
  const shapeMean = mean(Array.from({ length: 156 }, (_, i) => shapeAt(station, 5 * i)));
  const fleetTrips = station.fleets.reduce((sum, fleet) => sum + tripsPerDay(fleet), 0);
  const alone = Math.max(0, station.trucksPerDay - fleetTrips);
  const stretch = level;
  return {
    dayMin: DAY_MIN,
    arrivalsPerMin: (atMin) => (level * alone * shapeAt(station, atMin)) / shapeMean / DAY_MIN,
    noise: { sd: 0.25, memoryMin: 60 },
    fleets: station.fleets.map((fleet) => dayFleet(fleet, random)),
    pilers: [
      [{ fromMin: 0, toMin: 1e6 }],
      ...(station.pilers === 2 ? [dayWindows(station.secondWindows, stretch, random)] : []),
    ],
    unloadMin: (draw) => lognormal(normal(draw), unloadMin, 0.4),
    breakdowns: { meanBetweenMin: 500, shortestMin: 10, longestMin: 40 },
    scaleMin: 1.2,
    secondScale: station.secondScale,
    yard: { base: 1, perPiler: station.yardPerPiler },
    dirtBackMin: 1.75,
  };
};

const mean = (numbers: readonly number[]): number =>
  numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
