/** What was measured, which comes before any forecast: the air near the station, and roots. */
import { MS_PER_MINUTE } from '../units.ts';
import type { EpochMs, Fahrenheit } from '../units.ts';
import type { HeatCase, RootReading } from './heat-options.ts';

/** A thermometer's reading, of the air or of roots. */
interface Reading {
  atMs: EpochMs;
  heardMs?: EpochMs;
  temperatureF: Fahrenheit;
}

/** The newest reading by now that is not older than `holdsMin`; null = none. */
const standing = (
  readings: readonly Reading[],
  { nowMs }: Pick<HeatCase, 'nowMs'>,
  holdsMin: number,
): Reading | null => {
  const oldestMs = nowMs - holdsMin * MS_PER_MINUTE;
  const valid = readings.filter(({ atMs }) => atMs <= nowMs && atMs >= oldestMs);
  return valid.reduce<Reading | null>((last, next) => (last && last.atMs > next.atMs ? last : next), null);
};

/** Roots that still count for more than the forecast. */
export const standingRoot = (heatCase: HeatCase): RootReading | null =>
  standing(heatCase.options.rootReadings, heatCase, heatCase.options.rootHoldsMin);

export const standingAir = (heatCase: HeatCase): Reading | null =>
  standing(heatCase.options.air, heatCase, heatCase.options.airHoldsMin);

/** The air was measured too warm for any all-clear: not below the limit by the deadband. */
export const isMeasuredWarm = (heatCase: HeatCase): boolean => {
  const air = standingAir(heatCase);
  return air !== null && air.temperatureF > heatCase.station.airLimitF - heatCase.options.deadbandF;
};

/** What is too warm by a thermometer, and by which limit. */
export interface TooWarm extends Reading {
  what: 'root' | 'air';
  limitF: Fahrenheit;
}

/** Roots, or else the air, measured above their limit since the last step; null = neither was. */
export const measuredTooWarm = (heatCase: HeatCase): TooWarm | null => {
  const { station, options } = heatCase;
  const isNew = ({ atMs, heardMs = atMs }: Reading): boolean =>
    options.lastStepMs === null || heardMs >= options.lastStepMs;
  const [root, air] = [standingRoot(heatCase), standingAir(heatCase)];
  if (root && isNew(root) && root.temperatureF > station.rootLimitF)
    return { ...root, what: 'root', limitF: station.rootLimitF };
  if (air && isNew(air) && air.temperatureF > station.airLimitF)
    return { ...air, what: 'air', limitF: station.airLimitF };
  return null;
};

/**
 * Before when no stop may end, by the air as measured since it began: it must be cool, and the roots have followed. Roots
 * that were measured cool since need no more time. 0 = the air was never measured warm.
 */
export const measuredCoolMs = (heatCase: HeatCase, stopAtMs: EpochMs): EpochMs => {
  const { station, options, nowMs } = heatCase;
  const isWarm = ({ temperatureF }: Reading): boolean => temperatureF > station.airLimitF - options.deadbandF;
  const since = options.air.filter(({ atMs }) => atMs >= stopAtMs && atMs <= nowMs);
  const warmMs = since.filter(isWarm).reduce((last, { atMs }) => Math.max(last, atMs), 0);
  if (warmMs === 0) return 0;
  const root = standingRoot(heatCase);
  if (root === null || root.atMs < stopAtMs || root.temperatureF > station.rootLimitF)
    return warmMs + options.rootLagMin * MS_PER_MINUTE;
  return isMeasuredWarm(heatCase) ? warmMs + options.airHoldsMin * MS_PER_MINUTE : warmMs;
};
