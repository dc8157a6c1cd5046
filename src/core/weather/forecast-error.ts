import { mean, normalShareBelow } from '../statistics.ts';
import { hoursBetween } from '../units.ts';
import type { EpochMs, Fahrenheit } from '../units.ts';
import { CHANCE_RANGE, FEWEST_PAIRS, SAME_LEAD_HOURS, USUAL_ERROR } from './assumptions.ts';

/** A day's highest temperature, as forecast and as measured. */
export interface ForecastPair {
  /** From the issue of the forecast to the hour of the high. */
  leadHours: number;
  forecastF: Fahrenheit;
  observedF: Fahrenheit;
}

/** How far off a forecast high is at some lead: observed - forecast is about `biasF` ± `sdF`. */
interface ForecastError {
  biasF: Fahrenheit;
  sdF: Fahrenheit;
}

interface ExpectedError extends ForecastError {
  /** The part of the bias that was learned at the place itself. */
  learnedF: Fahrenheit;
}

/** Between the leads of the table on straight lines, before and after it as at its ends. */
const usualError = (leadHours: number): ForecastError => {
  const after = USUAL_ERROR.findIndex(([hours]) => hours >= leadHours);
  const right = USUAL_ERROR[after] ?? USUAL_ERROR.at(-1) ?? [0, 0, 0];
  const left = USUAL_ERROR[after - 1] ?? right;
  const share = right[0] === left[0] ? 0 : (leadHours - left[0]) / (right[0] - left[0]);
  return {
    biasF: left[1] + share * (right[1] - left[1]),
    sdF: left[2] + share * (right[2] - left[2]),
  };
};

/**
 * The error to expect at a lead, learned from pairs of that place with about the same lead once there are 30 of them.
 * The more pairs, the more they count: half at 30, three quarters at 90.
 */
export const expectedError = (leadHours: number, pairs: readonly ForecastPair[]): ExpectedError => {
  const usual = usualError(leadHours);
  const errors = pairs
    .filter((pair) => Math.abs(pair.leadHours - leadHours) <= SAME_LEAD_HOURS)
    .map((pair) => pair.observedF - pair.forecastF);
  if (errors.length < FEWEST_PAIRS) return { ...usual, learnedF: 0 };
  const seenF = mean(errors);
  const variance = errors.reduce((sum, error) => sum + (error - seenF) ** 2, 0) / (errors.length - 1);
  const weight = errors.length / (errors.length + FEWEST_PAIRS);
  return {
    biasF: weight * seenF + (1 - weight) * usual.biasF,
    sdF: Math.sqrt(weight * variance + (1 - weight) * usual.sdF ** 2),
    learnedF: weight * seenF,
  };
};

/** Chance (0.02-0.98) that the temperature passes the limit if `forecastF` is forecast as its highest. */
export const chanceAbove = (limitF: Fahrenheit, forecastF: Fahrenheit, error: ForecastError): number => {
  const [least, most] = CHANCE_RANGE;
  const above = 1 - normalShareBelow((limitF - forecastF - error.biasF) / error.sdF);
  return Math.min(Math.max(above, least), most);
};

export const leadHours = (issuedMs: EpochMs, peakMs: EpochMs): number =>
  Math.max(0, hoursBetween(issuedMs, peakMs));
