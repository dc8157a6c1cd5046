import { MS_PER_DAY } from '../units.ts';
import type { EpochMs, Span } from '../units.ts';
import type { RainTotal } from './types.ts';

/**
 * Inches of rain within a span. Periods that reach beyond it count by the share of their time within it. A heads-up
 * only: whether a field can be dug is for people in the field to judge.
 */
export const rainWithin = (totals: readonly RainTotal[], span: Span): number =>
  totals.reduce((sum, { fromMs, toMs, inches }) => {
    const sharedMs = Math.min(toMs, span.toMs) - Math.max(fromMs, span.fromMs);
    return sharedMs > 0 ? sum + (inches * sharedMs) / (toMs - fromMs) : sum;
  }, 0);

interface RainForecast {
  hours: readonly { startMs: EpochMs }[];
  rain: readonly RainTotal[];
}

/** The first instant that the forecast covers. */
const beginsMs = ({ hours, rain }: RainForecast): EpochMs =>
  Math.min(...hours.map(({ startMs }) => startMs), ...rain.map(({ fromMs }) => fromMs));

/**
 * Inches of rain in the 24 h before and after, by forecasts in the order of their issue: each counts until the next one
 * begins. Null = none of them has rain data. Rain that fell is not measured.
 */
export const rainAround = (
  forecasts: readonly RainForecast[],
  nowMs: EpochMs,
): { beforeIn: number; nextIn: number } | null => {
  if (forecasts.every(({ rain }) => rain.length === 0)) return null;
  const begins = forecasts.map(beginsMs);
  const within = (span: Span): number =>
    forecasts.reduce((sum, { rain }, at) => {
      const fromMs = Math.max(span.fromMs, begins[at] ?? span.fromMs);
      const toMs = Math.min(span.toMs, begins[at + 1] ?? span.toMs);
      return fromMs < toMs ? sum + rainWithin(rain, { fromMs, toMs }) : sum;
    }, 0);
  return {
    beforeIn: within({ fromMs: nowMs - MS_PER_DAY, toMs: nowMs }),
    nextIn: within({ fromMs: nowMs, toMs: nowMs + MS_PER_DAY }),
  };
};
