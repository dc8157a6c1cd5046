/**
 * Undos and corrections, and what they hit. An undo points at "the newest entry that I had sent before": that is
 * resolved by the times of sending, and not when it is heard, so that a day heard out of order ends the same. An undo can
 * itself be taken back only by saying the thing again.
 */
import type { TruckId } from '../roster.ts';
import { merged } from '../sorted.ts';
import type { EpochMs } from '../units.ts';
import { corrected, takes, truckOf } from './corrected.ts';
import { bySending, entriesWithSerial, entryBy, placed } from './entries.ts';
import type { Entry, EntryIndex } from './entries.ts';
import type { Correction, EntryTarget, Fact, FactOf } from './facts.ts';

type Change = FactOf<'entry-withdrawn'> | FactOf<'entry-corrected'>;

/** What undos and corrections come to. */
export interface Changes {
  /** In order of sending; `hit` is the cause of the entry, null = none. */
  readonly outcomes: readonly Outcome[];
  /** Causes of the entries that were taken back. */
  readonly gone: ReadonlySet<string>;
  /** What is set in an entry, and the cause of the correction that sets it. */
  readonly sets: ReadonlyMap<string, readonly { by: string; set: Correction }[]>;
}

interface Outcome {
  change: Change;
  hit: string | null;
}

export const NO_CHANGES: Changes = { outcomes: [], gone: new Set(), sets: new Map() };

/** An undo or a correction. */
export const isChange = (fact: Fact): fact is Change =>
  fact.kind === 'entry-withdrawn' || fact.kind === 'entry-corrected';

/** An undo or a correction as it was asked for; `set` null = an undo. */
export interface Asked {
  target: EntryTarget;
  sentMs: EpochMs;
  heardMs: EpochMs;
  cause: string;
  set: Correction | null;
}

/** What was asked for by an undo (`set` null) or a correction. */
export const askedBy = (change: Change): Asked => ({
  target: change.target,
  sentMs: change.sentMs,
  heardMs: change.heardMs,
  cause: change.cause,
  set: change.kind === 'entry-corrected' ? change.set : null,
});

/** What is set in the entry by corrections that stand, in order. */
export const setsIn = ({ gone, sets }: Changes, cause: string): Correction[] =>
  (sets.get(cause) ?? []).filter(({ by }) => !gone.has(by)).map(({ set }) => set);

/** By what the entry says now: "no, it was 5, not 4" comes after "it was 4, not 3". */
const holds = (entry: Entry, truck: TruckId | null, changes: Changes): boolean => {
  if (truck === null) return true;
  const sets = setsIn(changes, entry.cause);
  return entry.facts.some((fact) => truckOf(sets.reduce(corrected, fact)) === truck);
};

const corrects = (entry: Entry): boolean => entry.facts.some((fact) => fact.kind === 'entry-corrected');

const suits = (entry: Entry, { set }: Asked): boolean =>
  set === null || (!corrects(entry) && entry.facts.some((fact) => takes(fact, set)));

/** Entries with a ticket that a correction has given that serial. */
const renumbered = (index: EntryIndex, changes: Changes, serial: string): Entry[] =>
  [...changes.sets.keys()].flatMap((cause) =>
    setsIn(changes, cause).some((set) => set.serial === serial) ? (entryBy(index, cause) ?? []) : [],
  );

/** Entries that the target may point at, in order of sending. */
const pointedAt = (index: EntryIndex, changes: Changes, { target }: Asked): readonly Entry[] => {
  switch (target.by) {
    case 'message':
      return [entryBy(index, target.cause) ?? []].flat();
    case 'serial':
      return [...renumbered(index, changes, target.serial), ...entriesWithSerial(index, target.serial)].sort(
        bySending,
      );
    case 'latest':
      return index.byPerson.get(target.person) ?? [];
  }
};

/**
 * The newest standing entry that the target points at. Unless it names the message, only what was sent before counts: a
 * ticket that was taken back is often booked anew. An undo may take a correction back; a correction passes over entries
 * that hold nothing of what it sets.
 */
export const targetIn = (index: EntryIndex, changes: Changes, asked: Asked): Entry | undefined => {
  const { target } = asked;
  const asOf = placed(index, asked);
  const isMeant = (entry: Entry): boolean =>
    target.by === 'message' ||
    (bySending(entry, asOf) < 0 && (target.by === 'serial' || holds(entry, target.truck, changes)));
  return pointedAt(index, changes, asked).findLast(
    (entry) =>
      !changes.gone.has(entry.cause) && entry.cause !== asked.cause && isMeant(entry) && suits(entry, asked),
  );
};

const isPlainUndo = (change: Change): boolean =>
  change.kind === 'entry-withdrawn' && change.target.by === 'latest';

/** The same person cannot send two undos in the same millisecond: that is one message delivered twice. */
const isDoubled = (change: Change, before: readonly Outcome[]): boolean => {
  if (!isPlainUndo(change)) return false;
  for (let at = before.length - 1; at >= 0; at -= 1) {
    const other = before[at]?.change;
    if (other?.sentMs !== change.sentMs) return false;
    if (other.by === change.by && isPlainUndo(other)) return true;
  }
  return false;
};

/** The outcomes in order, from these on that are settled, with the changes that follow them. */
const resolved = (index: EntryIndex, settled: readonly Outcome[], following: readonly Change[]): Changes => {
  const outcomes: Outcome[] = [];
  const gone = new Set<string>();
  const sets = new Map<string, readonly { by: string; set: Correction }[]>();
  const settle = (outcome: Outcome): void => {
    outcomes.push(outcome);
    const { change, hit } = outcome;
    if (hit === null) return;
    if (change.kind === 'entry-withdrawn') gone.add(hit);
    else sets.set(hit, [...(sets.get(hit) ?? []), { by: change.cause, set: change.set }]);
  };
  settled.forEach(settle);
  for (const change of following) {
    const entry = isDoubled(change, outcomes)
      ? undefined
      : targetIn(index, { outcomes, gone, sets }, askedBy(change));
    settle({ change, hit: entry?.cause ?? null });
  }
  return { outcomes, gone, sets };
};

/** Number of the first outcome that the news may alter: they were sent before it, or it points at their message. */
const firstAltered = (outcomes: readonly Outcome[], index: EntryIndex, news: readonly Fact[]): number => {
  const causes = new Set(news.map(({ cause }) => cause));
  const sentMs = [...causes].flatMap((cause) => entryBy(index, cause)?.sentMs ?? []);
  const oldestMs = Math.min(...sentMs, ...news.filter(isChange).map((change) => change.sentMs));
  const at = outcomes.findIndex(
    ({ change: { sentMs: changeMs, target } }) =>
      changeMs >= oldestMs || (target.by === 'message' && causes.has(target.cause)),
  );
  return at < 0 ? outcomes.length : at;
};

/** The changes with these facts besides, which the index has already. Only what they may alter is resolved anew. */
export const withChanges = (before: Changes, index: EntryIndex, news: readonly Fact[]): Changes => {
  const inOrder = (a: Change, b: Change): number => bySending(placed(index, a), placed(index, b));
  const come = news.filter(isChange).sort(inOrder);
  const from = firstAltered(before.outcomes, index, news);
  if (come.length === 0 && from === before.outcomes.length) return before;
  const again = before.outcomes.slice(from).map(({ change }) => change);
  return resolved(index, before.outcomes.slice(0, from), merged(again, come, inOrder));
};
