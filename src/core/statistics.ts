/** The lower one of an even number; null of none. */
export const median = (numbers: readonly number[]): number | null =>
  [...numbers].sort((a, b) => a - b)[Math.floor((numbers.length - 1) / 2)] ?? null;
