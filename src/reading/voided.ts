/** Denied, on a condition, of another day or another farm: what is said so has not happened here. */
import type { Intent, Reading } from '../core/intent.ts';
import { either, wordSet } from './every-language.ts';
import type { Hearing } from './hearing.ts';
import { isLittle } from './little-words.ts';
import { read } from './read.ts';
import { tokenize } from './tokens.ts';
import type { Token } from './tokens.ts';

const leads = wordSet(
  ({ talk }) => talk.ifs,
  ({ talk }) => talk.denials,
);
const neighbours = wordSet(({ talk }) => talk.neighbours);
const OTHER_DAY = new RegExp(
  `(?:^| )(?:${either(({ clock }) => clock.spans.yesterday)}|${either(({ clock }) => clock.voidDays)})(?= |$)`,
  'u',
);

/** "If ...", "not ...", "it is not true that ...": the first word of a clause that tells anything. */
const opensVoid = (clause: readonly Token[]): boolean => {
  const first = clause.find(({ text }) => leads.has(text) || !isLittle(text));
  return first !== undefined && leads.has(first.text) && clause.at(-1) !== first;
};

const clausesOf = (tokens: readonly Token[]): Token[][] => {
  const clauses: Token[][] = [[]];
  for (const token of tokens) {
    if (token.kind === 'break' || token.kind === 'question') clauses.push([]);
    else clauses.at(-1)?.push(token);
  }
  return clauses.filter((clause) => clause.length > 0);
};

/** Of another day or another farm, whatever else the words say. */
const isElsewhere = (tokens: readonly Token[]): boolean => {
  const said = tokens.map((token) => token.text);
  return said.some((word) => neighbours.has(word)) || OTHER_DAY.test(said.join(' '));
};

/** A voiding word changes nothing in these: they ask, call for help, or take something back. */
const STANDS = new Set<Intent['do']>(['ask', 'call-emergency', 'correct', 'withdraw', 'choose', 'teach']);

/** What such a message may mean is asked about; denials and conditions stand where the grammar reads the same. */
export const unlessVoided = (reading: Reading, text: string, hearing: Hearing): Reading => {
  if (reading.found !== 'intents') return reading;
  const { intents } = reading;
  const isCall = intents.some(({ do: what }) => what === 'call-emergency');
  if (isCall || intents.every(({ do: what }) => STANDS.has(what))) return reading;
  const tokens = tokenize(text);
  const asked: Reading = { found: 'likely', readings: [intents] };
  if (isElsewhere(tokens)) return asked;
  if (!clausesOf(tokens).some(opensVoid)) return reading;
  const grammar = read(text, hearing);
  const isPlain = grammar.found === 'intents' && JSON.stringify(grammar.intents) === JSON.stringify(intents);
  return isPlain ? reading : asked;
};
