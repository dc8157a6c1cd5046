/**
 * What a message means, by two pairs of eyes: the grammar, which reads what is said in so many words, and the ranker,
 * which knows what crews mean by messages like it. What both find, or the ranker surely, is taken; what only one of them
 * finds is offered. The ranker gives no order and raises no alarm by itself.
 */
import { oncePer } from '../core/once-per.ts';
import type { Intent, Reading } from '../core/intent.ts';
import type { CrewRole, Roster } from '../core/roster.ts';
import { actSets } from './act-sets.ts';
import type { ActSet } from './act-sets.ts';
import { isDanger, isOrder, isQuestion } from './acts.ts';
import type { Act } from './acts.ts';
import { actsOf } from './acts-of.ts';
import { amountsIn } from './amounts.ts';
import { CERTAINTY } from './assumptions.ts';
import { confirmedFirst } from './confirming.ts';
import { elementsOf } from './elements.ts';
import { withHeardNumbers } from './heard-numbers.ts';
import type { Hearing } from './hearing.ts';
import { clausesOf, likelyReadings } from './likely.ts';
import type { ClauseOf, LikelyReading } from './likely.ts';
import { withReasons } from './reasons.ts';
import { namesOf } from './names.ts';
import { withNumbers } from './numbers.ts';
import { isOrderGiven } from './order-given.ts';
import type { RankedAct, Ranker } from './ranker/rank.ts';
import { wordsFor } from './ranker/words.ts';
import { isOnlyGreeting, read, readsEveryWord } from './read.ts';
import type { Element } from './sign.ts';
import { numbersOf } from './ticket-slots.ts';
import { tokenize } from './tokens.ts';

const MOST_OFFERED = 3;
/** Of the likeliest sets of acts, so many are looked at for readings that make sense. */
const MOST_TRIED = 12;
const MOST_SENTENCES = 8;
/** Tons and kilograms come to pounds with so much left over. */
const ROUNDED_LB = 30;

const wordsOf = oncePer(({ fields, stations }: Roster) =>
  wordsFor({
    fields: fields.flatMap(({ name, aliases }) => [name, ...aliases]),
    stations: stations.flatMap(({ name, aliases }) => [name, ...aliases]),
  }),
);

type Rank = (text: string) => readonly RankedAct<Act>[];

/** The roles as the ranker has learned them. */
const LEARNED_ROLES: Record<CrewRole, string> = {
  grower: 'grower',
  foreman: 'foreman',
  driver: 'driver',
  'digger-operator': 'digger',
  'topper-operator': 'topper',
};

const rankersFor = ({ ear, roster, speaker }: Hearing): { rank: Rank; glance: Rank } | null => {
  if (ear === null) return null;
  const role = LEARNED_ROLES[speaker?.roles[0] ?? 'driver'];
  const by =
    (ranker: Ranker<Act>): Rank =>
    (text) =>
      ranker({ words: wordsOf(roster)(text), state: ear.state, role });
  return { rank: by(ear.rank), glance: by(ear.glance) };
};

/** The clause in which the ranker finds the act most. */
const clauseFinder = (glance: Rank, text: string, elements: readonly Element[]): ClauseOf => {
  const clauses = clausesOf(elements);
  if (clauses.length < 2) return () => 0;
  const ranked = clauses.map((clause) => glance(text.slice(clause[0]?.start, clause.at(-1)?.end)));
  const chance = (act: Act, at: number): number => ranked[at]?.find((one) => one.act === act)?.certainty ?? 0;
  return (act) => clauses.reduce((best, _, at) => (chance(act, at) > chance(act, best) ? at : best), 0);
};

interface Candidate extends LikelyReading, ActSet {}

/** A truck that stands in the line, or comes there loaded, and counts the trucks ahead: it joins the line with that. */
const asCount = (intent: Intent, { ear }: Hearing): Intent =>
  intent.do === 'report' &&
  intent.step === 'joined-line' &&
  intent.ahead !== null &&
  /^(loaded|in_line)$/.test(ear?.state ?? '')
    ? { do: 'see-line', ahead: intent.ahead, station: null, atMs: intent.atMs }
    : intent;

