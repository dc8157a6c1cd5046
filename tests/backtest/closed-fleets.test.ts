/** The simulator of closed fleets against what was seen in the trade; the sources are named in closed-fleets/habits.ts. */
import { describe, expect, it } from 'vitest';
import { randomFrom, seedOf } from '../../src/core/line/model/random.ts';
import { simulateDay } from './closed-fleets/day.ts';
import type { Round } from './closed-fleets/day.ts';
import { drawHabits } from './closed-fleets/habits.ts';
import { tellDay } from './closed-fleets/telling.ts';

const STATIONS = Array.from({ length: 12 }, (_, number) => drawHabits(number, 11));

const dayOf = (number: number): Round[] => {
  const habit = drawHabits(number, 11);
  return simulateDay(habit, [4000, 45_000], [], randomFrom(seedOf(11, number)));
};
const weighed = (number: number): Round[] =>
  dayOf(number)
    .filter(({ weighedMin }) => !Number.isNaN(weighedMin))
    .sort((a, b) => a.weighedMin - b.weighedMin);

describe('a simulated day of closed fleets', () => {
  it.each(STATIONS)('of station $number serves no more than 29 trucks an hour and piler', (habit) => {
    const perHourAndPiler = weighed(habit.number).length / (habit.openMin / 60) / habit.pilers;
    // Most seen: 2,100 trucks a day over 3 pilers (mountainborn, 2010).
    expect(perHourAndPiler).toBeGreaterThan(2);
    expect(perHourAndPiler).toBeLessThan(29);
  });

  it.each(STATIONS)(
    'of station $number weighs first come, first served, and each truck after it joined',
    ({ number }) => {
      const joins = weighed(number).map(({ joinedMin }) => joinedMin);
      expect(joins).toEqual([...joins].sort((a, b) => a - b));
      for (const round of weighed(number)) expect(round.weighedMin).toBeGreaterThanOrEqual(round.joinedMin);
    },
  );

  it('prints serials that rise on each scale, and fall in order of time where there are two', () => {
    const two = STATIONS.find(({ scales }) => scales === 2);
    const falls = (number: number) =>
      weighed(number).filter(({ serial }, at, all) => at > 0 && serial < (all[at - 1]?.serial ?? 0)).length;
    expect(falls(two?.number ?? -1)).toBeGreaterThan(0);
    for (const { number } of STATIONS.filter(({ scales }) => scales === 1)) expect(falls(number)).toBe(0);
  });

  it('is told late or exactly, as is the habit of the crew, and never before it happened', () => {
    for (const habit of STATIONS) {
      const rounds = dayOf(habit.number);
      const { facts } = tellDay(habit, 0, rounds, randomFrom(3));
      expect(facts.length).toBeGreaterThan(0);
      for (const { atMs, sentMs, heardMs } of facts) {
        expect(sentMs).toBeGreaterThanOrEqual(atMs);
        expect(heardMs).toBeGreaterThanOrEqual(sentMs);
      }
    }
  });
});
