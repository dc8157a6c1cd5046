import type { EpochMs } from '../units.ts';
import type { Span } from './crossing.ts';

/** Rain that falls in a period as a whole, in inches: a total, not a rate. */
export interface RainTotal {
  fromMs: EpochMs;
  toMs: EpochMs;
  inches: number;
}

/**
 * Inches of rain within a span. Periods that reach beyond it count by the share of time that lies within. A heads-up
 * only: whether a field can be dug is judged by who stands in it.
 */
export const rainWithin = (totals: readonly RainTotal[], span: Span): number =>
  totals.reduce((sum, { fromMs, toMs, inches }) => {
    const sharedMs = Math.min(toMs, span.toMs) - Math.max(fromMs, span.fromMs);
    return sharedMs > 0 ? sum + (inches * sharedMs) / (toMs - fromMs) : sum;
  }, 0);
