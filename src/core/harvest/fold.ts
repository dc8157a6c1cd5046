/**
 * The fold: facts -> the state of the harvest. Facts are sorted by when they happened, so that late, repeated and
 * shuffled messages end in the same state. All facts of the season are folded anew for each question; that is cheap
 * (a season is some ten thousand facts) and leaves no second truth to keep in step.
 */
import { standingFacts } from '../book/entries.ts';
import type { Fact } from '../book/facts.ts';
import type { Roster } from '../roster.ts';
import type { Harvest } from './harvest.ts';
import { NOTHING_SHARED } from './harvest.ts';
import { inOrderOfHappening } from './order.ts';
import { seasonStart, stepped } from './step.ts';

/** The state of the harvest after these facts. `roster` is the operation file, before any change made in chat. */
export const foldHarvest = (roster: Roster, facts: readonly Fact[]): Harvest => ({
  ...standingFacts(facts).sort(inOrderOfHappening).reduce(stepped, seasonStart(roster)),
  fileRoster: roster,
  facts,
  othersTickets: NOTHING_SHARED,
});

/** The harvest with these facts besides. */
export const withFacts = (harvest: Harvest, facts: readonly Fact[]): Harvest =>
  facts.length === 0
    ? harvest
    : {
        ...foldHarvest(harvest.fileRoster, [...harvest.facts, ...facts]),
        othersTickets: harvest.othersTickets,
      };
