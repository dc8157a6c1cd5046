/**
 * The entries of the book, found by message, person and serial. An entry is all that one message brought and an undo
 * reaches. Nothing here ever changes: what is added makes a new index that shares nearly all with the old.
 */
import type { PersonId } from '../roster.ts';
import { emptyShared, got, withPut } from '../shared-map.ts';
import type { SharedMap } from '../shared-map.ts';
import { merged } from '../sorted.ts';
import type { Fact, FactHeader } from './facts.ts';
import { isUndoable } from './kinds.ts';

type Sent = Pick<FactHeader, 'sentMs' | 'heardMs'>;

/** When something was sent, and its place in the book. */
export interface Placed extends Sent {
  /** Number of its message among all that brought facts, in the order of the book. */
  readonly nth: number;
}

/** `by` and the times are those of its first fact. */
export interface Entry extends Placed, Pick<FactHeader, 'cause' | 'by'> {
  /** In order of sending. */
  readonly facts: readonly Fact[];
}

/** What is under one cause. */
interface Under {
  /** As they were written, also those that no undo reaches. */
  readonly facts: readonly Fact[];
  readonly nth: number;
  /** Null = an undo reaches none of them. */
  readonly entry: Entry | null;
}

/** Entries as written. Which of them stand, and how corrected, is told by changes.ts. */
export interface EntryIndex {
  readonly byCause: SharedMap<string, Under>;
  readonly causes: number;
  /** In order of sending. */
  readonly byPerson: ReadonlyMap<PersonId, readonly Entry[]>;
  /** Causes of the entries with a ticket of that serial. */
  readonly bySerial: SharedMap<string, readonly string[]>;
}

export const NO_INDEX: EntryIndex = {
  byCause: emptyShared(),
  causes: 0,
  byPerson: new Map(),
  bySerial: emptyShared(),
};

const byTimes = (a: Sent, b: Sent): number => a.sentMs - b.sentMs || a.heardMs - b.heardMs;

/**
 * In order of sending; those of one moment in the order heard. Where the times of hearing are alike too, as in a recorded
 * day with a minute for each line, the book has that order: ids are the platform's, and "m10" comes before "m9" in them.
 */
export const bySending = (a: Placed, b: Placed): number => byTimes(a, b) || a.nth - b.nth;

/** Null where an undo reaches none of them. */
export const entryOf = (facts: readonly Fact[], nth: number): Entry | null => {
  const reached = facts.filter(isUndoable).sort(byTimes);
  const [first] = reached;
  if (!first) return null;
  const { cause, by, sentMs, heardMs } = first;
  return { cause, by, sentMs, heardMs, nth, facts: reached };
};

const underCauses = (
  index: EntryIndex,
  news: readonly Fact[],
): { under: Map<string, Under>; causes: number } => {
  const under = new Map<string, Under>();
  let { causes } = index;
  for (const [cause, added] of Map.groupBy(news, (fact) => fact.cause)) {
    const known = got(index.byCause, cause);
    const nth = known?.nth ?? causes++;
    const facts = [...(known?.facts ?? []), ...added];
    under.set(cause, { facts, nth, entry: entryOf(facts, nth) });
  }
  return { under, causes };
};

/** The known entries of each person with the new ones; a message that brings more makes its entry anew. */
const byPersonWith = (index: EntryIndex, entries: readonly Entry[]): EntryIndex['byPerson'] => {
  const byPerson = new Map(index.byPerson);
  const renewed = new Set(
    entries.map(({ cause }) => cause).filter((cause) => got(index.byCause, cause)?.entry),
  );
  const isKept = ({ cause }: Entry): boolean => !renewed.has(cause);
  if (renewed.size > 0) for (const [person, known] of byPerson) byPerson.set(person, known.filter(isKept));
  for (const [person, come] of Map.groupBy(entries, ({ by }) => by))
    if (person !== null)
      byPerson.set(person, merged(byPerson.get(person) ?? [], come.sort(bySending), bySending));
  return byPerson;
};

const serialsOf = (facts: readonly Fact[]): string[] =>
  facts.flatMap((fact) =>
    fact.kind === 'ticket-booked' && fact.ticket.serial !== null ? [fact.ticket.serial] : [],
  );

const bySerialWith = ({ bySerial }: EntryIndex, news: readonly Fact[]): EntryIndex['bySerial'] => {
  const causes = new Map<string, readonly string[]>();
  for (const fact of news)
    for (const serial of serialsOf([fact]))
      causes.set(serial, [...(causes.get(serial) ?? got(bySerial, serial) ?? []), fact.cause]);
  return withPut(bySerial, causes);
};

export const indexed = (index: EntryIndex, news: readonly Fact[]): EntryIndex => {
  const { under, causes } = underCauses(index, news);
  const entries = [...under.values()].flatMap(({ entry }) => entry ?? []);
  return {
    byCause: withPut(index.byCause, under),
    causes,
    byPerson: byPersonWith(index, entries),
    bySerial: bySerialWith(index, news),
  };
};

/** All that is under a cause, as written. */
export const factsUnder = ({ byCause }: EntryIndex, cause: string): readonly Fact[] =>
  got(byCause, cause)?.facts ?? [];

/** Where a message that was sent then is in order of sending; after all that is known if it has brought nothing yet. */
export const placed = (
  { byCause }: EntryIndex,
  { sentMs, heardMs, cause }: Sent & { readonly cause: string },
): Placed => ({ sentMs, heardMs, nth: got(byCause, cause)?.nth ?? Infinity });

export const entryBy = ({ byCause }: EntryIndex, cause: string): Entry | null =>
  got(byCause, cause)?.entry ?? null;

/** Entries with a ticket of that serial, in order of sending. */
export const entriesWithSerial = (index: EntryIndex, serial: string): Entry[] =>
  (got(index.bySerial, serial) ?? []).flatMap((cause) => entryBy(index, cause) ?? []).sort(bySending);
