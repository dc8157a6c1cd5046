/** How far a ranker's acts agree with the labels of one writer. */
import type { Ranker } from '../../../src/reading/ranker/rank.ts';
import type { Example } from './corpus.ts';

/** From this certainty on an act counts as found. */
export const FOUND_AT = 0.35;

export interface Measured {
  /** Messages that mean something, and of these: the acts exactly as labelled; so among the three likeliest readings. */
  meaning: number;
  right: number;
  amongThree: number;
  /** Talk, and how much of it was left alone. */
  talk: number;
  leftAlone: number;
}

const key = (acts: readonly string[]): string => [...acts].sort().join(' ');

/** The likeliest readings, best first. */
export const readings = (ranked: ReturnType<Ranker<string>>): string[] => {
  const [first, second] = ranked;
  const found = ranked.filter(({ certainty }) => certainty >= FOUND_AT).map(({ act }) => act);
  const sets = [
    found,
    first && [first.act],
    first && second && [first.act, second.act],
    second && [second.act],
  ];
  return [...new Set(sets.flatMap((set) => (set && set.length > 0 ? [key(set)] : [])))].slice(0, 3);
};

export const measure = (some: readonly Example[], ranker: Ranker<string>): Measured => {
  const sum: Measured = { meaning: 0, right: 0, amongThree: 0, talk: 0, leftAlone: 0 };
  for (const { message, acts, also } of some) {
    const ranked = ranker(message);
    const found = key(ranked.filter(({ certainty }) => certainty >= FOUND_AT).map(({ act }) => act));
    const fair = [acts, ...also].map(key);
    const isRight = fair.includes(found);
    if (acts.length === 0) {
      sum.talk += 1;
      sum.leftAlone += Number(isRight);
      continue;
    }
    sum.meaning += 1;
    sum.right += Number(isRight);
    sum.amongThree += Number(isRight || readings(ranked).some((reading) => fair.includes(reading)));
  }
  return sum;
};

const share = (part: number, whole: number): string => (whole === 0 ? '-' : (part / whole).toFixed(3));

export const asLine = (name: string, sum: Measured): string =>
  `${name}: right ${share(sum.right, sum.meaning)}, among three ${share(sum.amongThree, sum.meaning)} ` +
  `of ${sum.meaning}; talk left alone ${share(sum.leftAlone, sum.talk)} of ${sum.talk}`;
