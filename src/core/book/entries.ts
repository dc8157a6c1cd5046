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

type Sent = Pick<FactHeader, 'sentMs' | 'heardMs' | 'id'>;

/** `id`, `by` and the times are those of its first fact. */
export interface Entry extends Sent, Pick<FactHeader, 'cause' | 'by'> {
  /** In order of sending. */
  readonly facts: readonly Fact[];
}

/** What is under one cause. */
interface Under {
  /** As they were written, also those that no undo reaches. */
  readonly facts: readonly Fact[];
  /** Null = an undo reaches none of them. */
  readonly entry: Entry | null;
}

/** Entries as written. Which of them stand, and how corrected, is told by changes.ts. */
export interface EntryIndex {
  readonly byCause: SharedMap<string, Under>;
  /** In order of sending. */
  readonly byPerson: ReadonlyMap<PersonId, readonly Entry[]>;
  /** Causes of the entries with a ticket of that serial. */
  readonly bySerial: SharedMap<string, readonly string[]>;
}

export const NO_INDEX: EntryIndex = { byCause: emptyShared(), byPerson: new Map(), bySerial: emptyShared() };

/** In order of sending; those of one moment in the order heard. */
export const bySending = (a: Sent, b: Sent): number =>
  a.sentMs - b.sentMs || a.heardMs - b.heardMs || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** Null where an undo reaches none of them. */
export const entryOf = (facts: readonly Fact[]): Entry | null => {
  const reached = facts.filter(isUndoable).sort(bySending);
  const [first] = reached;
  if (!first) return null;
  const { id, cause, by, sentMs, heardMs } = first;
  return { id, cause, by, sentMs, heardMs, facts: reached };
};

const underCauses = (index: EntryIndex, news: readonly Fact[]): Map<string, Under> =>
  new Map(
    [...Map.groupBy(news, ({ cause }) => cause)].map(([cause, added]) => {
      const facts = [...(got(index.byCause, cause)?.facts ?? []), ...added];
      return [cause, { facts, entry: entryOf(facts) }];
    }),
  );

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
  const under = underCauses(index, news);
  const entries = [...under.values()].flatMap(({ entry }) => entry ?? []);
  return {
    byCause: withPut(index.byCause, under),
    byPerson: byPersonWith(index, entries),
    bySerial: bySerialWith(index, news),
  };
};

/** All that is under a cause, as written. */
export const factsUnder = ({ byCause }: EntryIndex, cause: string): readonly Fact[] =>
  got(byCause, cause)?.facts ?? [];

export const entryBy = ({ byCause }: EntryIndex, cause: string): Entry | null =>
  got(byCause, cause)?.entry ?? null;

/** Entries with a ticket of that serial, in order of sending. */
export const entriesWithSerial = (index: EntryIndex, serial: string): Entry[] =>
  (got(index.bySerial, serial) ?? []).flatMap((cause) => entryBy(index, cause) ?? []).sort(bySending);
