import type { NoticeBasis, NoticeStep } from '../book/facts.ts';
import { MS_PER_MINUTE } from '../units.ts';
import type { EpochMs, Fahrenheit } from '../units.ts';
import { crossings } from './crossing.ts';
import type { Crossings } from './crossing.ts';
import { afternoonOf } from './day-window.ts';
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

/** The forecast corrected for its bias, and the error to expect for the afternoon of that day. */
export const corrected = (heatCase: HeatCase, atMs: EpochMs): { heatCase: HeatCase; sdF: Fahrenheit } => {
  const { forecast, options } = heatCase;
  const { fromMs, toMs } = afternoonOf(heatCase, atMs);
  const { biasF, sdF } = expectedError(leadHours(forecast.issuedMs, (fromMs + toMs) / 2), options.pairs);
  if (biasF === 0) return { heatCase, sdF };
  const hours = forecast.hours.map((hour) => ({ ...hour, temperatureF: hour.temperatureF + biasF }));
  return { heatCase: { ...heatCase, forecast: { ...forecast, hours } }, sdF };
};

interface Afternoon extends Crossings {
  /** Chance that the limit is passed; null = the forecast has no hour of that afternoon. */
  chance: number | null;
  /** With the forecast that this was read from, corrected for its bias. */
  heatCase: HeatCase;
}

/** How warm the afternoon of the day of `atMs` will be, compared with the station's air limit. */
export const afternoon = (raw: HeatCase, atMs: EpochMs): Afternoon => {
  const limitF = raw.station.airLimitF;
  const { heatCase, sdF } = corrected(raw, atMs);
  const found = crossings(heatCase.forecast.hours, limitF, afternoonOf(raw, atMs));
  const chance = found.peakF === null ? null : chanceAbove(limitF, found.peakF, { biasF: 0, sdF });
  return { ...found, chance, heatCase };
};

/** The stop that the forecast requires in that afternoon; null = none is likely, or it is over. */
export const forecastStop = (raw: HeatCase, atMs: EpochMs): Stop | null => {
  const { station, nowMs, options } = raw;
  const { peakF, peakMs, upMs, downMs, chance, heatCase } = afternoon(raw, atMs);
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
