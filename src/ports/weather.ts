import type { StationId } from '../core/roster.ts';
import type { EpochMs, Fahrenheit } from '../core/units.ts';
import type { PeriodHigh } from '../core/weather/highs.ts';
import type { HourlyTemperature, FreezeAlert, RainTotal } from '../core/weather/types.ts';

export type { PeriodHigh } from '../core/weather/highs.ts';
export type { FreezeAlert, RainTotal } from '../core/weather/types.ts';

export interface WeatherPlace {
  id: StationId;
  /** Degrees, north and east positive. */
  latitude: number;
  longitude: number;
}

export type WeatherResult =
  | {
      result: 'fresh';
      /** When the service issued it. */
      issuedMs: EpochMs;
      /** In order of time, from the current hour on; hours without a value are left out. */
      hours: readonly HourlyTemperature[];
      /** Highs as the service states them; often 1-3 °F above the highest hourly value (`stretchToHighs`). */
      highs: readonly PeriodHigh[];
      rain: readonly RainTotal[];
      /** Null = the alerts could not be read, or the service has none. */
      freezeAlerts: readonly FreezeAlert[] | null;
      /** IANA zone of the place; null = the service does not say. */
      zone: string | null;
      /** What was left out and why, for the log. */
      remarks: readonly string[];
    }
  /** The last fresh result is still valid; alerts are read again. */
  | {
      result: 'unchanged';
      issuedMs: EpochMs;
      freezeAlerts: readonly FreezeAlert[] | null;
      remarks: readonly string[];
    }
  /** Asking again will not help: the operator must act. */
  | { result: 'refused'; why: string }
  /** Keep the last forecast, show its age, and do not ask again before this wait is over. */
  | { result: 'unavailable'; why: string; retryAfterMs: number };

/** Air temperature, as measured. */
export interface ObservedAir {
  atMs: EpochMs;
  temperatureF: Fahrenheit;
}

/** One forecast service. */
export interface WeatherSource {
  name: string;
  /** Must be shown with its forecasts; null = not asked for. */
  attribution: string | null;
  /** Never throws. `nowMs`: for the age of what comes back. */
  fetch: (place: WeatherPlace, nowMs: EpochMs) => Promise<WeatherResult>;
  /**
   * The newest measurement of the last 90 minutes near the place; null = there is none, or the service has no
   * measurements. Never throws.
   */
  observe: (place: WeatherPlace, nowMs: EpochMs) => Promise<ObservedAir | null>;
  /** Aborts running requests. */
  close: () => void;
}
