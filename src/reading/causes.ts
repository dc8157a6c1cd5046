import type { HoldReason } from '../core/book/facts.ts';
import { listed } from './every-language.ts';

const HOLDS = ['heat', 'frost', 'mud', 'other'] as const;

const causeOf: ReadonlyMap<string, HoldReason> = new Map(
  HOLDS.flatMap((hold) => listed(({ causes }) => causes[hold]).map((word) => [word, hold])),
);

/** True for words that tell why a truck stands or the dig stops. */
export const isCause = (text: string): boolean => causeOf.has(text);
/** What holds the dig up; null where the word tells of nothing that does. */
export const holdOf = (text: string): HoldReason | null => {
  const hold = causeOf.get(text) ?? 'other';
  return hold === 'other' ? null : hold;
};
