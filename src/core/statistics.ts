/** The few statistics that more than one room needs. */

/** From the middle of a normal distribution to the end of its central 80 %, in standard deviations. */
export const Z_80 = 1.2816;

/** NaN of none. */
export const mean = (numbers: readonly number[]): number =>
  numbers.reduce((sum, number) => sum + number, 0) / numbers.length;

/** The lower one of an even number, so that it is a value that occurred; null of none. */
export const median = (numbers: readonly number[]): number | null =>
  [...numbers].sort((a, b) => a - b)[Math.floor((numbers.length - 1) / 2)] ?? null;

/** The value below which this share (0-1) of the sorted numbers lies, interpolated between neighbours; 0 of none. */
export const quantile = (sorted: readonly number[], share: number): number => {
  const at = share * (sorted.length - 1);
  const low = sorted[Math.floor(at)] ?? 0;
  const high = sorted[Math.ceil(at)] ?? low;
  return low + (high - low) * (at - Math.floor(at));
};

/**
 * Standard normal distribution function: the share of values below `z` standard deviations.
 *
 * Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 26.2.17; error below 7.5e-8 everywhere.
 */
export const normalShareBelow = (z: number): number => {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const terms = [0.31938153, -0.356563782, 1.781477937, -1.821255978, 1.330274429];
  const tail = terms.reduceRight((sum, term) => (sum + term) * t, 0) * normalDensity(z);
  return z < 0 ? tail : 1 - tail;
};

const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
