/** What a simulated station day is made of. All times in minutes since opening. */
import type { Random } from '../../../src/core/line/model/random.ts';

export interface Window {
  fromMin: number;
  toMin: number;
}

/** A farm's trucks that come back: one digger loads them one after another. */
export interface Fleet {
  trucks: number;
  firstLoadMin: number;
  loadMin: (random: Random) => number;
  /** One way. */
  haulMin: (random: Random) => number;
  lunch: Window;
  /** No load is begun later. */
  lastLoadMin: number;
}

export interface DayPlan {
  dayMin: number;
  /** Trucks per minute that come by themselves, before the day's noise. */
  arrivalsPerMin: (atMin: number) => number;
  /** Log-noise of the arrivals: an Ornstein-Uhlenbeck process sampled every 5 min. */
  noise: { sd: number; memoryMin: number };
  fleets: readonly Fleet[];
  /** When each piler is open; a piler serves one truck at a time. */
  pilers: readonly (readonly Window[])[];
  unloadMin: (random: Random) => number;
  /** Per piler; null = none. */
  breakdowns: { meanBetweenMin: number; shortestMin: number; longestMin: number } | null;
  scaleMin: number;
  /** A second scale weighs while the second piler is open. */
  secondScale: boolean;
  /** Trucks between scale and pilers: base + perPiler x pilers open. */
  yard: { base: number; perPiler: number };
  /** From unloaded to the second weight. */
  dirtBackMin: number;
}

export const lognormal = (normalDraw: number, mean: number, cv: number): number => {
  const variance = Math.log(1 + cv * cv);
  return mean * Math.exp(Math.sqrt(variance) * normalDraw - variance / 2);
};

/** Number of arrivals, by inversion; for means up to a few dozen. */
export const poisson = (random: Random, mean: number): number => {
  let term = Math.exp(-mean);
  let left = random() - term;
  let count = 0;
  while (left >= 0 && count < 200) {
    count += 1;
    term *= mean / count;
    left -= term;
  }
  return count;
};
