import type { EpochMs, Span } from './units.ts';

/** One list in order of two that are. What comes mostly belongs at the end, so the place is looked for from there. */
export const merged = <T>(
  known: readonly T[],
  come: readonly T[],
  order: (a: T, b: T) => number,
): readonly T[] => {
  const [first] = come;
  if (first === undefined) return known;
  const from = known.findLastIndex((one) => order(one, first) <= 0) + 1;
  const rest = known.slice(from);
  return [...known.slice(0, from), ...(rest.length === 0 ? come : [...rest, ...come].sort(order))];
};

/** What happened in the span, of a list in order of happening. */
export const happenedIn = <T extends { atMs: EpochMs }>(
  items: readonly T[],
  { fromMs, toMs }: Span,
): readonly T[] =>
  items.slice(
    firstIndex(items, ({ atMs }) => atMs >= fromMs),
    firstIndex(items, ({ atMs }) => atMs >= toMs),
  );

/** Index of the first item from which on `isFrom` holds, in a list in which it holds for all that follow; else the length. */
export const firstIndex = <T>(items: readonly T[], isFrom: (item: T) => boolean): number => {
  let [low, high] = [0, items.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const item = items[middle];
    if (item !== undefined && isFrom(item)) high = middle;
    else low = middle + 1;
  }
  return low;
};
