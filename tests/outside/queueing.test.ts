/** The fleet's figures and the simulated station against queueing theory. */
import { describe, expect, it } from 'vitest';
import { erlangB, idleShareBound, trucksNeeded } from '../../src/core/line/fleet.ts';
import { exponential, normal, randomFrom } from '../../src/core/line/model/random.ts';
import type { Random } from '../../src/core/line/model/random.ts';
import { newDay, runDay } from '../backtest/simulator/day.ts';
import type { Truck } from '../backtest/simulator/day.ts';
import { lognormal } from '../backtest/simulator/plan.ts';
import type { DayPlan } from '../backtest/simulator/plan.ts';
import stored from './fixtures/queueing.json' with { type: 'json' };
import { byOctave, byScipy } from './recompute.ts';

const recomputed = {
  octave: byOctave(Object.keys(stored.octave)),
  scipy: byScipy(Object.keys(stored.scipy)),
};

describe.each(['octave', 'scipy'] as const)('the stored values of %s', (program) => {
  it.skipIf(recomputed[program] === null)('come out again (skipped where it is not installed)', () => {
    const values = Object.values(stored[program]);
    expect(recomputed[program]?.length).toBe(values.length);
    values.forEach((value, index) => {
      expect(recomputed[program]?.[index]).toBeCloseTo(value, 5);
    });
  });
});

describe('Erlang B (Erlang, 1917)', () => {
  it.each([
    [2, 1.5, stored.octave['erlangb(1.5,2)']],
    [3, 2, stored.octave['erlangb(2,3)']],
    [5, 4, stored.octave['erlangb(4,5)']],
  ])('of %d servers offered %d', (servers, offered, blocked) => {
    expect(erlangB(servers, offered)).toBeCloseTo(blocked, 6);
  });

  // C = B / (1 - a/c (1 - B)): any teletraffic handbook.
  it.each([
    [2, 1.5, stored.octave['erlangc(1.5,2)']],
    [2, 1.8, stored.octave['erlangc(1.8,2)']],
    [3, 2, stored.octave['erlangc(2,3)']],
    [4, 3, stored.octave['erlangc(3,4)']],
    [5, 4, stored.octave['erlangc(4,5)']],
  ])('gives Erlang C of %d servers offered %d', (servers, offered, waiting) => {
    const blocked = erlangB(servers, offered);
    expect(blocked / (1 - (offered / servers) * (1 - blocked))).toBeCloseTo(waiting, 6);
  });
});

describe('the idle digger is the idle repairman of few machines (Palm 1947; Hillier & Lieberman)', () => {
  // Digger busy by trucks 3-8; rows of the textbook formula 1 / sum N!/(N-k)! (S/Z)^k.
  it.each([
    [11, 34, [0.643087, 0.783824, 0.882117, 0.942749, 0.975344, 0.990564]],
    [11, 44, [0.549296, 0.68932, 0.800933, 0.882838, 0.937251, 0.96958]],
    [11, 49, [0.510697, 0.647289, 0.7609, 0.849247, 0.912464, 0.953524]],
    [12, 36, [0.653846, 0.793893, 0.889946, 0.947843, 0.978136, 0.991868]],
    [10, 50, [0.470339, 0.601657, 0.715132, 0.808153, 0.879481, 0.929952]],
  ])('load %d min, away %d min', (loadMin, awayMin, busy) => {
    busy.forEach((share, index) => {
      expect(1 - idleShareBound(3 + index, { loadMin, awayMin })).toBeCloseTo(share, 5);
    });
  });

  it('five copiers that fail every 2.5 days and take 0.4 day: nothing to repair 37.75 % of the time', () => {
    expect(idleShareBound(5, { loadMin: 0.4, awayMin: 2.5 })).toBeCloseTo(0.377503, 5);
  });

  it('two machines, 10 h up, 8 h in repair: both up 25.77 % of the time', () => {
    expect(idleShareBound(2, { loadMin: 8, awayMin: 10 })).toBeCloseTo(0.257732, 5);
  });

  it('four to six trucks match a digger (load 10-12 min, cycle 45-60 min: match factor 1), and one is to spare', () => {
    expect(trucksNeeded({ loadMin: 12, awayMin: 33 })).toBe(5);
    expect(trucksNeeded({ loadMin: 11, awayMin: 44 })).toBe(6);
    expect(trucksNeeded({ loadMin: 10, awayMin: 50 })).toBe(7);
  });
});

