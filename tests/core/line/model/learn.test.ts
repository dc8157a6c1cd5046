import { beforeAll, describe, expect, it } from 'vitest';
import { meanHabitMin } from '../../../../src/core/line/model/lateness.ts';
import { learnProfile } from '../../../../src/core/line/model/learn.ts';
import { BIN_MIN, defaultProfile } from '../../../../src/core/line/model/usual-day.ts';
import type { UsualDay } from '../../../../src/core/line/model/usual-day.ts';
import { exponential, randomFrom } from '../../../../src/core/line/model/random.ts';
import type { LineObservations } from '../../../../src/core/line/types.ts';
import { scene, visit } from '../scene.ts';

const DAY_MS = 86_400_000;
const UNLOAD_MIN = 6;

/**
 * One piler that takes 6 min a truck; trucks come in the morning at twice the rate of the afternoon, every seventh is
 * ours, and serials go on overnight.
 */
const simulatedDays = (days: number, lateMin = 0): LineObservations[] => {
  const random = randomFrom(5);
  const ear = randomFrom(6);
  let serial = 4000;
  return Array.from({ length: days }, (_, day) => {
    const visits = [];
    let freeMin = 0;
    for (let min = exponential(random, 5); min < 600; min += exponential(random, min < 300 ? 7.5 : 15)) {
      serial += 1;
      const weighedMin = Math.max(min, freeMin);
      freeMin = weighedMin + UNLOAD_MIN;
      if (serial % 4 === 0) visits.push(visit(`t${serial}`, min + 2 * lateMin * ear(), weighedMin, serial));
    }
    const shifted = visits.map((one) => ({
      ...one,
      joinedMs: one.joinedMs === null ? null : one.joinedMs + day * DAY_MS,
      firstWeighedMs: one.firstWeighedMs === null ? null : one.firstWeighedMs + day * DAY_MS,
      secondWeighedMs: one.secondWeighedMs === null ? null : one.secondWeighedMs + day * DAY_MS,
      heardMs: one.heardMs + day * DAY_MS,
    }));
    const today = scene(shifted);
    return { ...today, opening: (today.opening ?? 0) + day * DAY_MS };
  });
};

describe('how late a crew tells "in line"', () => {
  const lateOf = (lateMin: number): number => meanHabitMin(learnProfile(simulatedDays(8, lateMin), 1).late);

  it('is learned: a crew that tells at once is not taken for one that tells late', () => {
    const exact = lateOf(0);
    expect(exact).toBeLessThan(1);
    expect(lateOf(6)).toBeGreaterThan(2 * exact);
  });
});

describe('the profile learned from past days', () => {
  let profile: UsualDay;
  beforeAll(() => {
    profile = learnProfile(simulatedDays(20), 1);
  });
  const trucks = (fromMin: number, toMin: number): number =>
    profile.arrivalsPerMin
      .slice(fromMin / BIN_MIN, toMin / BIN_MIN)
      .reduce((sum, rate) => sum + rate * BIN_MIN, 0);

  it('is the default before the first day', () => {
    expect(learnProfile([], 2)).toEqual(defaultProfile(2));
  });

  it('finds how many trucks come, and that the morning is busier', () => {
    expect(Math.abs(trucks(0, 600) / 60 - 1)).toBeLessThan(0.15);
    expect(trucks(60, 300)).toBeGreaterThan(1.4 * trucks(330, 570));
  });

  it('comes near the rate of the piler from the default', () => {
    expect(Math.abs(profile.minPerTruck - UNLOAD_MIN)).toBeLessThan(
      Math.abs(defaultProfile(1).minPerTruck - UNLOAD_MIN),
    );
  });

  it('tells the usual wait by the hour, and counts its days', () => {
    expect(profile.usual[1]?.medianMin).toBeGreaterThan(0);
    expect(profile.usual[1]?.highMin).toBeGreaterThan(profile.usual[1]?.medianMin ?? NaN);
    expect(profile.days).toBe(20);
  });
});

describe('a station whose serials have gaps', () => {
  /** Every day at some hour a new block of tickets is begun, some hundreds further on. */
  const withGaps = (days: readonly LineObservations[]): LineObservations[] =>
    days.map((day, number) => ({
      ...day,
      visits: day.visits.map((one, place) => ({
        ...one,
        serial: String(Number(one.serial) + 300 * (number + (place > 4 + (number % 5) ? 1 : 0))),
      })),
    }));

  it('is not taken for one with several scales and many more trucks', () => {
    const days = simulatedDays(10);
    const trucks = (of: readonly LineObservations[]): number =>
      learnProfile(of, 1).arrivalsPerMin.reduce((sum, rate) => sum + rate * BIN_MIN, 0);
    expect(trucks(withGaps(days))).toBeLessThan(1.3 * trucks(days));
  });
});

describe('how a crew reports its tickets', () => {
  const told = (afterMin: number, lostEvery: number): UsualDay => {
    const days = simulatedDays(4).map((day) => ({
      ...day,
      visits: day.visits.map((one, place) =>
        place % lostEvery === 0
          ? { ...one, firstWeighedMs: null, secondWeighedMs: null, serial: null, heardMs: one.joinedMs ?? 0 }
          : { ...one, heardMs: (one.secondWeighedMs ?? 0) + afterMin * 60_000 },
      ),
    }));
    return learnProfile(days, 1);
  };

  it('is learned: how many are lost, and how long after the second weight the others are told', () => {
    const careful = told(1, 1000).tickets;
    const careless = told(15, 4).tickets;
    expect(careful.lostShare).toBeLessThan(0.08);
    expect(careless.lostShare).toBeGreaterThan(0.15);
    expect(careful.toldAfterMin).toBeLessThan(3);
    expect(careless.toldAfterMin).toBeGreaterThan(8);
  });
});
