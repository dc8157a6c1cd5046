/**
 * Which of the simulated trucks are ours: a thinned sample, held against the line-length estimator of Comert & Cetin,
 * "Queue length estimation from probe vehicle location and the impacts of sample size", EJOR 197 (2009). With a share p
 * of probes, a Poisson prior of mean L and the last probe at place l, P(n) is as prior(n) (1 - p)^(n - l), n >= l.
 */
import { describe, expect, it } from 'vitest';
import { randomFrom } from '../../src/core/line/model/random.ts';
import type { Random } from '../../src/core/line/model/random.ts';
import { USUAL_HEARING, hearDay } from '../backtest/simulator/crew.ts';
import { newDay } from '../backtest/simulator/day.ts';
import type { Truck } from '../backtest/simulator/day.ts';
import { poisson } from '../backtest/simulator/plan.ts';
import { drawDay, drawStation } from '../backtest/simulator/station.ts';

const STATION = drawStation(1, 'open', 10, 1);
const EMPTY = newDay(drawDay(STATION, 0, 1), randomFrom(1));
const truck = (place: number): Truck => ({
  fleet: -1,
  joinedMin: place,
  ahead: place,
  weighedMin: place,
  unloadedMin: place,
  secondMin: place,
  scale: 0,
});

/** Places (from 0) of ours in a line of `trucks`. */
const ours = (trucks: number, share: number, random: Random): number[] => {
  const state = { ...EMPTY, trucks: Array.from({ length: trucks }, (_, place) => truck(place)) };
  const station = { ...STATION, ownLoads: share * trucks };
  return hearDay(station, [4000, 52_000], state, USUAL_HEARING, random).trips.map(({ truckName }) =>
    Number(truckName),
  );
};

const mean = (numbers: readonly number[]): number =>
  numbers.reduce((sum, number) => sum + number, 0) / numbers.length;
const sd = (numbers: readonly number[]): number => {
  const middle = mean(numbers);
  return Math.sqrt(mean(numbers.map((number) => (number - middle) ** 2)));
};

describe('trucks of ours among all', () => {
  // (1 - p) / p, sd sqrt(1 - p) / p: geometric.
  it.each([
    [0.05, 19],
    [0.1, 9],
    [0.2, 4],
    [0.3, 2.333333],
    [0.5, 1],
  ])('at a share of %d leave %d unseen between two of ours', (share, unseen) => {
    const places = ours(40_000, share, randomFrom(3));
    const gaps = places.slice(1).map((place, index) => place - (places[index] ?? 0) - 1);
    expect(mean(gaps) / unseen).toBeCloseTo(1, 1);
    expect(sd(gaps) / (Math.sqrt(1 - share) / share)).toBeCloseTo(1, 1);
  });

  it.each([
    [0.1, 7, 10.033526, 2.421729],
    [0.3, 7, 8.895403, 1.845927],
    [0.1, 3, 9.045265, 2.954042],
    [0.3, 3, 7.161164, 2.515824],
  ])('at a share of %d, the last of them at place %d: lines of %d, sd %d', (share, place, line, lineSd) => {
    const random = randomFrom(4);
    const lines: number[] = [];
    for (let trial = 0; trial < 60_000; trial += 1) {
      const trucks = poisson(random, 10);
      if ((ours(trucks, share, random).at(-1) ?? -1) + 1 === place) lines.push(trucks);
    }
    // Several hundred to thousands of lines: chance alone makes up to 0.1.
    expect(Math.abs(mean(lines) - line)).toBeLessThan(0.3);
    expect(Math.abs(sd(lines) - lineSd)).toBeLessThan(0.3);
  });
});
