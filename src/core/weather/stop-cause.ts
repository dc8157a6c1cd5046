import type { NoticeBasis, NoticeStep } from '../book/facts.ts';
import { MS_PER_MINUTE } from '../units.ts';
import type { EpochMs, Fahrenheit } from '../units.ts';
import { crossings } from './crossing.ts';
import type { Crossings } from './crossing.ts';
import { afternoonOf, workLeft, workOf } from './day-window.ts';
import { chanceAbove, expectedError, leadHours } from './forecast-error.ts';
import type { HeatCase } from './heat-options.ts';
import { stopTimes } from './ladder.ts';
import { measuredTooWarm } from './measured.ts';
import { restartMs } from './restart.ts';
import type { IssuedForecast } from './types.ts';

/** Why and when the dig must stop. */
export interface Stop {
  isSure: boolean;
  /** Since when it is too warm: the crossing of the limit, or the reading. */
  warmMs: EpochMs;
  times: Pick<NoticeStep, 'stopToppingMs' | 'stopAtMs' | 'resumeAtMs'> & {
    stopToppingMs: EpochMs;
    stopAtMs: EpochMs;
  };
  /** Chance 1 = measured, not forecast. */
  cause: Pick<NoticeStep, 'peakF' | 'peakMs' | 'limitF' | 'chance'>;
  basis: NoticeBasis;
}

/** Null = there is no forecast at all. */
export const issuedOf = ({ issuedMs }: IssuedForecast): EpochMs | null =>
  Number.isFinite(issuedMs) ? issuedMs : null;

const errorOf = (
  { forecast, options, ...rest }: HeatCase,
  atMs: EpochMs,
): ReturnType<typeof expectedError> => {
  const { fromMs, toMs } = afternoonOf({ forecast, options, ...rest }, atMs);
  return expectedError(leadHours(forecast.issuedMs, (fromMs + toMs) / 2), options.pairs);
};

const warmerBy = (heatCase: HeatCase, byF: Fahrenheit): HeatCase => {
  if (byF === 0) return heatCase;
  const { forecast } = heatCase;
  const hours = forecast.hours.map((hour) => ({ ...hour, temperatureF: hour.temperatureF + byF }));
  return { ...heatCase, forecast: { ...forecast, hours } };
};

/**
 * The forecast by which times are worked out: corrected for what was learned at the place, and for the usual bias as far as
 * a peak near the limit needs it to come over it. That bias is known of highs alone, and says nothing of the hour at which a
 * forecast well over the limit passes it. So a warmer forecast never passes it later.
 */
export const corrected = (raw: HeatCase, atMs: EpochMs): HeatCase => {
  const { biasF, learnedF } = errorOf(raw, atMs);
  const limitF = raw.station.airLimitF;
  const learned = warmerBy(raw, learnedF);
  // Of the whole day: in the evening what is left is cool, however warm it was.
  const { peakF } = crossings(learned.forecast.hours, limitF, workOf(raw, atMs));
  const usualF = Math.max(0, biasF - learnedF);
  const neededF = peakF === null ? 0 : limitF + usualF - peakF;
  return warmerBy(learned, Math.min(Math.max(neededF, 0), usualF));
};

/** The forecast with all of its bias: by which it must be cool before a stop is called off. */
export const asItComes = (heatCase: HeatCase, atMs: EpochMs): HeatCase =>
  warmerBy(heatCase, errorOf(heatCase, atMs).biasF);

interface WarmHours extends Crossings {
  /** Chance that the limit is passed; null = the forecast has none of those hours. */
  chance: number | null;
  /** With the forecast that the crossings were read from. */
  heatCase: HeatCase;
}

const NOTHING_LEFT = { peakF: null, peakMs: null, upMs: null, downMs: null, chance: null };

/**
 * How warm the hours will be that are left to work on the day of `atMs`, compared with the station's air limit. The peak is the one that was
 * forecast.
 */
export const warmHours = (raw: HeatCase, atMs: EpochMs): WarmHours => {
  const limitF = raw.station.airLimitF;
  const window = workLeft(raw, atMs);
  if (window === null) return { ...NOTHING_LEFT, heatCase: raw };
  const { peakF, peakMs } = crossings(raw.forecast.hours, limitF, window);
  const chance = peakF === null ? null : chanceAbove(limitF, peakF, errorOf(raw, atMs));
  const heatCase = corrected(raw, atMs);
  return { ...crossings(heatCase.forecast.hours, limitF, window), peakF, peakMs, chance, heatCase };
};

/** The stop that the forecast requires on that day; null = none is likely, or it is over. */
export const forecastStop = (raw: HeatCase, atMs: EpochMs): Stop | null => {
  const { station, nowMs, options } = raw;
  const { peakF, peakMs, upMs, downMs, chance, heatCase } = warmHours(raw, atMs);
  if (upMs === null || chance === null || (downMs !== null && downMs <= nowMs)) return null;
  if (chance < options.watchChance) return null;
  const { stopToppingMs, stopAtMs } = stopTimes(upMs, options.haul, options.toppingLeadMin, nowMs);
  const isLastCall = nowMs >= stopToppingMs - options.lastCallMin * MS_PER_MINUTE;
  const resumeAtMs = restartMs(heatCase, Math.max(upMs, stopAtMs));
  return {
    isSure: chance >= options.stopChance || isLastCall,
    warmMs: upMs,
    times: { stopToppingMs, stopAtMs, resumeAtMs },
    cause: { peakF, peakMs, limitF: station.airLimitF, chance },
    basis: { forecastMs: issuedOf(raw.forecast), measured: null },
  };
};

/** A stop at once, because roots or air were measured above their limit since the last step; null = they were not. */
export const measuredStop = (heatCase: HeatCase): Stop | null => {
  const { nowMs, forecast } = heatCase;
  const found = measuredTooWarm(heatCase);
  if (!found) return null;
  const { what, atMs, temperatureF, limitF } = found;
  return {
    isSure: true,
    // The air was warm before it was measured: whoever opened the station a little earlier knew.
    warmMs: what === 'air' ? atMs - heatCase.options.shelvedMin * MS_PER_MINUTE : atMs,
    times: { stopToppingMs: nowMs, stopAtMs: nowMs, resumeAtMs: restartMs(heatCase, nowMs) },
    cause: { peakF: temperatureF, peakMs: atMs, limitF, chance: 1 },
    basis: { forecastMs: issuedOf(forecast), measured: { what, temperatureF, atMs } },
  };
};
