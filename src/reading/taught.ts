/** Words that a crew has taught the bot: `teach "rollin" = loaded`, and what is heard by them. */
import type { Intent, Reading } from '../core/intent.ts';
import { hearWords } from './ear.ts';
import { emergencyWords } from './emergency.ts';
import { either } from './every-language.ts';
import type { Hearing } from './hearing.ts';
import { isBlocker } from './little-words.ts';
import { read } from './read.ts';
import { fold, tokenize } from './tokens.ts';
import { vocabulary } from './vocabulary.ts';
import { unlessVoided } from './voided.ts';

const TEACH = either(({ teaching }) => teaching.teach);
const MEANS = either(({ teaching }) => teaching.means);
const FORGET = either(({ teaching }) => teaching.forget);
const QUOTED = '["“”«»]';
const TEACHING = new RegExp(
  `^(?:${TEACH})[:,]? +${QUOTED}?([^"“”«»=]+?)${QUOTED}? *(?:=| (?:${MEANS}) ) *${QUOTED}?([^"“”«»=]+?)${QUOTED}?[.!]?$`,
  'u',
);
const FORGETTING = new RegExp(`^(?:${FORGET})[:,]? +${QUOTED}([^"“”«»]+?)${QUOTED}[.!]?$`, 'u');

const known: ReadonlySet<string> = new Set(vocabulary);
const ofDanger: ReadonlySet<string> = new Set(emergencyWords);

const MOST_WORDS = 4;
/** Shorter ones stand in too many others. */
const LEAST_LETTERS = 3;

const plain = (text: string): string =>
  tokenize(text)
    .map((token) => token.text)
    .join(' ');

/** New to the bot, and nothing that could hide a denial or a danger. */
const isTeachable = (said: string): boolean => {
  const words = said.split(' ');
  return (
    /^[a-z ]+$/.test(said) &&
    said.length >= LEAST_LETTERS &&
    words.length <= MOST_WORDS &&
    !words.every((word) => known.has(word)) &&
    !words.some((word) => ofDanger.has(word) || isBlocker(word))
  );
};

const MAY_BE_MEANT = new Set<Intent['do']>(['report', 'report-machine', 'tell-shift', 'ask']);

const isMeaning = (means: string, hearing: Hearing): boolean => {
  const reading = read(means, { ...hearing, addressed: true });
  return reading.found === 'intents' && reading.intents.every(({ do: what }) => MAY_BE_MEANT.has(what));
};

/** What is to be taught or forgotten; null = the message is something else. */
export const readTeaching = (text: string, hearing: Hearing): Reading | null => {
  const folded = fold(text.trim());
  const forgotten = FORGETTING.exec(folded)?.[1];
  if (forgotten !== undefined)
    return { found: 'intents', intents: [{ do: 'teach', said: plain(forgotten), means: null }] };
  const [, word, meaning] = TEACHING.exec(folded) ?? [];
  if (word === undefined || meaning === undefined) return null;
  const [said, means] = [plain(word), plain(meaning)];
  const why = isTeachable(said) ? (isMeaning(means, hearing) ? null : 'meaning') : 'word';
  return why === null
    ? { found: 'intents', intents: [{ do: 'teach', said, means }] }
    : { found: 'unclear', problem: { problem: 'cannot-teach', why, said } };
};

/** The message with other words in the place of each taught one, the longest first. */
const withWords = (
  text: string,
  taught: ReadonlyMap<string, string>,
  other: (means: string) => string,
): string =>
  [...taught]
    .sort(([a], [b]) => b.length - a.length)
    .reduce((said, [word, means]) => {
      const shape = new RegExp(`(?<![\\p{L}\\d])${word.replaceAll(' ', '\\s+')}(?![\\p{L}\\d])`, 'giu');
      return said.replace(shape, other(means));
    }, text.normalize('NFC'));

/** What stops or starts people, or sends for help: never by a taught word. */
const GRAVE = new Set<Intent['do']>([
  'order-stop',
  'order-resume',
  'drill',
  'call-emergency',
  'check-crown',
  'measure-root',
  'report-station',
  'change-list',
]);

const isGrave = (reading: Reading): boolean => {
  const intents =
    reading.found === 'intents' ? reading.intents : reading.found === 'likely' ? reading.readings.flat() : [];
  return intents.some(({ do: what }) => GRAVE.has(what));
};

/** With the words that this crew has taught. */
const hearMeant = (text: string, hearing: Hearing, taught: ReadonlyMap<string, string>): Reading => {
  const heard = hearWords(text, hearing);
  const meant = taught.size === 0 ? text : withWords(text, taught, (means) => means);
  if (meant === text) return heard;
  // A taught word is no hint of danger by itself, but takes none away from the words around it.
  const around = withWords(text, taught, () => ' ');
  const isPlain = heard.found === 'intents' && isGrave(heard);
  if (isPlain || (isGrave(heard) && isGrave(hearWords(around, hearing)))) return heard;
  const better = hearWords(meant, hearing);
  return isGrave(better) ? heard : better;
};

/** As `hearWords`, with the words that this crew has taught, its teaching, and nothing booked that is voided. */
export const hearTaught = (text: string, hearing: Hearing, taught: ReadonlyMap<string, string>): Reading =>
  readTeaching(text, hearing) ?? unlessVoided(hearMeant(text, hearing, taught), text, hearing);
