import { mean, normalShareBelow } from '../statistics.ts';
import { hoursBetween } from '../units.ts';
import type { EpochMs, Fahrenheit } from '../units.ts';

/** A day's highest temperature as it was forecast and as it came. */
export interface ForecastPair {
  /** From the issue of the forecast to the hour of the high. */
  leadHours: number;
  forecastF: Fahrenheit;
  observedF: Fahrenheit;
}

/** How far off a forecast maximum is at some lead: observed - forecast is about `biasF` ± `sdF`. */
export interface ForecastError {
  biasF: Fahrenheit;
  sdF: Fahrenheit;
}

/** Fewer pairs than this teach nothing. */
export const FEWEST_PAIRS = 30;

/** Never told as impossible or certain: misses by 10 °F are four times as frequent as the normal curve has them. */
export const CHANCE_RANGE = [0.02, 0.98] as const;

/**
 * Standard deviation of day-high forecasts in °F by lead in hours, for the plains and the Snake River.
 * 24 and 48 h: Brooks & Doswell 1996 (Oklahoma City, 12-24 h: mean absolute error 2.80 °F, root mean square 3.80 °F) and
 * the day-1 share within 3 °F of 68 % (forecastadvisor.com, 24 September 2006). 6 h and 72 h on: from memory of the
 * growth of such errors; no source.
 */
const USUAL_SD: readonly (readonly [leadHours: number, sdF: number])[] = [
  [6, 2.0],
  [24, 3.0],
  [48, 3.8],
  [72, 4.3],
  [96, 4.9],
  [120, 5.5],
  [144, 6.2],
  [168, 6.9],
];

const usualSdF = (leadHours: number): Fahrenheit => {
  const after = USUAL_SD.findIndex(([hours]) => hours >= leadHours);
  const right = USUAL_SD[after] ?? USUAL_SD.at(-1) ?? [0, 0];
  const left = USUAL_SD[after - 1] ?? right;
  const share = right[0] === left[0] ? 0 : (leadHours - left[0]) / (right[0] - left[0]);
  return left[1] + share * (right[1] - left[1]);
};

/**
 * The error to expect at a lead, learned from the pairs of that place with about the same lead (within 12 h) once there
 * are 30 of them. The more pairs, the more they count: half at 30, three quarters at 90.
 */
export const expectedError = (leadHours: number, pairs: readonly ForecastPair[]): ForecastError => {
  const usual = { biasF: 0, sdF: usualSdF(leadHours) };
  const errors = pairs
    .filter((pair) => Math.abs(pair.leadHours - leadHours) <= 12)
    .map((pair) => pair.observedF - pair.forecastF);
  if (errors.length < FEWEST_PAIRS) return usual;
  const biasF = mean(errors);
  const variance = errors.reduce((sum, error) => sum + (error - biasF) ** 2, 0) / (errors.length - 1);
  const weight = errors.length / (errors.length + FEWEST_PAIRS);
  return {
    biasF: weight * biasF,
    sdF: Math.sqrt(weight * variance + (1 - weight) * usual.sdF ** 2),
  };
};

/** Chance (0.02-0.98) that the temperature comes to pass the limit when `forecastF` is forecast as its highest. */
export const chanceAbove = (limitF: Fahrenheit, forecastF: Fahrenheit, error: ForecastError): number => {
  const [least, most] = CHANCE_RANGE;
  const above = 1 - normalShareBelow((limitF - forecastF - error.biasF) / error.sdF);
  return Math.min(Math.max(above, least), most);
};

export const leadHours = (issuedMs: EpochMs, peakMs: EpochMs): number =>
  Math.max(0, hoursBetween(issuedMs, peakMs));
