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
  /** Air at which the station stops taking beets, and roots at which it does: two settings, since sun and sky part them. */
  airLimitF: Fahrenheit;
  rootLimitF: Fahrenheit;
  zone: string;
}

/** Root temperature as measured by a person with a probe. */
export interface RootReading {
  atMs: EpochMs;
  temperatureF: Fahrenheit;
}

/** What the station itself said of being open. */
interface StationWord {
  atMs: EpochMs;
  open: boolean;
  untilMs: EpochMs | null;
}

/** The figures of the heat stop, and what is known beside the newest forecast. */
export interface HeatOptions extends HeatFigures {
  /** When the current step was raised; null = not known, then its stop time counts. */
  lastStepMs: EpochMs | null;
  /**
   * Forecasts before the newest one, oldest first, of the last day or so. They tell of the hours that the newest one no
   * longer covers, and the last of them must agree with a restart.
   */
  earlier: readonly IssuedForecast[];
  /** Readings of roots that go to this station. */
  rootReadings: readonly RootReading[];
  /** The newest word of the station; null = none. */
  stationWord: StationWord | null;
  haul: Haul;
  /** How the forecasts of this place have come true so far. */
  pairs: readonly ForecastPair[];
}

export const HEAT_OPTIONS: HeatOptions = {
  ...HEAT_FIGURES,
  lastStepMs: null,
  earlier: [],
  rootReadings: [],
  stationWord: null,
  haul: NO_HAUL,
  pairs: [],
};

/** All that the rule looks at. */
export interface HeatCase {
  forecast: IssuedForecast;
  station: HeatStation;
  clock: ZoneClock;
  nowMs: EpochMs;
  options: HeatOptions;
}

/** A forecast with the hours before its first one as the newest of the forecasts before it had them. */
export const withPast = (forecast: IssuedForecast, earlier: readonly IssuedForecast[]): IssuedForecast => {
  const firstMs = Math.min(...forecast.hours.map((hour) => hour.startMs));
  const past = new Map<EpochMs, HourlyTemperature>();
  for (const { hours } of earlier) {
    for (const hour of hours) if (hour.startMs < firstMs) past.set(hour.startMs, hour);
  }
  return { issuedMs: forecast.issuedMs, hours: [...past.values(), ...forecast.hours] };
};
