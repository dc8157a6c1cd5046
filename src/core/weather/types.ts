import type { EpochMs, Fahrenheit } from '../units.ts';

export interface HourlyTemperature {
  startMs: EpochMs;
  temperatureF: Fahrenheit;
}

/** A frost or freeze alert, in force or to come. No alert means nothing once the growing season is over. */
export interface FreezeAlert {
  id: string;
  /** As the service names it: "Freeze Warning". */
  event: string;
  onsetMs: EpochMs | null;
  endsMs: EpochMs | null;
}

/** Rain in a period, in inches: a total, not a rate. */
export interface RainTotal {
  fromMs: EpochMs;
  toMs: EpochMs;
  inches: number;
}

export interface IssuedForecast {
  /** When the service issued it; its age is measured from here. */
  issuedMs: EpochMs;
  hours: readonly HourlyTemperature[];
}
