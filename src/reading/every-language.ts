import { LANGUAGES } from '../core/roster.ts';
import { words } from './words/index.ts';
import type { LanguageWords } from './words/language-words.ts';

type Pick<T> = (words: LanguageWords) => T;

const all: readonly LanguageWords[] = LANGUAGES.map((language) => words[language]);

export const ofEach = <T>(pick: Pick<T>): T[] => all.map(pick);

/** The words of these lists in all languages. */
export const listed = (...picks: readonly Pick<string>[]): string[] =>
  picks.flatMap((pick) => all.flatMap((one) => pick(one).split(/\s+/).filter(Boolean)));

export const wordSet = (...picks: readonly Pick<string>[]): ReadonlySet<string> => new Set(listed(...picks));

/** The alternatives of all languages as one piece of a regular expression; one that never fits where none has any. */
export const either = (...picks: readonly Pick<string>[]): string => {
  const shapes = picks.flatMap(ofEach).filter((shape) => shape !== '');
  return `(?:${shapes.length === 0 ? '(?!)' : shapes.join('|')})`;
};

/** The shape at the start of a line of words, up to the end of a word. */
export const atStart = (shape: string): RegExp => new RegExp(`^(?:${shape})(?![^ ])`);

/** What each language's words stand for, in one table. */
export const tableOf = <T>(pick: Pick<Readonly<Record<string, T>>>): ReadonlyMap<string, T> =>
  new Map(all.flatMap((one) => Object.entries(pick(one))));

/** The words of kinds, which have `|` between them. */
export const kindWords = (...picks: readonly Pick<string>[]): ReadonlySet<string> =>
  new Set(picks.flatMap((pick) => ofEach(pick).flatMap((kind) => kind.split('|'))));
