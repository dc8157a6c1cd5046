import { hoursBetween, minutesBetween } from '../units.ts';
import type { EpochMs, Fahrenheit } from '../units.ts';
import { wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { NIGHT_FROM_HOUR, NIGHT_TO_HOUR, RAIN_DAYS } from './assumptions.ts';
import { FROST_OPTIONS, coldSpell } from './cold-spell.ts';
import type { FrostOptions } from './cold-spell.ts';
import { HEAT_OPTIONS, withPast } from './heat-options.ts';
import type { HeatOptions, HeatStation } from './heat-options.ts';
import { rainWithin } from './rain.ts';
import { rootEstimate } from './root.ts';
import type { RootEstimate } from './root.ts';
import { forecastStop, warmHours } from './stop-cause.ts';
import type { HourlyTemperature, RainTotal, IssuedForecast } from './types.ts';

/** What the weather lets a crew plan for one day at one station. */
export interface Outlook {
  place: string;
  /** Midnight at which the day begins. */
  dayMs: EpochMs;
  /** When the forecast behind it was issued. */
  issuedMs: EpochMs;
  heat: {
    likely: 'no-stop' | 'watch' | 'stop';
    /** Chance (0.02-0.98) that the air limit is passed in the afternoon; null = not forecast. */
    chance: number | null;
    peakF: Fahrenheit | null;
    peakMs: EpochMs | null;
    limitF: Fahrenheit;
    stopToppingMs: EpochMs | null;
    stopAtMs: EpochMs | null;
    resumeAtMs: EpochMs | null;
  };
  /** The night before the day's digging. */
  frost: {
    likely: 'no-frost' | 'watch' | 'hold';
    lowF: Fahrenheit | null;
    lowMs: EpochMs | null;
    /** Beets may be topped in the evening for the morning; false = only what is dug before the cold. */
    topAhead: boolean;
    /** From when on crowns can be checked; null = not forecast, or no frost. */
    thawMs: EpochMs | null;
  };
  /** Roots at the warmest of the afternoon, by the model; null = not enough hours forecast. */
  roots: RootEstimate | null;
  /** Expected rain of that day and of the three days from its start, inches. */
  rainInches: { day: number; threeDays: number };
}

export interface OutlookOptions {
  heat: HeatOptions;
  frost: FrostOptions;
  rain: readonly RainTotal[];
  /** All air that is known, with that of past days, which roots remember; empty = that of the forecasts alone. */
  air: readonly HourlyTemperature[];
}

export const OUTLOOK_OPTIONS: OutlookOptions = {
  heat: HEAT_OPTIONS,
  frost: FROST_OPTIONS,
  rain: [],
  air: [],
};

/** Hours of sun on the crown that is topped last and left, until the warmest of the day. */
const sunHours = (peakMs: EpochMs, stopToppingMs: EpochMs | null): number =>
  stopToppingMs === null ? 0 : Math.max(0, hoursBetween(stopToppingMs, peakMs));

const frostOf = (
  forecast: IssuedForecast,
  fromMs: EpochMs,
  toMs: EpochMs,
  frost: FrostOptions,
): Outlook['frost'] => {
  const night = { ...frost, horizonMin: minutesBetween(fromMs, toMs) };
  const spell = coldSpell(forecast, fromMs, night);
  const alerted = frost.alerts.some(
    ({ onsetMs, endsMs }) => (onsetMs ?? fromMs) < toMs && (endsMs === null || endsMs > fromMs),
  );
  const isWatch = alerted || (spell !== null && spell.watchMs !== null);
  const likely = spell !== null && spell.holdMs !== null ? 'hold' : isWatch ? 'watch' : 'no-frost';
  return {
    likely,
    lowF: spell?.lowF ?? null,
    lowMs: spell?.lowMs ?? null,
    topAhead: spell !== null && likely === 'no-frost',
    thawMs: likely === 'no-frost' ? null : (spell?.thawMs ?? null),
  };
};

/**
 * The plan of the day that begins `addDays` after today: 1 for the outlook of the evening, 0 for the plan of the morning.
 */
export const outlook = (
  forecast: IssuedForecast,
  station: HeatStation,
  clock: ZoneClock,
  nowMs: EpochMs,
  addDays: number,
  { heat, frost, rain, air }: OutlookOptions = OUTLOOK_OPTIONS,
): Outlook => {
  const at = (hour: number, days = addDays): EpochMs =>
    wallTimeOfDayMs(clock, station.zone, nowMs, hour, 0, days);
  const known = withPast(forecast, heat.earlier);
  const heatCase = { forecast: known, station, clock, nowMs, options: heat };
  const noonMs = at(12);
  const { chance, peakF, peakMs } = warmHours(heatCase, noonMs);
  const stop = forecastStop(heatCase, noonMs);
  const nightFromMs = Math.max(nowMs, at(NIGHT_FROM_HOUR, addDays - 1));
  return {
    place: station.id,
    dayMs: at(0),
    issuedMs: forecast.issuedMs,
    heat: {
      likely: stop === null ? 'no-stop' : stop.isSure ? 'stop' : 'watch',
      chance,
      peakF,
      peakMs,
      limitF: station.airLimitF,
      stopToppingMs: stop?.times.stopToppingMs ?? null,
      stopAtMs: stop?.times.stopAtMs ?? null,
      resumeAtMs: stop?.times.resumeAtMs ?? null,
    },
    frost: frostOf(known, nightFromMs, Math.max(at(NIGHT_TO_HOUR), nightFromMs), frost),
    roots:
      peakMs === null
        ? null
        : rootEstimate(
            air.length > 0 ? air : known.hours,
            peakMs,
            sunHours(peakMs, stop?.times.stopToppingMs ?? null),
          ),
    rainInches: {
      day: rainWithin(rain, { fromMs: at(0), toMs: at(0, addDays + 1) }),
      threeDays: rainWithin(rain, { fromMs: at(0), toMs: at(0, addDays + RAIN_DAYS) }),
    },
  };
};
