/**
 * Intervals for rules that have none of their own: quantiles of the residuals of those earlier forecasts whose value
 * was nearest, so that short forecasts get short intervals and the upper arm may be the longer one (split conformal
 * over a local residual; Lei et al., JASA 113(523), 2018).
 */
import type { WaitInterval } from '../../src/core/line/model/calibration.ts';
import { quantile } from '../../src/core/statistics.ts';

export interface Past {
  forecastMin: number;
  waitMin: number;
}

/** Arms as quantiles of the residuals in units of `scaleMin`. */
const around = (forecastMin: number, residuals: readonly number[], scaleMin: number): WaitInterval => {
  const sorted = residuals.toSorted((a, b) => a - b);
  return {
    lowMin: Math.max(0, forecastMin + scaleMin * Math.min(0, quantile(sorted, 0.1))),
    medianMin: forecastMin,
    highMin: forecastMin + scaleMin * Math.max(0, quantile(sorted, 0.9)),
  };
};

const NEAREST = 60;

export const nearestInterval = (past: readonly Past[], forecastMin: number): WaitInterval => {
  const near = past
    .map((entry) => ({ ...entry, far: Math.abs(entry.forecastMin - forecastMin) }))
    .sort((a, b) => a.far - b.far)
    .slice(0, NEAREST);
  return around(
    forecastMin,
    near.map((entry) => entry.waitMin - entry.forecastMin),
    1,
  );
};

/** Minutes that an error is more than in proportion to the forecast. */
const CRUDE_MIN = 8;

/** The cruder form: one proportion for all forecasts, short or long. It is wide, and easily beaten. */
export const scaledInterval = (past: readonly Past[], forecastMin: number): WaitInterval =>
  around(
    forecastMin,
    past.map((entry) => (entry.waitMin - entry.forecastMin) / (CRUDE_MIN + entry.forecastMin)),
    CRUDE_MIN + forecastMin,
  );
