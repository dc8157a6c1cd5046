/**
 * The season in chapters: so many standing facts in order of happening, and the state before the first of them. What
 * comes late, is undone or corrected is folded from the beginning of its chapter, and not from the beginning of the
 * season.
 *
 * A chapter ends after so many facts and not at a quiet hour of the night: crews that dig day and night have no such
 * hour, and a number bounds what a late message costs whatever the crew does.
 */
import type { Fact } from '../book/facts.ts';
import { merged } from '../sorted.ts';
import type { EpochMs, Span } from '../units.ts';
import type { Harvest, Season } from './harvest.ts';
import { inOrderOfHappening } from './order.ts';
import { stepped } from './step.ts';

/** About a day of five trucks. Each chapter keeps lists of its own, so that far shorter ones would cost memory. */
const CHAPTER_FACTS = 256;

/** On from `state`, at the end of the chapters, with facts that come after theirs. */
const toldOn = ({ chapters, state }: Season, facts: readonly Fact[]): Season => {
  const last = chapters.at(-1);
  const isOpen = last !== undefined && last.facts.length < CHAPTER_FACTS;
  const room = isOpen ? CHAPTER_FACTS - last.facts.length : CHAPTER_FACTS;
  const come = facts.slice(0, room);
  if (come.length === 0) return { chapters, state };
  const chapter = isOpen ? { ...last, facts: [...last.facts, ...come] } : { before: state, facts: come };
  const before = isOpen ? chapters.slice(0, -1) : chapters;
  return toldOn({ chapters: [...before, chapter], state: come.reduce(stepped, state) }, facts.slice(room));
};

/** Without the facts that stand no more and with those that stand now, both in order of happening. */
export const retold = (season: Season, gone: readonly Fact[], come: readonly Fact[]): Season => {
  const [first] = [...gone.slice(0, 1), ...come.slice(0, 1)].sort(inOrderOfHappening);
  if (first === undefined) return season;
  const { chapters } = season;
  const lastFact = chapters.at(-1)?.facts.at(-1);
  if (lastFact === undefined || inOrderOfHappening(lastFact, first) < 0) return toldOn(season, come);
  const found = chapters.findLastIndex(
    ({ facts: [begin] }) => begin && inOrderOfHappening(begin, first) <= 0,
  );
  const from = Math.max(0, found);
  const state = chapters[from]?.before ?? season.state;
  const ids = new Set(gone.map(({ id }) => id));
  const kept = chapters.slice(from).flatMap(({ facts }) => facts.filter(({ id }) => !ids.has(id)));
  return toldOn({ chapters: chapters.slice(0, from), state }, merged(kept, come, inOrderOfHappening));
};

/** When the first of the standing facts happened; null = there is none. */
export const firstMs = ({ season }: Harvest): EpochMs | null => season.chapters[0]?.facts[0]?.atMs ?? null;

/** Has any such thing happened after `fromMs` and not later than `toMs`? */
export const hasHappened = (
  { season: { chapters } }: Harvest,
  { fromMs, toMs }: Span,
  isSuch: (fact: Fact) => boolean,
): boolean => {
  for (let at = chapters.length - 1; at >= 0; at -= 1) {
    const facts = chapters[at]?.facts ?? [];
    if (facts.some((fact) => fact.atMs > fromMs && fact.atMs <= toMs && isSuch(fact))) return true;
    if ((facts[0]?.atMs ?? fromMs) <= fromMs) return false;
  }
  return false;
};
