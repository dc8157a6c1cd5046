import type { Correction, EntryTarget, Fact, FactOf } from './facts.ts';
import type { PersonId, TruckId } from './roster.ts';
import type { EpochMs } from './units.ts';

/**
 * Which facts stand, after undos and corrections.
 *
 * An entry is all that one message brought. An undo points at "the newest entry that I had sent before": it is resolved
 * here, by the times of sending, and not when it is heard, so that a day heard out of order ends the same.
 * An undo can itself be taken back only by saying the thing again.
 */
export interface Entry {
  cause: string;
  by: PersonId | null;
  sentMs: EpochMs;
  facts: readonly Fact[];
}

/** Kinds that an undo reaches. Acknowledgements, notices and changes of the lists are not taken back by "undo". */
const isEntryKind = (fact: Fact): boolean => {
  switch (fact.kind) {
    case 'truck-reported':
    case 'ticket-booked':
    case 'line-seen':
    case 'pilers-seen':
    case 'station-reported':
    case 'root-measured':
    case 'crown-checked':
    case 'field-dug':
    case 'truck-taken':
    case 'entry-corrected':
      return true;
    case 'entry-withdrawn':
    case 'forecast-issued':
    case 'notice-raised':
    case 'notice-seen':
    case 'emergency-called':
    case 'stranger-heard':
    case 'language-chosen':
    case 'list-changed':
      return false;
  }
};

const truckOf = (fact: Fact): TruckId | null => {
  if (fact.kind === 'ticket-booked') return fact.ticket.truck;
  if (fact.kind === 'truck-reported' || fact.kind === 'line-seen') return fact.truck;
  return null;
};

/** Entries in order of sending; those of one moment in the order heard. */
export const entriesOf = (facts: readonly Fact[]): Entry[] => {
  const byCause = new Map<string, Fact[]>();
  for (const fact of facts) {
    if (!isEntryKind(fact)) continue;
    const group = byCause.get(fact.cause);
    if (group) group.push(fact);
    else byCause.set(fact.cause, [fact]);
  }
  const entries: Entry[] = [];
  for (const [cause, group] of byCause) {
    const first = group[0];
    if (first) entries.push({ cause, by: first.by, sentMs: first.sentMs, facts: group });
  }
  return entries.sort((a, b) => a.sentMs - b.sentMs);
};

const holds = (entry: Entry, truck: TruckId | null): boolean =>
  truck === null || entry.facts.some((fact) => truckOf(fact) === truck);

const corrects = (entry: Entry): boolean => entry.facts.some((fact) => fact.kind === 'entry-corrected');

const pointsAt = (entry: Entry, target: EntryTarget, sentMs: EpochMs): boolean => {
  switch (target.by) {
    case 'message':
      return entry.cause === target.cause;
    case 'serial':
      return entry.facts.some(
        (fact) => fact.kind === 'ticket-booked' && fact.ticket.serial === target.serial,
      );
    case 'latest':
      return entry.by === target.person && entry.sentMs <= sentMs && holds(entry, target.truck);
  }
};

/** The newest standing entry that the target points at, as of `sentMs`. Corrections count only where an undo asks. */
export const targetEntry = (
  entries: readonly Entry[],
  gone: ReadonlySet<string>,
  asked: { target: EntryTarget; sentMs: EpochMs; cause: string; undo: boolean },
): Entry | undefined =>
  entries.findLast(
    (entry) =>
      !gone.has(entry.cause) &&
      entry.cause !== asked.cause &&
      (asked.undo || !corrects(entry)) &&
      pointsAt(entry, asked.target, asked.sentMs),
  );

type Change = FactOf<'entry-withdrawn'> | FactOf<'entry-corrected'>;

const isChange = (fact: Fact): fact is Change =>
  fact.kind === 'entry-withdrawn' || fact.kind === 'entry-corrected';

const corrected = (fact: Fact, set: Correction): Fact => {
  const atMs = set.atMs ?? fact.atMs;
  if (fact.kind === 'truck-reported')
    return { ...fact, atMs, truck: set.truck ?? fact.truck, field: set.field ?? fact.field };
  if (fact.kind === 'line-seen') return { ...fact, atMs, truck: set.truck ?? fact.truck };
  if (fact.kind === 'field-dug') return { ...fact, atMs, field: set.field ?? fact.field };
  if (fact.kind !== 'ticket-booked') return { ...fact, atMs };
  const grossLb = set.grossLb ?? fact.ticket.grossLb;
  const tareLb = set.tareLb ?? fact.ticket.tareLb;
  const reweighed = set.grossLb !== null || set.tareLb !== null;
  const netLb =
    set.netLb ?? (reweighed && grossLb !== null && tareLb !== null ? grossLb - tareLb : fact.ticket.netLb);
  const truck = set.truck ?? fact.ticket.truck;
  return {
    ...fact,
    atMs,
    ticket: { ...fact.ticket, truck, field: set.field ?? fact.ticket.field, grossLb, tareLb, netLb },
  };
};

/** What the undos and corrections among the facts come to. */
const resolve = (
  facts: readonly Fact[],
): { gone: Set<string>; sets: { entry: string; by: string; set: Correction }[] } => {
  const changes = facts.filter(isChange).sort((a, b) => a.sentMs - b.sentMs);
  const gone = new Set<string>();
  const sets: { entry: string; by: string; set: Correction }[] = [];
  if (changes.length === 0) return { gone, sets };
  const entries = entriesOf(facts);
  const undone = new Set<string>();
  for (const change of changes) {
    const undo = change.kind === 'entry-withdrawn';
    // The same person cannot send two undos in the same millisecond: that is one message delivered twice.
    const same = `${change.by ?? ''} ${change.sentMs} ${change.kind}`;
    if (undo && change.target.by === 'latest' && undone.has(same)) continue;
    undone.add(same);
    const entry = targetEntry(entries, gone, { ...change, undo });
    if (!entry) continue;
    if (undo) gone.add(entry.cause);
    else sets.push({ entry: entry.cause, by: change.cause, set: change.set });
  }
  return { gone, sets };
};

/** The facts that stand, corrected. Everything that is not an entry stands as it is. */
export const standingFacts = (facts: readonly Fact[]): Fact[] => {
  const { gone, sets } = resolve(facts);
  if (gone.size === 0 && sets.length === 0) return [...facts];
  const standing: Fact[] = [];
  for (const fact of facts) {
    if (gone.has(fact.cause)) continue;
    const own = sets.filter((s) => s.entry === fact.cause && !gone.has(s.by));
    standing.push(own.reduce<Fact>((f, s) => corrected(f, s.set), fact));
  }
  return standing;
};

/** Entries that still stand, in order of sending, and the causes of those taken back. */
export const standingEntries = (facts: readonly Fact[]): { entries: Entry[]; gone: ReadonlySet<string> } => {
  const { gone } = resolve(facts);
  return { entries: entriesOf(facts), gone };
};
