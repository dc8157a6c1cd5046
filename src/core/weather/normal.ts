/**
 * Standard normal distribution function: the share of values below `z` standard deviations.
 *
 * Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 26.2.17; error below 7.5e-8 everywhere.
 */
export const normalShareBelow = (z: number): number => {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const terms = [0.31938153, -0.356563782, 1.781477937, -1.821255978, 1.330274429];
  const tail = terms.reduceRight((sum, term) => (sum + term) * t, 0) * density(z);
  return z < 0 ? tail : 1 - tail;
};

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
