/** The number that an entry holds: trucks ahead, pilers, acres, °F. */
import type { Correction, Counted, Fact } from './facts.ts';

const COUNTED_BY: Partial<Record<Fact['kind'], Counted>> = {
  'line-seen': 'line',
  'pilers-seen': 'pilers',
  'acres-told': 'acres',
  'root-measured': 'root',
};

/** What the fact counts or measures; null = nothing. */
export const countedBy = ({ kind }: Fact): Counted | null => COUNTED_BY[kind] ?? null;

/** Is that the number which the correction sets? */
export const holdsCount = (fact: Fact, { of }: NonNullable<Correction['count']>): boolean => {
  const counted = countedBy(fact);
  return counted !== null && (of === null || of === counted);
};

/** The fact with that number in place of its own. */
export const recounted = (fact: Fact, value: number): Fact => {
  if (fact.kind === 'line-seen') return { ...fact, ahead: value };
  if (fact.kind === 'pilers-seen')
    return fact.open === null ? { ...fact, down: value } : { ...fact, open: value };
  if (fact.kind === 'acres-told') return { ...fact, acres: value };
  return fact.kind === 'root-measured' ? { ...fact, temperatureF: value } : fact;
};