/** Several sets of acts may come to the same: a ticket is a weighing out, too. Their chances add up. */
const merged = (found: readonly Candidate[], hearing: Hearing): Candidate[] => {
  const byMeaning = new Map<string, Candidate>();
  for (const one of found) {
    const key = JSON.stringify(one.intents.map((intent) => asCount(intent, hearing)));
    const known = byMeaning.get(key);
    byMeaning.set(key, known ? { ...known, certainty: known.certainty + one.certainty } : one);
  }
  return [...byMeaning.values()].sort((a, b) => b.certainty - a.certainty);
};

/** The readings that make sense, the likeliest first. */
const candidates = (sets: readonly ActSet[], text: string, glance: Rank, hearing: Hearing): Candidate[] => {
  const tokens = withNumbers(withHeardNumbers(tokenize(text)));
  const elements = elementsOf(text, tokens, namesOf(hearing.roster));
  const parts = { elements, amounts: amountsIn(tokens) };
  const clauseOf = clauseFinder(glance, text, elements);
  const found = sets.flatMap((set) => {
    if (set.acts.length === 0 || set.acts.some(isDanger)) return [];
    const readings = likelyReadings(set.acts, text, parts, clauseOf, hearing);
    return readings.map((reading) => ({ ...set, ...reading, certainty: set.certainty / readings.length }));
  });
  return merged(found, hearing);
};

const isSame = (a: readonly Intent[], b: readonly Intent[]): boolean =>
  JSON.stringify(a) === JSON.stringify(b);

const offered = (readings: readonly (readonly Intent[])[]): Reading => {
  const different = readings.filter((one, at) => readings.findIndex((other) => isSame(one, other)) === at);
  return { found: 'likely', readings: different.slice(0, MOST_OFFERED) };
};

const isSure = ({ acts, certainty, isWhole }: Candidate): boolean =>
  isWhole && certainty >= CERTAINTY.booked && !acts.some((act) => isOrder(act));

const isAnswered = ({ acts, certainty }: Candidate): boolean =>
  acts.every((act) => isQuestion(act)) && certainty >= CERTAINTY.answered;

/** What the ranker alone makes of it; readings are looked for only where it is no talk. `unread`: what it is otherwise. */
const byRanker = (
  sets: readonly ActSet[],
  find: () => readonly Candidate[],
  unread: Reading,
  hearing: Hearing,
): Reading => {
  const talk = sets.find(({ acts }) => acts.length === 0)?.certainty ?? 1;
  if (talk > (hearing.addressed ? CERTAINTY.talkAlone : CERTAINTY.talkInRoom)) return unread;
  const found = find();
  const [best] = found;
  if (best === undefined) return unread;
  if (best.certainty >= (sets[0]?.certainty ?? 1) && (isSure(best) || isAnswered(best)))
    return { found: 'intents', intents: best.intents };
  return offered(
    found.filter(({ certainty }) => certainty >= CERTAINTY.offered).map(({ intents }) => intents),
  );
};

const WEIGHTS = ['grossLb', 'tareLb', 'netLb'] as const;

/** A ticket's numbers are told apart in a second way, too, by what scales print: no weight has another name there. */
const hasNumbersOf = (text: string, intent: Intent): boolean => {
  if (intent.do !== 'book-ticket') return true;
  const [numbers] = numbersOf(['ticket'], amountsIn(withNumbers(tokenize(text))));
  if (numbers === undefined) return true;
  const isAlike = (one: number | null, other: number | null): boolean =>
    one !== null && other !== null && Math.abs(one - other) < ROUNDED_LB;
  return WEIGHTS.every(
    (role) =>
      WEIGHTS.every((other) => role === other || !isAlike(intent[role], numbers[other])) &&
      (numbers[role] === null || intent[role] === null || isAlike(intent[role], numbers[role])),
  );
};

/** What stands in the grammar word for word is taken, and so is what the ranker knows nothing of: lists, drills. */
const isPlain = (intents: readonly Intent[], text: string, hearing: Hearing): boolean =>
  intents.every((intent) => actsOf(intent).length === 0) ||
  (readsEveryWord(text, hearing) && intents.every((intent) => hasNumbersOf(text, intent)));

