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
  ROOT_ERROR_F,
  ROOT_HOURS_KNOWN,
  TOPPED_WARMEST_ABOVE_F,
  TOPPED_WARMING_F_PER_HOUR,
} from './assumptions.ts';
import { nodesOf, temperatureAt } from './crossing.ts';
import type { Node } from './crossing.ts';
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

/** The mean air of the days before an instant's half day to come, as many of them as are known. */
interface AirMemory {
  meanF: Fahrenheit;
  days: number;
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Hour by hour of the day first: a night that is missing must not make the days warmer. */
const meanOfHours = (air: readonly (Fahrenheit | null)[]): Fahrenheit =>
  meanOf(
    Array.from({ length: HOURS_PER_DAY }, (_, hour) =>
      air.filter((f, at) => f !== null && at % HOURS_PER_DAY === hour).filter((f) => f !== null),
    ).flatMap((ofHour) => (ofHour.length > 0 ? [meanOf(ofHour)] : [])),
  );

/** Soil at that depth follows the air of days, not of one: a front moves it little at first. Null = not even a day is known. */
const airMemory = (nodes: readonly Node[], untilMs: EpochMs): AirMemory | null => {
  const air = Array.from({ length: ROOT_ERROR_F.length * HOURS_PER_DAY }, (_, back) =>
    temperatureAt(nodes, untilMs - (back + 1) * MS_PER_HOUR),
  );
  for (let days = ROOT_ERROR_F.length; days > 0; days -= 1) {
    const wanted = air.slice(0, days * HOURS_PER_DAY);
    const known = wanted.filter((temperatureF) => temperatureF !== null);
    if (known.length >= ROOT_HOURS_KNOWN * wanted.length) return { meanF: meanOfHours(wanted), days };
  }
  return null;
};

export interface RootEstimate {
  /** In the ground under leaves. */
  canopiedF: Fahrenheit;
  /** The crown, if topped so many hours before in the sun. */
  toppedF: Fahrenheit;
  /** Root mean square error of both: four in five lie within 1.28 times that. */
  errorF: Fahrenheit;
  /** What it is based on, for the words that explain it. */
  because: { airMeanF: Fahrenheit; memoryDays: number; depthCm: number; dampingCm: number; sunHours: number };
}

/** How much warmer a topped crown gets than one with leaves, after this many hours of sun. */
export const toppedGainF = (sunHours: number): Fahrenheit =>
  Math.min(Math.max(0, sunHours) * TOPPED_WARMING_F_PER_HOUR, TOPPED_WARMEST_ABOVE_F);

/**
 * The roots at an instant: the mean air of the past days, and the waves of the 24 hours around it (12 before to 12
 * after). Null = those are not known.
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
  const memory = airMemory(nodes, firstMs + HOURS_PER_DAY * MS_PER_HOUR);
  if (memory === null) return null;
  const waves = { ...dailyWaves(known), meanF: memory.meanF };
  const canopiedF = atDepthF(waves, ROOT_DEPTH_CM, HOURS_PER_DAY / 2);
  return {
    canopiedF,
    toppedF: canopiedF + toppedGainF(sunHours),
    errorF: ROOT_ERROR_F[memory.days - 1] ?? ROOT_ERROR_F[0],
    because: {
      airMeanF: memory.meanF,
      memoryDays: memory.days,
      depthCm: ROOT_DEPTH_CM,
      dampingCm: DAMPING_DEPTH_CM,
      sunHours,
    },
  };
};
