import { distance } from 'fastest-levenshtein';
import { oncePer } from '../core/once-per.ts';
import type { Roster } from '../core/roster.ts';
import { listed, wordSet } from './every-language.ts';
import type { Slot } from './sign.ts';
import { fold } from './tokens.ts';
import type { Token } from './tokens.ts';
import { truckByNumber } from './truck-numbers.ts';
import type { FoundName } from './truck-numbers.ts';

type Sort = 'truck' | 'field' | 'station' | 'person';

interface Entry {
  sort: Sort;
  id: string;
  /** Name, alias or id without spaces: "north40". */
  key: string;
  /** First word of a longer name: "north". */
  first: string | null;
  /** The number in a field's name: "40". */
  number: string | null;
}

const squash = (text: string): string => fold(text).replace(/[^\p{L}\d]/gu, '');

const firstWord = (name: string): string | null => /^\p{L}{4,}(?=[\s-])/u.exec(fold(name))?.[0] ?? null;

const leadingArticles = listed(({ lists }) => lists.article).join('|');

/** "El río" is "río" in "del río". */
const withoutArticle = (name: string): string =>
  name.replace(new RegExp(`^(?:${leadingArticles}) (?=.{3})`, 'iu'), '');

const entriesOf = (
  sort: Sort,
  list: readonly { id: string; name: string; aliases: readonly string[] }[],
): Entry[] =>
  list.flatMap(({ id, name, aliases }) =>
    [...new Set([name, id, ...aliases].flatMap((said) => [said, withoutArticle(said)]))]
      .filter((said) => !/^\d+$/.test(said))
      .map((said) => ({
        ...{ sort, id, key: squash(said) },
        first: sort === 'truck' ? null : firstWord(said),
        number: sort === 'field' ? (/\d+$/.exec(squash(said))?.[0] ?? null) : null,
      })),
  );

export interface Names {
  roster: Roster;
  entries: readonly Entry[];
}

export const namesOf = oncePer((roster: Roster): Names => ({
  roster,
  entries: [
    ...entriesOf('truck', roster.trucks),
    ...entriesOf('field', roster.fields),
    ...entriesOf('station', roster.stations),
    ...entriesOf('person', roster.people),
  ],
}));

/** Words of names, so that they are not taken for slips of other words. */
export const nameWords = ({ entries, roster }: Names): string[] => {
  const named = [...roster.trucks, ...roster.fields, ...roster.stations, ...roster.people];
  const words = named.flatMap(({ name, aliases }) =>
    [name, ...aliases].flatMap((n) => fold(n).split(/[^\p{L}]+/u)),
  );
  return [...words, ...entries.map(({ key }) => key)].filter((word) => /^\p{L}{2,}$/u.test(word));
};

const idsOf = (entries: readonly Entry[], sort: Sort): string[] => [
  ...new Set(entries.filter((entry) => entry.sort === sort).map(({ id }) => id)),
];

const slotOf = (found: readonly Entry[], said: string): Slot => {
  const [person] = idsOf(found, 'person');
  const trucks = idsOf(found, 'truck');
  if (trucks.length > 0) return { slot: 'truck', trucks: [{ ids: trucks, said }], said };
  const [fields, stations] = [idsOf(found, 'field'), idsOf(found, 'station')];
  if (person !== undefined && fields.length + stations.length === 0)
    return { slot: 'person', id: person, said };
  return { slot: 'place', fields, stations, said };
};

/** Words of names may run over spaces and dashes, never over a comma. */
const runAt = (tokens: readonly Token[], at: number, length: number): Token[] | null => {
  const run = tokens.slice(at, at + length);
  return run.length === length && run.every(({ kind }) => kind === 'word' || kind === 'number') ? run : null;
};

type LookUp = (entries: readonly Entry[], said: string) => Entry[];

const lettersOf = (key: string): string => key.replace(/\d/g, '');

/** Letters may be off by 1 in up to 5, by 2 above; digits never: North 40 is not North 48. */
const slip = (said: string, key: string): number | null => {
  if (said.replace(/\D/g, '') !== key.replace(/\D/g, '') || lettersOf(key).length < 5) return null;
  if (!said.startsWith(key.charAt(0))) return null;
  const letters = distance(lettersOf(said), lettersOf(key));
  return letters <= (lettersOf(key).length <= 5 ? 1 : 2) ? letters : null;
};

