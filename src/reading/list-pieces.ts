import { LANGUAGES } from '../core/roster.ts';
import type { Language, Roster } from '../core/roster.ts';
import type { Fahrenheit, Lb } from '../core/units.ts';
import { fahrenheitOf } from './degrees.ts';
import { listed, wordSet } from './every-language.ts';
import { isLittle } from './little-words.ts';
import { nameAt, namesOf } from './names.ts';
import { numeralOf } from './numbers.ts';
import type { SlotOf } from './sign.ts';
import type { Token } from './tokens.ts';
import { weightAt } from './weights.ts';
import { words } from './words/index.ts';
import { LIST_KEYS } from './words/keys.ts';
import type { ListKey } from './words/keys.ts';

const keyOfWord: ReadonlyMap<string, ListKey> = new Map([
  ...LIST_KEYS.flatMap((key) => listed(({ lists }) => lists.keys[key]).map((word) => [word, key] as const)),
  ['c', 'celsius'],
]);
const languageOfWord: ReadonlyMap<string, Language> = new Map(
  LANGUAGES.flatMap((language) => words[language].calledBy.split(' ').map((name) => [name, language])),
);
const weightWords = wordSet(({ lists }) => lists.weight);
/** Words and marks that a change may hold and that add nothing to it. */
const fillers = new Set(['f', '°', ',', ...listed(({ lists }) => lists.filler)]);

/** What a change of the lists says beside the name that it is about. */
export interface Pieces {
  keys: ReadonlySet<ListKey>;
  /** The first language named. */
  language: Language | null;
  trucks: readonly SlotOf<'truck'>[];
  places: readonly SlotOf<'place'>[];
  people: readonly SlotOf<'person'>[];
  weightsLb: readonly Lb[];
  numbers: readonly string[];
  /** True where every word is one that such a change may hold. */
  isWhole: boolean;
}

const NO_PIECES: Pieces = {
  keys: new Set(),
  language: null,
  trucks: [],
  places: [],
  people: [],
  weightsLb: [],
  numbers: [],
  isWhole: true,
};

/** Every change of a limit says one of them; "second weight" is a tare. */
export const isLimitWord = (word: string): boolean => {
  const key = keyOfWord.get(word);
  return key === 'limit' || key === 'tare' || weightWords.has(word);
};

const withToken = (pieces: Pieces, { kind, text }: Token): Pieces => {
  if (kind === 'number') return { ...pieces, numbers: [...pieces.numbers, text] };
  const [key, language] = [keyOfWord.get(text), languageOfWord.get(text)];
  if (key !== undefined) return { ...pieces, keys: new Set([...pieces.keys, key]) };
  if (language !== undefined) return { ...pieces, language: pieces.language ?? language };
  return fillers.has(text) || isLittle(text) ? pieces : { ...pieces, isWhole: false };
};

/** The pieces from this token to the end. */
export const piecesFrom = (tokens: readonly Token[], from: number, roster: Roster): Pieces => {
  const names = namesOf(roster);
  let pieces = NO_PIECES;
  let at = from;
  for (let token = tokens[at]; token !== undefined; token = tokens[at]) {
    const weight = weightAt(tokens, at, roster.units === 'metric');
    const slot = weight === null ? nameAt(names, tokens, at) : null;
    at += weight?.length ?? slot?.length ?? 1;
    if (weight !== null) {
      const tare = weight.slot.role === 'tare' ? (['tare'] as const) : [];
      const { lb } = weight.slot;
      pieces = { ...pieces, keys: new Set([...pieces.keys, ...tare]), weightsLb: [...pieces.weightsLb, lb] };
    } else if (slot?.slot.slot === 'truck') pieces = { ...pieces, trucks: [...pieces.trucks, slot.slot] };
    else if (slot?.slot.slot === 'place') pieces = { ...pieces, places: [...pieces.places, slot.slot] };
    else if (slot?.slot.slot === 'person') pieces = { ...pieces, people: [...pieces.people, slot.slot] };
    else pieces = withToken(pieces, token);
  }
  return pieces;
};

/** 43,560 square feet of 0.3048 m exactly. */
const HECTARES_PER_ACRE = 0.40468564;

export const acresOf = ({ keys: said, numbers }: Pieces): number | null => {
  const [number] = numbers;
  if (number === undefined || !(said.has('acres') || said.has('hectares'))) return null;
  const { decimal } = numeralOf(number);
  return said.has('acres') ? decimal : Math.round((decimal / HECTARES_PER_ACRE) * 100) / 100;
};

export const limitF = ({ keys: said, numbers }: Pieces, metric: boolean): Fahrenheit | null => {
  const [number] = numbers;
  return number === undefined ? null : fahrenheitOf(number, said.has('celsius') ? 'C' : null, metric);
};
