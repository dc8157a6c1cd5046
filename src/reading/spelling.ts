import { distance } from 'fastest-levenshtein';
import { tableOf, wordSet } from './every-language.ts';

export const ordinaryWords = wordSet(({ ordinary }) => ordinary);
const spellings = tableOf(({ talk }) => talk.spellings);

const MIN_LENGTH = 4;
const LONG = 5;
/** A swap is one slip, but a word that is one letter off comes first. */
const SWAPPED = 1.1;

/** Two neighbouring letters stand in the wrong order. */
const isSwapped = (said: string, meant: string): boolean => {
  let at = 0;
  while (at < said.length && said[at] === meant[at]) at += 1;
  const swapped = `${said.slice(0, at)}${said[at + 1] ?? ''}${said[at] ?? ''}${said.slice(at + 2)}`;
  return at < said.length && swapped === meant;
};

/** How many letters may be wrong: 1 in words of up to 5 letters, 2 above; with 2, or in short words, not the first. */
const near = (said: string, meant: string): number | null => {
  const limit = meant.length <= LONG ? 1 : 2;
  if (Math.abs(said.length - meant.length) > limit) return null;
  const letters = isSwapped(said, meant) ? SWAPPED : distance(said, meant);
  if (Math.floor(letters) > limit) return null;
  return said.startsWith(meant.charAt(0)) || (meant.length > LONG && letters < 2) ? letters : null;
};

/** The one word, or the longest of one stem: "tonelads" is as near to "tonelada" as to "toneladas". */
const onlyOne = (words: readonly string[]): string | null => {
  const longest = words.reduce((long, word) => (word.length > long.length ? word : long), '');
  return longest !== '' && words.every((word) => longest.startsWith(word)) ? longest : null;
};

/** The word itself where it is known, the one known word it can be a slip of the finger for, or the word as it is. */
export const corrected = (word: string, vocabulary: ReadonlySet<string>): string => {
  const spelt = spellings.get(word) ?? word;
  if (vocabulary.has(spelt) || spelt.length < MIN_LENGTH || ordinaryWords.has(spelt)) return spelt;
  let best: string[] = [];
  let bestLetters = Infinity;
  for (const known of vocabulary) {
    const letters = known.length < MIN_LENGTH ? null : near(spelt, known);
    if (letters === null || letters > bestLetters) continue;
    best = letters < bestLetters ? [known] : [...best, known];
    bestLetters = letters;
  }
  return onlyOne(best) ?? spelt;
};
