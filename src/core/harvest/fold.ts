/**
 * The fold: facts -> the state of the harvest. Facts are folded in the order in which they happened, so that late,
 * repeated and shuffled messages end in the same state. What comes is folded on from the state before it; that state
 * stays as it is, for whoever holds it.
 */
import { NOTHING_TOLD, standingFactsOf, told } from '../book/standing.ts';
import type { Standing } from '../book/standing.ts';
import type { Fact } from '../book/facts.ts';
import type { Roster } from '../roster.ts';
import { retold } from './chapters.ts';
import type { Harvest } from './harvest.ts';
import { NOTHING_SHARED } from './harvest.ts';
import { inOrderOfHappening } from './order.ts';
import { seasonStart } from './step.ts';

const beforeHarvest = (roster: Roster): Harvest => {
  const state = seasonStart(roster);
  const season = { chapters: [], state };
  const standing = NOTHING_TOLD;
  return { ...state, fileRoster: roster, standing, season, othersTickets: NOTHING_SHARED };
};

/** The facts under these causes that stand in the one and not in the other, in order of happening. */
const without = (causes: ReadonlySet<string>, one: Standing, other: Standing): Fact[] => {
  const standing = [...causes].map((cause) => [standingFactsOf(one, cause), standingFactsOf(other, cause)]);
  return standing
    .flatMap(([here = [], there = []]) => here.filter((fact) => !there.includes(fact)))
    .sort(inOrderOfHappening);
};

/** The harvest with these facts besides. */
export const withFacts = (harvest: Harvest, facts: readonly Fact[]): Harvest => {
  if (facts.length === 0) return harvest;
  const { standing, touched } = told(harvest.standing, facts);
  const gone = without(touched, harvest.standing, standing);
  const come = without(touched, standing, harvest.standing);
  const season = retold(harvest.season, gone, come);
  const { fileRoster, othersTickets } = harvest;
  return { ...season.state, fileRoster, standing, season, othersTickets };
};

/** The state of the harvest after these facts. `roster` is the operation file, before any change made in chat. */
export const foldHarvest = (roster: Roster, facts: readonly Fact[]): Harvest =>
  withFacts(beforeHarvest(roster), facts);
