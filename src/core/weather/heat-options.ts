import type { EpochMs, Fahrenheit, Minutes } from '../units.ts';
import type { ZoneClock } from '../zone-clock.ts';
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
export interface StationWord {
  atMs: EpochMs;
  open: boolean;
  untilMs: EpochMs | null;
}

export interface HeatOptions {
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

  /** Start and end hour (0-24, wall time) of the afternoon window. */
  windowHours: readonly [number, number];
  /** The digger stays less than 30 min behind the topper (Dean, "Protecting Roots", Sugar Producer, August 2012). */
  toppingLeadMin: Minutes;
  /** Confidence for a watch and for a stop: the two tiers of the US National Weather Service (weather.gov/rlx/criteria). */
  watchChance: number;
  stopChance: number;
  /** Likely is enough when no more than this is left before the topper must stop. Chosen. */
  lastCallMin: Minutes;
  /** Dig again only when so far below the limit and for so long. Chosen; no published restart rule was found. */
  deadbandF: Fahrenheit;
  coolForMin: Minutes;
  /** It pays to dig again only when it then stays within the limit for this long. Chosen. */
  worthMin: Minutes;
  /**
   * Roots at 4-6 in. follow the air by 3-5 h (damped wave, Hillel 1982); of that, the wait for the deadband takes a
   * part. Chosen. A measured root within its limit takes its place.
   */
  rootLagMin: Minutes;
  /** For how long a measured root says more than the forecast. Chosen. */
  rootHoldsMin: Minutes;
  /** A stop time that moves by less is not told. */
  updateMin: Minutes;
  /** Nor is a restart, once digging has stopped. */
  restartUpdateMin: Minutes;
  /** No all-clear sooner after the last step: the off-delay of OPC UA part 9, annex B. */
  dwellMin: Minutes;
  /** An older forecast may stop the dig, but not resume it. */
  maxAgeMin: Minutes;
}

export const HEAT_OPTIONS: HeatOptions = {
  lastStepMs: null,
  earlier: [],
  rootReadings: [],
  stationWord: null,
  haul: NO_HAUL,
  pairs: [],
  windowHours: [12, 18],
  toppingLeadMin: 30,
  watchChance: 0.5,
  stopChance: 0.8,
  lastCallMin: 60,
  deadbandF: 2,
  coolForMin: 60,
  worthMin: 240,
  rootLagMin: 120,
  rootHoldsMin: 240,
  updateMin: 30,
  restartUpdateMin: 60,
  dwellMin: 60,
  maxAgeMin: 18 * 60,
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
