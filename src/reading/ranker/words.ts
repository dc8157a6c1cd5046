/**
 * A message as the words that the ranker knows: lower case, without accents; names of the operation's places and numbers
 * stand for their sort, so that what was learned on one farm holds on another.
 */
const MOST_WORDS = 40;

const plain = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\p{M}'’`]/gu, '')
    .replace(/#/g, ' ');

/** A number by its length, and of five digits by its first: first weights, second weights and serials differ there. */
const numberWord = (digits: string): string => {
  const { length } = digits;
  return length === 5 ? `#5${digits[0] ?? ''}` : `#${Math.min(length, 8)}`;
};

const masked = (text: string): string =>
  text
    .replace(/\b\d{1,2}[:h]\d\d\b/g, ' #clock ')
    .replace(/\b(\d{1,3})[ ,.](\d{3})\b/g, '$1$2')
    .replace(/\b\d+[.,]\d+\b/g, ' #decimal ')
    .replace(/(?<!#)\b\d+\b/g, (digits) => ` ${numberWord(digits)} `);

const escaped = (name: string): string => plain(name).replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Longest first: "north 40" before "north". */
const anyOf = (names: readonly string[]): RegExp | null =>
  names.length === 0
    ? null
    : new RegExp(
        `(?<![\\p{L}\\p{N}])(?:${[...names]
          .sort((a, b) => b.length - a.length)
          .map(escaped)
          .join('|')})(?![\\p{L}\\p{N}])`,
        'gu',
      );

export interface Places {
  fields: readonly string[];
  stations: readonly string[];
}

/** Cuts messages of one operation into words. */
export const wordsFor = ({ fields, stations }: Places): ((text: string) => string[]) => {
  const sorts = [
    [anyOf(fields), ' #field '],
    [anyOf(stations), ' #station '],
  ] as const;
  return (text) => {
    const named = sorts.reduce(
      (said, [names, word]) => (names === null ? said : said.replace(names, word)),
      plain(text),
    );
    return (masked(named).match(/#\w+|[\p{L}\p{N}]+|[^\s\p{L}\p{N}]/gu) ?? []).slice(0, MOST_WORDS);
  };
};
