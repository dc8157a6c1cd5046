import { either, ofEach, wordSet } from './every-language.ts';
import { corrected } from './spelling.ts';

/*
 * Words that mean a person may be in danger. They count in any room, whoever is spoken to: a needless alarm costs a
 * minute, a missed one a life, so that whatever is not plainly harmless is an emergency.
 */

/** Plainly harmless, and taken out before the danger words are looked for. A comma stands as ",". */
const harmless = ofEach(({ emergency }) => emergency.harmless).flat();

const [NEED, HELP] = [either(({ emergency }) => emergency.need), either(({ emergency }) => emergency.help)];
const danger: readonly RegExp[] = [
  ...ofEach((words) => words.emergency.danger).flat(),
  new RegExp(`${NEED} ${HELP}(?= *,? *$)`),
];

const whole = (shapes: readonly RegExp[]): RegExp =>
  new RegExp(`(?<![^ ])(?:${shapes.map(({ source }) => source).join('|')})(?![^ ])`, 'g');

const harmlessShape = whole(harmless);
const dangerShape = new RegExp(whole(danger).source);

/** A mistyped word is taken for one of these before any other. */
const dangerWords = wordSet(({ emergency }) => emergency.known);

/** The words of both kinds, which are to be left as they are. */
export const emergencyWords: readonly string[] = [
  ...dangerWords,
  ...harmless.flatMap(({ source }) => source.match(/[a-z]{4,}/g) ?? []),
];

/** The word as it counts here: itself where it is known, else the danger word that it is a slip of, if any. */
export const dangerWord = (word: string, vocabulary: ReadonlySet<string>): string =>
  vocabulary.has(word) ? word : corrected(word, dangerWords);

/** `words`: the words of the message, each as `dangerWord`, joined by spaces; "," for marks. */
export const isEmergency = (words: string): boolean => dangerShape.test(words.replaceAll(harmlessShape, '~'));
