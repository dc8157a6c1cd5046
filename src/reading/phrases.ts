import { ofEach } from './every-language.ts';
import { isLittle } from './little-words.ts';
import type { Phrased } from './phrased.ts';
import type { Element, Sign, Slot } from './sign.ts';
import { KINDS } from './words/keys.ts';
import type { LanguageWords } from './words/language-words.ts';

/**
 * A phrase is written as its words in order: `a|b` is either, each word within `(a|b c)` may be missing, `{piler}` is any
 * word of that kind in any language, `<truck>` a slot, `,` a break and `<?>` a question mark. Little words ("the", "is",
 * "la") may stand between any two of them.
 */
interface Part {
  options: readonly string[];
  optional: boolean;
}

export interface Phrase {
  parts: readonly Part[];
  /** What it may begin with: the words up to and with the first that may not be missing. */
  starts: readonly string[];
  sign: Sign;
}

const optionsOf = (option: string): string[] => {
  const kind = KINDS.find((name) => option === `{${name}}`);
  return kind === undefined ? [option] : ofEach(({ kinds }) => kinds[kind].split('|')).flat();
};

const partsOf = (line: string): Part[] => {
  const words = line.split(' ');
  const opened = (at: number): number =>
    words
      .slice(0, at + 1)
      .join('')
      .split('(').length;
  const closed = (at: number): number => words.slice(0, at).join('').split(')').length;
  return words.map((word, at) => ({
    options: word.replace(/[()]/g, '').split('|').flatMap(optionsOf),
    optional: opened(at) > closed(at),
  }));
};

const startsOf = (parts: readonly Part[]): string[] => {
  const first = parts.findIndex(({ optional }) => !optional);
  return parts.slice(0, first + 1).flatMap(({ options }) => options);
};

/** One phrase a line. */
export const phrases = (sign: Sign, lines: string): Phrase[] =>
  lines
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map((line) => {
      const parts = partsOf(line);
      return { parts, starts: startsOf(parts), sign };
    });

/** The phrases of all languages for these signs, in the order of the signs. */
export const phrasesFor = <K extends string>(
  signs: readonly Phrased<K>[],
  linesOf: (words: LanguageWords) => Readonly<Record<K, string>>,
): Phrase[] =>
  signs.flatMap(({ key, sign, mixed }) =>
    [mixed, ...ofEach((words) => linesOf(words)[key])].flatMap((lines) => phrases(sign, lines)),
  );

export const wordsOf = (list: readonly Phrase[]): string[] =>
  list
    .flatMap(({ parts }) => parts.flatMap(({ options }) => options))
    .filter((word) => /^[a-z]+$/.test(word));

const slotFits = (slot: Slot, option: string): boolean => {
  switch (option) {
    case '<n>':
      return slot.slot === 'number';
    case '<nth>':
      return slot.slot === 'ordinal';
    case '<field>':
      return slot.slot === 'place' && (slot.fields.length > 0 || slot.stations.length === 0);
    case '<station>':
      return slot.slot === 'place' && slot.fields.length === 0 && slot.stations.length > 0;
    case '<shift>':
      return slot.slot === 'clock' && 'fromNowMin' in slot.clock && slot.clock.fromNowMin > 0;
    default:
      return option === `<${slot.slot}>`;
  }
};

const fits = (element: Element, option: string): boolean => {
  switch (element.is) {
    case 'word':
      return element.text === option;
    case 'slot':
      return slotFits(element.slot, option);
    case 'break':
      return option === ',';
    case 'question':
      return option === '<?>';
  }
};

type Places = number[] | null;

const longer = (one: Places, other: Places): Places =>
  one === null || (other !== null && other.length > one.length) ? other : one;

/** Little words that a phrase may have between its own; more would make the search long, and are no phrase. */
const MAX_SKIPPED = 5;

/** Places of the elements that the parts take, as many as can be; null where they do not fit. */
const taken = (parts: readonly Part[], elements: readonly Element[], at: number, skips: number): Places => {
  const [part, ...later] = parts;
  if (part === undefined) return [];
  const element = elements[at];
  if (element !== undefined && part.options.some((option) => fits(element, option))) {
    const rest = taken(later, elements, at + 1, skips);
    if (rest !== null) return [at, ...rest];
  }
  const isSkipped = skips > 0 && element?.is === 'word' && isLittle(element.text);
  const after = isSkipped ? taken(parts, elements, at + 1, skips - 1) : null;
  return part.optional ? longer(after, taken(later, elements, at, skips)) : after;
};

const placesOf = ({ parts, starts }: Phrase, elements: readonly Element[], at: number): Places => {
  const begins = elements[at];
  const isStart = begins !== undefined && starts.some((option) => fits(begins, option));
  return isStart ? taken(parts, elements, at, MAX_SKIPPED) : null;
};

export interface Match {
  sign: Sign;
  /** Slots named in the phrase, in order. */
  slots: Slot[];
  /** How many elements the phrase itself took. */
  weight: number;
  end: number;
}

/** The phrase that takes most of the elements from `at` on; the earlier in the list where two take as many. */
export const longestPhrase = (
  list: readonly Phrase[],
  elements: readonly Element[],
  at: number,
): Match | null => {
  let best: { phrase: Phrase; places: number[] } | null = null;
  for (const phrase of list) {
    const places = placesOf(phrase, elements, at);
    if (places !== null && places.length > (best?.places.length ?? 0)) best = { phrase, places };
  }
  if (best === null) return null;
  const { phrase, places } = best;
  const used = places.flatMap((place) => elements[place] ?? []);
  return {
    sign: phrase.sign,
    slots: used.flatMap((element) => (element.is === 'slot' ? [element.slot] : [])),
    weight: places.length,
    end: (places.at(-1) ?? at) + 1,
  };
};
