/**
 * What nobody can have: the true line, pilers, rates and opening times now, and the trips under way; only the chances
 * that are still to be drawn are unknown. The bound that any rule is measured against.
 */
import { quantile } from '../../../src/core/statistics.ts';
import { randomFrom, seedOf } from '../../../src/core/line/model/random.ts';
import type { WaitInterval } from '../../../src/core/line/model/calibration.ts';
import { copyDay, join, runDay } from '../simulator/day.ts';
import type { DayState } from '../simulator/day.ts';
import type { DayPlan } from '../simulator/plan.ts';

const DRAWS = 40;
const LONGEST_MIN = 600;

export const clairvoyant = (state: DayState, plan: DayPlan, leadMin: number, seed: number): WaitInterval => {
  const waits = Array.from({ length: DRAWS }, (_, draw) => {
    const random = randomFrom(seedOf(seed, draw));
    const day = copyDay(state);
    runDay(day, plan, random, state.nowMin + leadMin);
    const number = join(day, plan, random, -1);
    const joinedMin = day.nowMin;
    const weighed = (): boolean => !Number.isNaN(day.trucks[number]?.weighedMin);
    runDay(day, plan, random, joinedMin + LONGEST_MIN, weighed);
    return weighed() ? (day.trucks[number]?.weighedMin ?? 0) - joinedMin : LONGEST_MIN;
  }).sort((a, b) => a - b);
  return { lowMin: quantile(waits, 0.1), medianMin: quantile(waits, 0.5), highMin: quantile(waits, 0.9) };
};
