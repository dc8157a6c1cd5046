import type { Correction, EntryTarget, Fact, FactOf, Ticket } from './facts.ts';
import { isUndoable } from './kinds.ts';
import type { PersonId, TruckId } from '../roster.ts';
import { netOf, reweigh, setsWeight } from './weights.ts';
import type { EpochMs } from '../units.ts';

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

const truckOf = (fact: Fact): TruckId | null => {
  if (fact.kind === 'ticket-booked') return fact.ticket.truck;
  return 'truck' in fact ? fact.truck : null;
};

/** In order of sending; those of one moment in the order heard. */
const bySending = (a: Fact, b: Fact): number =>
  a.sentMs - b.sentMs || a.heardMs - b.heardMs || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** Entries in order of sending; those of one moment in the order heard. */
export const entriesOf = (facts: readonly Fact[]): Entry[] => {
  const byCause = new Map<string, Fact[]>();
  for (const fact of facts.filter(isUndoable).sort(bySending)) {
    const group = byCause.get(fact.cause);
    if (group) group.push(fact);
    else byCause.set(fact.cause, [fact]);
  }
  return [...byCause].flatMap(([cause, group]) =>
    group.slice(0, 1).map(({ by, sentMs }) => ({ cause, by, sentMs, facts: group })),
  );
};

const ticketCorrected = (ticket: Ticket, set: Correction): Ticket => {
  const placed = { ...ticket, truck: set.truck ?? ticket.truck, field: set.field ?? ticket.field };
  if (!setsWeight(set)) return placed;
  const weights = reweigh(ticket, set);
  const net = netOf(weights);
  return 'refusal' in net ? placed : { ...placed, ...weights, netLb: net.netLb };
};

/** Whatever kind of fact names a truck or a field can have it corrected. */
const corrected = (said: Fact, set: Correction): Fact => {
  const { atMs, truck, field } = set;
  const timed = atMs === null ? said : { ...said, atMs, timeStated: true };
  const trucked = truck !== null && 'truck' in timed ? { ...timed, truck } : timed;
  const fact = field !== null && 'field' in trucked ? { ...trucked, field } : trucked;
  if (fact.kind === 'ticket-booked') return { ...fact, ticket: ticketCorrected(fact.ticket, set) };
  if (fact.kind === 'truck-reported' && fact.grossLb !== null)
    return { ...fact, grossLb: set.grossLb ?? fact.grossLb };
  return fact;
};

/** Is there anything in the fact that this correction sets? */
const takes = (fact: Fact, set: Correction): boolean => {
  const isTicket = fact.kind === 'ticket-booked';
  if (setsWeight(set)) return isTicket || (fact.kind === 'truck-reported' && fact.grossLb !== null);
  if (set.truck !== null) return truckOf(fact) !== null;
  if (set.field !== null) return isTicket || 'field' in fact;
  return true;
};

/** What undos and corrections come to: entries taken back, and what is set in those that stand. */
export interface Changes {
  gone: Set<string>;
  sets: { entry: string; by: string; set: Correction }[];
}

const asChanged = (fact: Fact, { gone, sets }: Changes): Fact =>
  sets
    .filter(({ entry, by }) => entry === fact.cause && !gone.has(by))
    .reduce<Fact>((said, { set }) => corrected(said, set), fact);

/** By what the entry says now: "no, it was 5, not 4" comes after "it was 4, not 3". */
const holds = (entry: Entry, truck: TruckId | null, changes: Changes): boolean =>
  truck === null || entry.facts.some((fact) => truckOf(asChanged(fact, changes)) === truck);

const corrects = (entry: Entry): boolean => entry.facts.some((fact) => fact.kind === 'entry-corrected');

const pointsAt = (entry: Entry, target: EntryTarget, sentMs: EpochMs, changes: Changes): boolean => {
  switch (target.by) {
    case 'message':
      return entry.cause === target.cause;
    case 'serial':
      // A ticket that was taken back is often booked anew: that one was sent later.
      return (
        entry.sentMs <= sentMs &&
        entry.facts.some((fact) => fact.kind === 'ticket-booked' && fact.ticket.serial === target.serial)
      );
    case 'latest':
      return entry.by === target.person && entry.sentMs <= sentMs && holds(entry, target.truck, changes);
  }
};

/** An undo or a correction as it was asked for; `set` null = an undo. */
export interface Asked {
  target: EntryTarget;
  sentMs: EpochMs;
  cause: string;
  set: Correction | null;
}

const suits = (entry: Entry, { set }: Asked): boolean =>
  set === null || (!corrects(entry) && entry.facts.some((fact) => takes(fact, set)));

/**
 * The newest standing entry that the target points at, as of `sentMs`. An undo may take a correction back; a correction
 * passes over entries that hold nothing of what it sets.
 */
export const targetEntry = (entries: readonly Entry[], changes: Changes, asked: Asked): Entry | undefined =>
  entries.findLast(
    (entry) =>
      !changes.gone.has(entry.cause) &&
      entry.cause !== asked.cause &&
      pointsAt(entry, asked.target, asked.sentMs, changes) &&
      suits(entry, asked),
  );

type Change = FactOf<'entry-withdrawn'> | FactOf<'entry-corrected'>;

/** An undo or a correction. */
export const isChange = (fact: Fact): fact is Change =>
  fact.kind === 'entry-withdrawn' || fact.kind === 'entry-corrected';

/** What was asked for by an undo (`set` null) or a correction. */
export const askedBy = (change: Change): Asked => ({
  target: change.target,
  sentMs: change.sentMs,
  cause: change.cause,
  set: change.kind === 'entry-corrected' ? change.set : null,
});

/** The entries of these facts, in order of sending, and what the undos and corrections among them come to. */
export const entriesAndChanges = (facts: readonly Fact[]): { entries: Entry[]; changes: Changes } => {
  const entries = entriesOf(facts);
  const changes: Changes = { gone: new Set(), sets: [] };
  const undone = new Set<string>();
  for (const change of facts.filter(isChange).sort(bySending)) {
    const asked = askedBy(change);
    if (asked.set === null && asked.target.by === 'latest') {
      // The same person cannot send two undos in the same millisecond: that is one message delivered twice.
      const same = `${change.by ?? ''} ${change.sentMs}`;
      if (undone.has(same)) continue;
      undone.add(same);
    }
    const entry = targetEntry(entries, changes, asked);
    if (!entry) continue;
    if (asked.set === null) changes.gone.add(entry.cause);
    else changes.sets.push({ entry: entry.cause, by: change.cause, set: asked.set });
  }
  return { entries, changes };
};

/** The facts that stand, corrected. Everything that is not an entry stands as it is. */
export const standingFacts = (facts: readonly Fact[]): Fact[] => {
  if (!facts.some(isChange)) return [...facts];
  const { changes } = entriesAndChanges(facts);
  return facts.filter((fact) => !changes.gone.has(fact.cause)).map((fact) => asChanged(fact, changes));
};
