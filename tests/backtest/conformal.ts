/**
 * Intervals for rules that have none of their own: quantiles of the residuals of those earlier forecasts whose value
 * was nearest, so that short forecasts get short intervals and the upper arm may be the longer one (split conformal
 * over a local residual; Lei et al., JASA 113(523), 2018).
 */
import type { Interval } from '../../src/core/line/calibration.ts';
import { quantile } from '../../src/core/line/forecast.ts';

export interface Past {
  forecastMin: number;
  waitMin: number;
}

const NEAREST = 60;

export const nearestInterval = (past: readonly Past[], forecastMin: number): Interval => {
  const near = past
    .map((entry) => ({ ...entry, far: Math.abs(entry.forecastMin - forecastMin) }))
    .sort((a, b) => a.far - b.far)
    .slice(0, NEAREST);
  const residuals = near.map((entry) => entry.waitMin - entry.forecastMin).sort((a, b) => a - b);
  return {
    lowMin: Math.max(0, forecastMin + Math.min(0, quantile(residuals, 0.1))),
    medianMin: forecastMin,
    highMin: forecastMin + Math.max(0, quantile(residuals, 0.9)),
  };
};