/** A station that is nothing but a queue: weighed when a piler is free, no breakdowns, no noise. */
const queue = (pilers: number, perMin: number, unloadMin: DayPlan['unloadMin']): DayPlan => ({
  dayMin: LONG_MIN,
  arrivalsPerMin: () => perMin,
  noise: { sd: 0, memoryMin: 60 },
  fleets: [],
  pilers: Array.from({ length: pilers }, () => [{ fromMin: 0, toMin: 1e8 }]),
  unloadMin,
  breakdowns: null,
  scaleMin: 0,
  secondScale: false,
  yard: { base: 0, perPiler: 1 },
  dirtBackMin: 0,
});

const LONG_MIN = 1_500_000;
const WARM_UP = 1000;

const trucksOf = (plan: DayPlan, untilMin = 1e7): Truck[] => {
  const random = randomFrom(20_261_020);
  const state = newDay(plan, random);
  runDay(state, plan, random, untilMin);
  return state.trucks.slice(WARM_UP);
};

const mean = (numbers: readonly number[]): number =>
  numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
const waits = (trucks: readonly Truck[]): number[] =>
  trucks.map(({ joinedMin, weighedMin }) => weighedMin - joinedMin);

/** Relative error of a long run; with 200,000 trucks at 80 % busy chance alone makes 1-2 %. */
const NEAR = 0.04;
const expectNear = (value: number, truth: number): void => {
  expect(Math.abs(value / truth - 1)).toBeLessThan(NEAR);
};

describe('the simulated station, 8 trucks an hour, 6 min each (Pollaczek 1930, Khinchine 1932)', () => {
  const PER_MIN = 8 / 60;
  it.each([
    ['all alike (M/D/1)', () => 6, stored.octave['nthargout(2,@qsmg1,8,.1,.01)*60']],
    [
      'scattering by 0.4',
      (random: Random) => lognormal(normal(random), 6, 0.4),
      stored.octave['nthargout(2,@qsmg1,8,.1,.0116)*60'],
    ],
    [
      'exponential (M/M/1)',
      (random: Random) => exponential(random, 6),
      stored.octave['nthargout(2,@qsmm1,8,10)*60'],
    ],
  ])('unloading %s', (_, unloadMin, inStationMin) => {
    const trucks = trucksOf(queue(1, PER_MIN, unloadMin));
    const waitMin = mean(waits(trucks));
    expectNear(waitMin, inStationMin - 6);
    // Arrivals by chance see the mean line (Wolff 1982), which is rate x wait (Little 1961).
    expectNear(mean(trucks.map(({ ahead }) => ahead)), PER_MIN * waitMin);
  });

  it('with two pilers waits 1.2857 unloading times at a load of 1.5 (M/M/2, Erlang C)', () => {
    const trucks = trucksOf(queue(2, 1.5 / 6, (random) => exponential(random, 6)));
    expectNear(mean(waits(trucks)) / 6, stored.octave['nthargout(2,@qsmmm,1.5,1,2)'] - 1);
  });

  it('with four ahead and one on the piler waits for five unloadings: an Erlang time', () => {
    const trucks = trucksOf(queue(1, 0.8 / 5.3, (random) => exponential(random, 5.3)));
    const behindFour = waits(trucks.filter(({ ahead }) => ahead === 4)).sort((a, b) => a - b);
    const at = (share: number): number => behindFour[Math.floor(share * behindFour.length)] ?? NaN;
    expectNear(at(0.1), stored.scipy['stats.gamma.ppf(.1,5,scale=5.3)']);
    expectNear(at(0.5), stored.scipy['stats.gamma.ppf(.5,5,scale=5.3)']);
    expectNear(at(0.9), stored.scipy['stats.gamma.ppf(.9,5,scale=5.3)']);
  });
});

describe('the simulated fleet', () => {
  it.each([3, 5, 7])('of %d trucks keeps its digger as busy as the finite-source model says', (fleet) => {
    const untilMin = 300_000;
    const [loadMin, haulMin] = [11, 22];
    const plan: DayPlan = {
      ...queue(fleet, 0, () => 0),
      dayMin: 0,
      fleets: [
        {
          trucks: fleet,
          firstLoadMin: 0,
          loadMin: (random) => exponential(random, loadMin),
          // The model holds for any scatter of the time away.
          haulMin: (random) => lognormal(normal(random), haulMin, 0.3),
          lunch: { fromMin: -2, toMin: -1 },
          lastLoadMin: untilMin,
        },
      ],
    };
    const loads = trucksOf(plan).length + WARM_UP;
    expectNear((loads * loadMin) / untilMin, 1 - idleShareBound(fleet, { loadMin, awayMin: 2 * haulMin }));
  });
});
