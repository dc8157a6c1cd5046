/**
 * The fold as it is meant, without a thought for what it costs: all facts at once, every undo and correction looked up
 * among all entries. What the product folds step by step must come to the same.
 */
import { askedBy, isChange } from '../../src/core/book/changes.ts';
import type { Asked } from '../../src/core/book/changes.ts';
import { corrected, takes, truckOf } from '../../src/core/book/corrected.ts';
import { bySending, entryOf } from '../../src/core/book/entries.ts';
import type { Entry, Placed } from '../../src/core/book/entries.ts';
import type { Correction, Fact } from '../../src/core/book/facts.ts';
import type { Harvest, SeasonState } from '../../src/core/harvest/harvest.ts';
import { inOrderOfHappening } from '../../src/core/harvest/order.ts';
import { seasonStart, stepped } from '../../src/core/harvest/step.ts';
import type { Roster, TruckId } from '../../src/core/roster.ts';

interface Changes {
  gone: Set<string>;
  sets: { entry: string; by: string; set: Correction }[];
}

/** Entries in order of sending. */
export const entriesOf = (facts: readonly Fact[]): Entry[] =>
  [...Map.groupBy(facts, ({ cause }) => cause).values()]
    .flatMap((group, nth) => entryOf(group, nth) ?? [])
    .sort(bySending);

const asChanged = (fact: Fact, { gone, sets }: Changes): Fact =>
  sets
    .filter(({ entry, by }) => entry === fact.cause && !gone.has(by))
    .reduce<Fact>((said, { set }) => corrected(said, set), fact);

const holds = (entry: Entry, truck: TruckId | null, changes: Changes): boolean =>
  truck === null || entry.facts.some((fact) => truckOf(asChanged(fact, changes)) === truck);

/** A correction that stands has given it that serial. */
const isRenumbered = (entry: Entry, serial: string, { gone, sets }: Changes): boolean =>
  sets.some(({ entry: hit, by, set }) => hit === entry.cause && !gone.has(by) && set.serial === serial);

const pointsAt = (entry: Entry, { target }: Asked, asOf: Placed, changes: Changes): boolean => {
  switch (target.by) {
    case 'message':
      return entry.cause === target.cause;
    case 'serial':
      return (
        bySending(entry, asOf) < 0 &&
        (isRenumbered(entry, target.serial, changes) ||
          entry.facts.some((fact) => fact.kind === 'ticket-booked' && fact.ticket.serial === target.serial))
      );
    case 'latest':
      return entry.by === target.person && bySending(entry, asOf) < 0 && holds(entry, target.truck, changes);
  }
};

const suits = (entry: Entry, { set }: Asked): boolean =>
  set === null ||
  (entry.facts.every(({ kind }) => kind !== 'entry-corrected') &&
    entry.facts.some((fact) => takes(fact, set)));

const changesOf = (facts: readonly Fact[]): Changes => {
  const entries = entriesOf(facts);
  const changes: Changes = { gone: new Set(), sets: [] };
  const undone = new Set<string>();
  const causes = [...new Set(facts.map(({ cause }) => cause))];
  const placed = facts
    .filter(isChange)
    .map((change) => ({ ...change, nth: causes.indexOf(change.cause) }))
    .sort(bySending);
  for (const change of placed) {
    const asked = askedBy(change);
    if (asked.set === null && asked.target.by === 'latest') {
      const same = `${change.by ?? ''} ${change.sentMs}`;
      if (undone.has(same)) continue;
      undone.add(same);
    }
    const hit = entries.findLast(
      (entry) =>
        !changes.gone.has(entry.cause) &&
        entry.cause !== asked.cause &&
        pointsAt(entry, asked, change, changes) &&
        suits(entry, asked),
    );
    if (!hit) continue;
    if (asked.set === null) changes.gone.add(hit.cause);
    else changes.sets.push({ entry: hit.cause, by: change.cause, set: asked.set });
  }
  return changes;
};

/** The facts that stand, corrected, in the order given. Everything that is not an entry stands as it is. */
export const standingFacts = (facts: readonly Fact[]): Fact[] => {
  const changes = changesOf(facts);
  return facts.filter(({ cause }) => !changes.gone.has(cause)).map((fact) => asChanged(fact, changes));
};

export const wholeFold = (roster: Roster, facts: readonly Fact[]): SeasonState =>
  standingFacts(facts).sort(inOrderOfHappening).reduce(stepped, seasonStart(roster));

/** What a harvest says of the season, without how it came about. */
export const stateOf = ({ season }: Harvest) => plain(season.state);

/** Trucks in their order; serials however they are laid out. */
export const plain = ({ trucks, serials, ...state }: SeasonState) => ({
  ...state,
  trucks: [...trucks],
  serials: serials.layers.flatMap((layer) => [...layer.keys()]).sort(),
});