/** The ranker finds what the grammar found among other words, and nothing else. No order is given so: it is read back. */
const agrees = (intents: readonly Intent[], ranked: readonly RankedAct<Act>[]): boolean => {
  const meant = intents.map(actsOf).filter((acts) => acts.length > 0);
  const chance = (act: Act): number => ranked.find((one) => one.act === act)?.certainty ?? 0;
  const isMeant = (act: Act): boolean => meant.some((acts) => acts.includes(act));
  return (
    !intents.some(isOrderGiven) &&
    meant.every((acts) => acts.some((act) => chance(act) >= CERTAINTY.agrees)) &&
    ranked.every(({ act, certainty }) => isMeant(act) || isDanger(act) || certainty < CERTAINTY.contradicts)
  );
};

const isCall = ({ do: what }: Intent): boolean => what === 'call-emergency';

/** The ranker's chance that somebody is in danger, or may be. */
const dangerIn = (ranked: readonly RankedAct<Act>[]): number =>
  1 - ranked.filter(({ act }) => isDanger(act)).reduce((none, { certainty }) => none * (1 - certainty), 1);

/** Whatever else a message says: danger may be told in one of its sentences. */
const dangerChance = (text: string, ranked: readonly RankedAct<Act>[], glance: Rank): number => {
  const sentences = text.split(/[.!?;\n]+/u).filter((sentence) => sentence.trim() !== '');
  const each =
    sentences.length > 1 ? sentences.slice(0, MOST_SENTENCES).map((one) => dangerIn(glance(one))) : [];
  return Math.max(dangerIn(ranked), ...each);
};

/** Somebody may be in danger: the sender is asked that first, and what else may be meant. */
const askedOfDanger = (text: string, reading: Reading): Reading => {
  const call: Intent = { do: 'call-emergency', words: text.trim() };
  const others =
    reading.found === 'intents'
      ? [reading.intents.filter((intent) => !isCall(intent))]
      : reading.found === 'likely'
        ? reading.readings
        : [];
  return offered([[call], ...others.filter((intents) => intents.length > 0)]);
};

/** The grammar's reading and the ranker's in one. */
const together = (
  grammar: Reading,
  ranked: readonly RankedAct<Act>[],
  text: string,
  glance: Rank,
  hearing: Hearing,
): Reading => {
  const sets = actSets(ranked);
  const found = (count: number): Candidate[] => candidates(sets.slice(0, count), text, glance, hearing);
  switch (grammar.found) {
    case 'intents':
      return agrees(grammar.intents, ranked) && grammar.intents.every((intent) => hasNumbersOf(text, intent))
        ? grammar
        : offered([grammar.intents, ...found(MOST_OFFERED).map(({ intents }) => intents)]);
    case 'unclear':
      return grammar.problem.problem === 'not-understood'
        ? byRanker(sets, () => found(MOST_TRIED), grammar, hearing)
        : grammar;
    case 'likely':
      return grammar;
    case 'chatter':
      return byRanker(sets, () => found(MOST_TRIED), grammar, hearing);
  }
};

/** Who calls for help asks nothing else. */
const withoutQuestions = (reading: Reading): Reading =>
  reading.found === 'intents'
    ? { ...reading, intents: reading.intents.filter(({ do: what }) => what !== 'ask') }
    : reading;

/** As `read`, with the ranker beside it where there is one. */
export const hearWords = (text: string, hearing: Hearing): Reading => {
  const said = read(text, hearing);
  const grammar: Reading = said.found === 'intents' ? { ...said, intents: withReasons(said.intents) } : said;
  const rankers = rankersFor(hearing);
  if (rankers === null) return grammar;
  const { rank, glance } = rankers;
  const clean = text.normalize('NFC');
  const isAlarm = grammar.found === 'intents' && grammar.intents.some(isCall);
  if (grammar.found === 'intents' && !isAlarm && isPlain(grammar.intents, clean, hearing)) return grammar;
  const ranked = rank(clean);
  if (isOnlyGreeting(clean) && ranked[0]?.act !== 'ack') return grammar;
  const danger = dangerChance(clean, ranked, glance);
  if (isAlarm && danger >= CERTAINTY.alarm) return withoutQuestions(grammar);
  if (isAlarm) return askedOfDanger(clean, grammar);
  const reading = confirmedFirst(together(grammar, ranked, clean, glance, hearing), clean, hearing);
  return danger >= CERTAINTY.danger ? askedOfDanger(clean, reading) : reading;
};
