/**
 * How warm the roots in the ground are: an estimate from the air alone, used until somebody measures them.
 *
 * Soil under leaves is modelled as a uniform half-space with the air temperature at its surface; each daily wave of it
 * arrives below weakened and late (Hillel 1982, https://soilphysics.okstate.edu). Topping removes the shade: crowns then
 * warm faster than the air.
 */
import { HOURS_PER_DAY, MS_PER_HOUR } from '../units.ts';
import type { EpochMs, Fahrenheit } from '../units.ts';
import {
  DAMPING_DEPTH_CM,
  ROOT_DEPTH_CM,
  TOPPED_WARMEST_ABOVE_F,
  TOPPED_WARMING_F_PER_HOUR,
} from './assumptions.ts';
import { nodesOf, temperatureAt } from './crossing.ts';
import type { HourlyTemperature } from './types.ts';

/** One wave of the day: `cosF` cos(nωt) + `sinF` sin(nωt), n times a day, t from the first of the 24 hours. */
interface Wave {
  timesADay: number;
  cosF: number;
  sinF: number;
}

export interface DailyWaves {
  meanF: Fahrenheit;
  waves: readonly Wave[];
}

const angle = (timesADay: number, hour: number): number => (2 * Math.PI * timesADay * hour) / HOURS_PER_DAY;

/** Mean, first and second wave of 24 hourly temperatures. */
export const dailyWaves = (temperaturesF: readonly Fahrenheit[]): DailyWaves => {
  const count = temperaturesF.length;
  const sum = (weight: (hour: number) => number): number =>
    temperaturesF.reduce((total, temperatureF, hour) => total + temperatureF * weight(hour), 0);
  const wave = (timesADay: number): Wave => ({
    timesADay,
    cosF: (2 / count) * sum((hour) => Math.cos(angle(timesADay, hour))),
    sinF: (2 / count) * sum((hour) => Math.sin(angle(timesADay, hour))),
  });
  return { meanF: sum(() => 1) / count, waves: [wave(1), wave(2)] };
};

/** Temperature at a depth, `hour` hours after the first of the waves' hours. Faster waves reach less deep: d / sqrt(n). */
export const atDepthF = (
  { meanF, waves }: DailyWaves,
  depthCm: number,
  hour: number,
  dampingCm = DAMPING_DEPTH_CM,
): Fahrenheit =>
  waves.reduce((total, { timesADay, cosF, sinF }) => {
    const down = depthCm / (dampingCm / Math.sqrt(timesADay));
    const phase = angle(timesADay, hour) - down;
    return total + Math.exp(-down) * (cosF * Math.cos(phase) + sinF * Math.sin(phase));
  }, meanF);

export interface RootEstimate {
  /** In the ground under leaves. */
  canopiedF: Fahrenheit;
  /** The crown, if topped so many hours before in the sun. */
  toppedF: Fahrenheit;
  /** What it is based on, for the words that explain it. */
  because: { airMeanF: Fahrenheit; depthCm: number; dampingCm: number; sunHours: number };
}

/** How much warmer a topped crown gets than one with leaves, after this many hours of sun. */
export const toppedGainF = (sunHours: number): Fahrenheit =>
  Math.min(Math.max(0, sunHours) * TOPPED_WARMING_F_PER_HOUR, TOPPED_WARMEST_ABOVE_F);

/**
 * The roots at an instant, from the air of the 24 hours around it (12 before to 12 after). Null = the forecast does not
 * cover them.
 */
export const rootEstimate = (
  hours: readonly HourlyTemperature[],
  atMs: EpochMs,
  sunHours: number,
): RootEstimate | null => {
  const nodes = nodesOf(hours);
  const firstMs = atMs - (HOURS_PER_DAY / 2) * MS_PER_HOUR;
  const air = Array.from({ length: HOURS_PER_DAY }, (_, i) =>
    temperatureAt(nodes, firstMs + i * MS_PER_HOUR),
  );
  const known = air.filter((temperatureF) => temperatureF !== null);
  if (known.length < HOURS_PER_DAY) return null;
  const waves = dailyWaves(known);
  const canopiedF = atDepthF(waves, ROOT_DEPTH_CM, HOURS_PER_DAY / 2);
  return {
    canopiedF,
    toppedF: canopiedF + toppedGainF(sunHours),
    because: { airMeanF: waves.meanF, depthCm: ROOT_DEPTH_CM, dampingCm: DAMPING_DEPTH_CM, sunHours },
  };
};
