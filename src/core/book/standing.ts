/** The book as it stands after undos and corrections: the only way out of it. Raw facts do not leave this room. */
import { NO_CHANGES, setsIn, targetIn, withChanges } from './changes.ts';
import type { Asked, Changes } from './changes.ts';
import { corrected } from './corrected.ts';
import { NO_INDEX, entryBy, entryOf, factsUnder, indexed } from './entries.ts';
import type { Entry, EntryIndex } from './entries.ts';
import type { Fact } from './facts.ts';

/** Not exported: no other module can name it, so none gets at a fact as written. */
const WRITTEN = Symbol('written');

/** Everything told, and what undos and corrections come to. It never changes: `told` makes a new one. */
export interface Standing {
  readonly [WRITTEN]: { readonly index: EntryIndex; readonly changes: Changes };
}

export const NOTHING_TOLD: Standing = { [WRITTEN]: { index: NO_INDEX, changes: NO_CHANGES } };

/** The facts under a cause that stand, corrected, as they were written. Those of no entry stand as they are. */
export const standingFactsOf = (standing: Standing, cause: string): readonly Fact[] => {
  const { index, changes } = standing[WRITTEN];
  if (changes.gone.has(cause)) return [];
  const facts = factsUnder(index, cause);
  const sets = setsIn(changes, cause);
  return sets.length === 0 ? facts : facts.map((fact) => sets.reduce(corrected, fact));
};

/** The entry of that message, corrected; null = it brought none, or it was taken back. */
export const standingEntryOf = (standing: Standing, cause: string): Entry | null =>
  entryOf(standingFactsOf(standing, cause), entryBy(standing[WRITTEN].index, cause)?.nth ?? Infinity);

/** Anything at all was told under that cause, whether or not it stands. */
export const isTold = (standing: Standing, cause: string): boolean =>
  factsUnder(standing[WRITTEN].index, cause).length > 0;

/** The entry that an undo or a correction hits, as far as has been heard. */
export const targetOf = (standing: Standing, asked: Asked): Pick<Entry, 'cause' | 'by'> | undefined => {
  const { index, changes } = standing[WRITTEN];
  return targetIn(index, changes, asked);
};

const isSame = (one: readonly unknown[], other: readonly unknown[]): boolean =>
  one.length === other.length && one.every((item, at) => item === other[at]);

/** Does the entry stand alike in both? */
const standsAlike = (before: Changes, after: Changes, cause: string): boolean =>
  before.gone.has(cause) === after.gone.has(cause) && isSame(setsIn(before, cause), setsIn(after, cause));

/** Causes of the entries that stand otherwise after the changes. */
const altered = (before: Changes, after: Changes): string[] => {
  if (before === after) return [];
  const hit = [...before.outcomes, ...after.outcomes].flatMap((outcome) => outcome.hit ?? []);
  return [...new Set(hit)].filter((cause) => !standsAlike(before, after, cause));
};

/** These facts besides, and the causes of all that stands otherwise for them. */
export const told = (
  before: Standing,
  news: readonly Fact[],
): { standing: Standing; touched: ReadonlySet<string> } => {
  const was = before[WRITTEN];
  const index = indexed(was.index, news);
  const changes = withChanges(was.changes, index, news);
  const touched = new Set([...news.map(({ cause }) => cause), ...altered(was.changes, changes)]);
  return { standing: { [WRITTEN]: { index, changes } }, touched };
};
