/**
 * The fluid rule of two odometers: the truck weighed last left behind it what joined while it waited; since then the
 * line grew by the usual arrivals and shrank by the usual rate (time-varying fluid, Ibrahim & Whitt, POMS 20(5), 2011).
 */
import { atBin } from '../../../src/core/line/model/usual-day.ts';
import type { UsualDay } from '../../../src/core/line/model/usual-day.ts';
import type { SeenWait } from './naive.ts';

const STEP_MIN = 2;

export const fluid = (
  waits: readonly SeenWait[],
  nowMin: number,
  leadMin: number,
  profile: UsualDay,
  usualPilers: number,
): number => {
  const last = waits.at(-1) ?? { joinedMin: 0, weighedMin: 0 };
  const ratePerMin = (0.5 + 0.5 * usualPilers) / profile.minPerTruck;
  let line = 0;
  for (let min = last.joinedMin; min < last.weighedMin; min += STEP_MIN)
    line += STEP_MIN * atBin(profile.arrivalsPerMin, min);
  for (let min = last.weighedMin; min < nowMin + leadMin; min += STEP_MIN)
    line = Math.max(0, line + STEP_MIN * (atBin(profile.arrivalsPerMin, min) - ratePerMin));
  return line / ratePerMin;
};