/** Slips of whole names; those of single words were put right with the other words. */
const nearest: LookUp = (entries, said) => {
  const slips = entries.map((entry) => ({
    entry,
    letters: entry.sort === 'person' ? null : slip(said, entry.key),
  }));
  const least = Math.min(...slips.map(({ letters }) => letters ?? Infinity));
  return least === Infinity ? [] : slips.filter(({ letters }) => letters === least).map(({ entry }) => entry);
};

const exact: LookUp = (entries, said) => entries.filter(({ key }) => key === said);

/** The names that so many words from here on are, or are a slip of. */
const nameOfWords = (names: Names, tokens: readonly Token[], at: number, length: number, lookUp: LookUp) => {
  const words = runAt(tokens, at, length)?.map(({ text }) => text) ?? [];
  const found = lookUp(names.entries, words.join(''));
  return found.length === 0 ? null : { slot: slotOf(found, words.join(' ')), length };
};

/** The longest name wins; slips are sought only where no name fits as it is. */
const fullName = (names: Names, tokens: readonly Token[], at: number): FoundName | null => {
  for (const length of [4, 3, 2, 1]) {
    const found = nameOfWords(names, tokens, at, length, exact);
    if (found !== null) return found;
  }
  for (const length of [4, 3, 2]) {
    const found = nameOfWords(names, tokens, at, length, nearest);
    if (found !== null) return found;
  }
  return null;
};

const fieldWords = wordSet((words) => words.names.field);
const stationWords = wordSet((words) => words.names.station);
const compass = wordSet((words) => words.names.compass);
const counted = wordSet((words) => words.names.counted);

/** "North 48" where the list has but North 40: a number that counts nothing belongs to the name. */
const isOtherNumber = (found: readonly Entry[], tokens: readonly Token[], at: number): boolean => {
  const number = tokens[at];
  const isNumber = number?.kind === 'number' && /^\d{1,3}$/.test(number.text);
  return isNumber && !counted.has(tokens[at + 1]?.text ?? '') && found.some(({ key }) => /\d/.test(key));
};

/** "South field", "north station", "north": the first word of a name does where it fits. */
const partialName = ({ entries }: Names, tokens: readonly Token[], at: number): FoundName | null => {
  const [word = '', next = ''] = [tokens[at]?.text, tokens[at + 1]?.text];
  const found = entries.filter(({ first }) => first === word);
  const sort = fieldWords.has(next) ? 'field' : stationWords.has(next) ? 'station' : null;
  const wanted = sort === null ? found : found.filter((entry) => entry.sort === sort);
  if (isOtherNumber(wanted, tokens, at + 1)) {
    return { slot: { slot: 'place', fields: [], stations: [], said: `${word} ${next}` }, length: 2 };
  }
  if (wanted.length > 0) {
    const length = sort === null ? 1 : 2;
    return { slot: slotOf(wanted, length === 1 ? word : `${word} ${next}`), length };
  }
  if (!compass.has(word) || (sort === null && tokens[at + 1]?.kind !== 'number')) return null;
  return { slot: { slot: 'place', fields: [], stations: [], said: `${word} ${next}` }, length: 2 };
};

const articles = wordSet(({ names }) => names.beforeFieldNumber);

/** "The forty", "la 40": the number of one field's name, where nothing is counted. */
const fieldByNumber = ({ entries }: Names, tokens: readonly Token[], at: number): FoundName | null => {
  const [article, number, next] = [tokens[at], tokens[at + 1], tokens[at + 2]];
  if (!articles.has(article?.text ?? '') || number?.kind !== 'number' || counted.has(next?.text ?? ''))
    return null;
  const found = entries.filter((entry) => entry.number === number.text);
  return idsOf(found, 'field').length === 1
    ? { slot: slotOf(found, `${article?.text ?? ''} ${number.text}`), length: 2 }
    : null;
};

/** The truck, field, station or person whose name starts at this token. */
export const nameAt = (names: Names, tokens: readonly Token[], at: number): FoundName | null =>
  truckByNumber(names.roster, tokens, at) ??
  fullName(names, tokens, at) ??
  fieldByNumber(names, tokens, at) ??
  partialName(names, tokens, at);
