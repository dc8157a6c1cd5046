import { tableOf, ofEach, wordSet } from './every-language.ts';
import type { Token } from './tokens.ts';
import type { LanguageWords } from './words/language-words.ts';

/**
 * A number as written, in its two possible values: "25,260" is 25260 where pounds are meant and 25.26 where tons are.
 * Mexico writes 25.26, others 25,26; both are taken.
 */
interface Numeral {
  /** Null where it can only be a fraction, such as 25.26. */
  whole: number | null;
  decimal: number;
}

export const numeralOf = (text: string): Numeral => {
  if (/^\d+$/.test(text)) return { whole: Number(text), decimal: Number(text) };
  const separators = text.replace(/\d/g, '');
  const fractionMark = separators.slice(-1);
  const asDecimal = Number(
    text.replace(/[.,]/g, (_mark, at) => (at === text.lastIndexOf(fractionMark) ? '.' : '')),
  );
  const asThousands = Number(text.replace(/[.,]/g, ''));
  const groupsOfThree = /^\d{1,3}(?:([.,])\d{3})(?:\1\d{3})*$/.test(text);
  if (!groupsOfThree) return { whole: null, decimal: asDecimal };
  return { whole: asThousands, decimal: separators.length > 1 ? asThousands : asDecimal };
};

/** What each word of the lists counts, in all languages: the first word `first`, the next `step` more. */
const counted = (
  first: number,
  step: number,
  pick: (numbers: LanguageWords['numbers']) => string,
): [string, number][] =>
  ofEach(({ numbers }) =>
    pick(numbers)
      .split(' ')
      .filter(Boolean)
      .flatMap((same, i) => same.split('/').map((word): [string, number] => [word, first + i * step])),
  ).flat();

const units = new Map([...counted(0, 1, ({ zero }) => zero), ...counted(1, 1, ({ from1 }) => from1)]);
const teens = new Map([...counted(10, 1, ({ from10 }) => from10), ...counted(21, 1, ({ from21 }) => from21)]);
const tens = new Map(counted(20, 10, (numbers) => numbers.tens));
const hundreds = new Map(counted(100, 100, (numbers) => numbers.hundreds));
const ordinals = new Map(counted(1, 1, (numbers) => numbers.ordinals));
const hundredWords = wordSet(({ numbers }) => numbers.hundred);
const thousandWords = wordSet(({ numbers }) => numbers.thousand);
const loneThousands = wordSet(({ numbers }) => numbers.loneThousand);
const afterHundreds = wordSet(({ numbers }) => numbers.afterHundreds);
/** Tens with what joins them to ones: "treinta y". */
const joinedTens = new Set(
  ofEach(({ numbers }) => numbers.tens.split(/[ /]/).map((ten) => `${ten} ${numbers.afterTens}`)).flat(),
);
const unlessAfter = tableOf(({ numbers }) => numbers.unlessAfter);
const onlyAfter = tableOf(({ numbers }) => numbers.onlyAfter);

export const numberWords: readonly string[] = [
  ...[units, teens, tens, hundreds, ordinals].flatMap((map) => [...map.keys()]),
  ...hundredWords,
  ...thousandWords,
];

interface Spoken {
  value: number;
  /** How many words it took. */
  length: number;
}

const belowHundred = (said: readonly string[]): Spoken | null => {
  const [first = '', second = '', third = ''] = said;
  const ten = tens.get(first);
  if (ten === undefined) {
    const value = teens.get(first) ?? units.get(first);
    return value === undefined ? null : { value, length: 1 };
  }
  const unit = units.get(second) ?? 0;
  if (unit > 0) return { value: ten + unit, length: 2 };
  const joined = joinedTens.has(`${first} ${second}`) ? (units.get(third) ?? 0) : 0;
  return joined > 0 ? { value: ten + joined, length: 3 } : { value: ten, length: 1 };
};

/** Behind thousands "four sixty" is 460. */
const hundredsLeftOut = (said: readonly string[]): Spoken | null => {
  const [first = '', second = ''] = said;
  const hundred = units.get(first) ?? 0;
  const isTens = tens.has(second) || teens.has(second);
  const rest = isTens && hundred > 0 ? belowHundred(said.slice(1)) : null;
  return rest === null ? null : { value: hundred * 100 + rest.value, length: 1 + rest.length };
};

const belowThousand = (said: readonly string[]): Spoken | null => {
  const [first = '', second = ''] = said;
  const ofHundred = hundredWords.has(second) ? (units.get(first) ?? null) : null;
  const hundred = ofHundred === null ? hundreds.get(first) : ofHundred * 100;
  if (hundred === undefined) return belowHundred(said);
  const used = ofHundred === null ? 1 : 2;
  const joined = afterHundreds.has(said[used] ?? '') ? used + 1 : used;
  const rest = belowHundred(said.slice(joined));
  return rest === null
    ? { value: hundred, length: used }
    : { value: hundred + rest.value, length: joined + rest.length };
};

const counts = tableOf(({ numbers }) => numbers.counts);
const MOST_COUNT_WORDS = 3;

/** "Half a dozen", "un par de": the longest that fits. */
const countAt = (said: readonly string[]): Spoken | null => {
  for (let length = MOST_COUNT_WORDS; length > 1; length -= 1) {
    const value = counts.get(said.slice(0, length).join(' '));
    if (value !== undefined) return { value, length };
  }
  return null;
};

const spoken = (said: readonly string[]): Spoken | null => {
  const high = loneThousands.has(said[0] ?? '') ? { value: 1, length: 0 } : belowThousand(said);
  if (high === null || !thousandWords.has(said[high.length] ?? '')) return high;
  const after = said.slice(high.length + 1);
  const low = hundredsLeftOut(after) ?? belowThousand(after);
  const value = high.value * 1000 + (low?.value ?? 0);
  return { value, length: high.length + 1 + (low?.length ?? 0) };
};

const stands = (list: string, before: string): boolean => list.split(' ').includes(before);

/** Some number words are another word beside some others, and are left as they are: "no one" is nobody. */
const isOrdinaryWord = (word: string, before = ''): boolean => {
  const [unless, only] = [unlessAfter.get(word), onlyAfter.get(word)];
  return (unless !== undefined && stands(unless, before)) || (only !== undefined && !stands(only, before));
};

/** Number words turned into numbers: "forty eight" becomes 48, "ochenta y seis mil" 86000, "second" the ordinal 2. */
export const withNumbers = (tokens: readonly Token[]): Token[] => {
  const out: Token[] = [];
  let i = 0;
  for (let token = tokens[i]; token !== undefined; token = tokens[i]) {
    const said = tokens.slice(i, i + 9).map((t) => (t.kind === 'word' ? t.text : ''));
    const ordinal = ordinals.get(said[0] ?? '');
    const number = isOrdinaryWord(token.text, tokens[i - 1]?.text) ? null : (countAt(said) ?? spoken(said));
    const length = number?.length ?? 1;
    const end = tokens[i + length - 1]?.end ?? token.end;
    if (ordinal !== undefined) out.push({ ...token, kind: 'ordinal', text: String(ordinal) });
    else out.push(number === null ? token : { ...token, kind: 'number', text: String(number.value), end });
    i += length;
  }
  return out;
};
