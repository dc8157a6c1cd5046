import type { EpochMs, Fahrenheit } from '../units.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { HEAT_FIGURES } from './assumptions.ts';
import type { HeatFigures } from './assumptions.ts';
import type { ForecastPair } from './forecast-error.ts';
import { NO_HAUL } from './ladder.ts';
import type { Haul } from './ladder.ts';
import type { HourlyTemperature, IssuedForecast } from './types.ts';

export interface HeatStation {
  id: string;
  /** Air, and roots, above which the station takes no beets: two settings, because sun and sky keep them apart. */
  airLimitF: Fahrenheit;
  rootLimitF: Fahrenheit;
  zone: string;
}

/** Root temperature as measured by a person with a probe. */
export interface RootReading {
  atMs: EpochMs;
  /** When the bot heard of it; absent = at once. */
  heardMs?: EpochMs;
  temperatureF: Fahrenheit;
}

/** The air as a weather station measured it. */
interface AirReading {
  atMs: EpochMs;
  temperatureF: Fahrenheit;
}

/** What the station itself said about being open. */
interface StationWord {
  atMs: EpochMs;
  open: boolean;
  untilMs: EpochMs | null;
}

/** The figures of the heat stop, and what is known beside the newest forecast. */
export interface HeatOptions extends HeatFigures {
  /** When the current step was raised; null = not known: then its stop time counts. */
  lastStepMs: EpochMs | null;
  /**
   * Forecasts of the last day or so before the newest one, oldest first. They cover the hours that the newest one no
   * longer has, and the last of them must agree with a restart.
   */
  earlier: readonly IssuedForecast[];
  /** Measured roots of fields that deliver to this station. */
  rootReadings: readonly RootReading[];
  /** The air near the station, as measured. */
  air: readonly AirReading[];
  /** The newest report of the station; null = none. */
  stationWord: StationWord | null;
  haul: Haul;
  /** Earlier forecasts of this place, and what was measured. */
  pairs: readonly ForecastPair[];
  /** Hours of wall time within which the operation digs, 0-24. */
  workHours: readonly [fromHour: number, toHour: number];
}

export const HEAT_OPTIONS: HeatOptions = {
  ...HEAT_FIGURES,
  lastStepMs: null,
  earlier: [],
  rootReadings: [],
  air: [],
  stationWord: null,
  haul: NO_HAUL,
  pairs: [],
  workHours: [0, 24],
};

/** Everything that the rule looks at. */
export interface HeatCase {
  forecast: IssuedForecast;
  station: HeatStation;
  clock: ZoneClock;
  nowMs: EpochMs;
  options: HeatOptions;
}

/** The forecast, with the hours before its first one taken from the newest earlier forecast that has them. */
export const withPast = (forecast: IssuedForecast, earlier: readonly IssuedForecast[]): IssuedForecast => {
  const firstMs = Math.min(...forecast.hours.map((hour) => hour.startMs));
  const past = new Map<EpochMs, HourlyTemperature>();
  for (const { hours } of earlier) {
    for (const hour of hours) if (hour.startMs < firstMs) past.set(hour.startMs, hour);
  }
  return { issuedMs: forecast.issuedMs, hours: [...past.values(), ...forecast.hours] };
};
