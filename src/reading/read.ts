import { isOrderGiven } from './order-given.ts';
import type { Intent, Reading } from '../core/intent.ts';
import { oncePer } from '../core/once-per.ts';
import { mayManage } from '../core/roster.ts';
import type { Roster } from '../core/roster.ts';
import { build } from './build.ts';
import { compose } from './compose.ts';
import type { Composition } from './compose.ts';
import type { Draft } from './draft.ts';
import { isCause } from './causes.ts';
import { elementsOf } from './elements.ts';
import { dangerWord, isEmergency } from './emergency.ts';
import { wordSet } from './every-language.ts';
import type { Built, Hearing } from './hearing.ts';
import { readListChange } from './lists.ts';
import { isBlocker, isGreeting, isLittle } from './little-words.ts';
import { passedOn } from './pass-on.ts';
import { namesOf, nameWords } from './names.ts';
import { withNumbers } from './numbers.ts';
import { readRoomOrder } from './rooms.ts';
import { slotsOf } from './sign.ts';
import type { Sign, Slot } from './sign.ts';
import { corrected } from './spelling.ts';
import { readStarred } from './starred.ts';
import { tokenize } from './tokens.ts';
import type { Token } from './tokens.ts';
import { allPhrases, vocabulary } from './vocabulary.ts';

export type { Hearing } from './hearing.ts';

const CHATTER: Reading = { found: 'chatter' };
const NOT_UNDERSTOOD: Reading = { found: 'unclear', problem: { problem: 'not-understood' } };

/** Longer messages are stories: looked at for emergencies only. */
const MAX_LETTERS = 2000;

/** One word more than the grammar knows for every so many known ones. In a shared room reports fit nearly whole. */
const KNOWN_PER_LEFT = { addressed: 2, overheard: 6 };

const allowedLeft = (known: number, addressed: boolean): number =>
  Math.floor(known / (addressed ? KNOWN_PER_LEFT.addressed : KNOWN_PER_LEFT.overheard));

/** Free words about a breakdown or stop are believed in a shared room where truck or cause are named, and few. */
const MAX_FREE_OVERHEARD = 8;

const freeFits = ({ free: all, sign, slots, named }: Draft): boolean => {
  const free = all.filter((element) => element.is !== 'word' || !isLittle(element.text));
  if (free.length === 0) return true;
  const isNamed =
    slotsOf([...slots, ...named], 'truck').length > 0 ||
    sign.topic === 'machine' ||
    (sign.topic === 'haul' && sign.tells);
  return (
    free.length <= MAX_FREE_OVERHEARD && (isNamed || free.some((e) => e.is === 'word' && isCause(e.text)))
  );
};

/** True where what a common word such as "full" or "left" needs stands beside it. */
const standsAlone = ({ sign, slots, named }: Draft): boolean => {
  if (sign.topic !== 'haul' || sign.needs === null || sign.needs === 'setting') return true;
  const beside = [...slots, ...named];
  return sign.needs === 'any'
    ? beside.length > 0
    : beside.some(({ slot }) => /^(truck|place|person)$/.test(slot));
};

/** Single words that ask for a list or help count only where hardly another word is said: "help", not "a great help". */
const isLonely = ({ topic, ...sign }: Sign): boolean =>
  topic === 'ask' &&
  'about' in sign &&
  /^(people|trucks|fields|stations|limits|help|board|outlook|outlook-today|outlook-tomorrow)$/.test(
    sign.about,
  );

/** A serial with a weight is no small talk: it must be booked or asked about, whatever stands around it. */
const isWholeTicket = ({ sign, slots, named }: Draft): boolean =>
  sign.topic === 'ticket' &&
  slotsOf(named, 'ticket').some(({ serial }) => /\d{5}/.test(serial ?? '')) &&
  slotsOf(slots, 'weight').length > 0;

/** True where what was understood is so much of the message that the message means it. */
const fits = ({ drafts, left, known, little, blocked }: Composition, addressed: boolean): boolean => {
  if (blocked || left > allowedLeft(known, addressed)) return false;
  const isLonelyAsk = drafts.some(({ sign }) => isLonely(sign));
  if (isLonelyAsk && (drafts.length > 1 || (!addressed && little > 1))) return false;
  // What rings half the crew's phones is not believed with words around it that are no reason for it.
  const isStrict = ({ sign }: Draft): boolean => !addressed || sign.topic === 'turned-away';
  return drafts.every((draft) => (!isStrict(draft) || freeFits(draft)) && (addressed || standsAlone(draft)));
};

const isTruck = ({ slot }: Slot): boolean => slot === 'truck' || slot === 'person';
const isTrucked = ({ slots, named }: Draft): boolean => [...slots, ...named].some(isTruck);

/** "Truck 3 loaded, in line at 10:15": the truck named first goes on being meant. */
const withTruckKept = (drafts: readonly Draft[]): Draft[] => {
  const out: Draft[] = [];
  for (const draft of drafts) {
    const isReport = draft.sign.topic === 'haul' || draft.sign.topic === 'ticket';
    const before = out.at(-1);
    const kept =
      before === undefined || isTrucked(draft) ? [] : [...before.named, ...before.slots].filter(isTruck);
    out.push(isReport ? { ...draft, slots: [...draft.slots, ...kept] } : draft);
  }
  return out;
};

const askingWords = wordSet(({ talk }) => talk.asks);
/** Voice typing leaves out the question mark: "is truck 3 loaded". "Did 31 acres" is none. */
const beginsAsQuestion = ([first, second]: readonly Token[]): boolean =>
  askingWords.has(first?.text ?? '') && second?.kind !== 'number';

/** "Drill: everybody stop digging" stops nothing. */
const withoutDrilled = (drafts: readonly Draft[]): readonly Draft[] =>
  drafts.some(({ sign }) => sign.topic === 'drill')
    ? drafts.filter(({ sign }) => sign.topic !== 'stop' && sign.topic !== 'resume')
    : drafts;

const readingOf = (built: readonly Built[], addressed: boolean): Reading => {
  if (built.length === 0 || built.includes(null)) return addressed ? NOT_UNDERSTOOD : CHATTER;
  const intents: Intent[] = [];
  for (const one of built) {
    if (one === null) continue;
    if ('unclear' in one) {
      const isTalk = one.unclear.problem === 'not-understood' && !addressed;
      return isTalk ? CHATTER : { found: 'unclear', problem: one.unclear };
    }
    intents.push(...one.intents);
  }
  return { found: 'intents', intents };
};

const isGreetingOnly = (tokens: readonly Token[]): boolean =>
  tokens.every(
    ({ kind, text }) => kind === 'break' || (kind === 'word' && (isGreeting(text) || isLittle(text))),
  );

/** "Buenos días", "ok thanks": nothing that is ever written down, though it may confirm a notice. */
export const isOnlyGreeting = (text: string): boolean => isGreetingOnly(tokenize(text));

const readPhrases = (text: string, tokens: readonly Token[], hearing: Hearing): Reading => {
  const { roster, addressed } = hearing;
  const composition = compose(allPhrases, elementsOf(text, tokens, namesOf(roster)));
  if (composition.drafts.length === 0 && isGreetingOnly(tokens)) return CHATTER;
  const isMeant = addressed || composition.drafts.some(isWholeTicket);
  if (!fits(composition, isMeant)) return isMeant ? NOT_UNDERSTOOD : CHATTER;
  const isAsked = beginsAsQuestion(tokens);
  const drafts = withTruckKept(withoutDrilled(composition.drafts)).map((draft) => ({
    ...draft,
    asked: draft.asked || isAsked,
  }));
  return readingOf(
    drafts.map((draft) => build(draft, text, hearing)),
    isMeant,
  );
};

const buttonWords = wordSet(({ tickets }) => tickets.button);
/** The words of the ticket button: a platform without a form for it answers how to type one. */
const asksForTicketForm = (tokens: readonly Token[]): boolean =>
  tokens.length === 1 && buttonWords.has(tokens[0]?.text ?? '');

/** "Dig on: the crowns are sound": what stands after the colon is the reason, and is not read as a report. */
const readReasoned = (text: string, tokens: readonly Token[], hearing: Hearing): Reading | null => {
  const colon = tokens.find(({ kind, start }) => kind === 'break' && text[start] === ':');
  const words = colon === undefined ? '' : text.slice(colon.end).trim();
  if (colon === undefined || words === '') return null;
  const head = tokens.filter(({ end }) => end <= colon.start);
  const reading = readPhrases(text, head, hearing);
  if (reading.found !== 'intents') return null;
  const [intent, ...more] = reading.intents;
  if (intent?.do !== 'order-resume' || more.length > 0) return null;
  return { found: 'intents', intents: [{ ...intent, words }] };
};

const grammarWords: ReadonlySet<string> = new Set(vocabulary);
const isKnown = (word: string): boolean => isLittle(word) || isCause(word) || grammarWords.has(word);

/** Nothing is left over, guessed at, or in free words: what is said stands in the grammar word for word. */
export const readsEveryWord = (text: string, hearing: Hearing): boolean => {
  const clean = text.normalize('NFC');
  const tokens = withNumbers(tokenize(clean));
  if ((readReasoned(clean, tokens, hearing) ?? readStarred(clean, hearing)) !== null) return true;
  const elements = elementsOf(clean, tokens, namesOf(hearing.roster));
  const { drafts, left, blocked } = compose(allPhrases, elements);
  const isFree = ({ free }: Draft): boolean =>
    free.some((element) => element.is === 'word' && (isBlocker(element.text) || !isKnown(element.text)));
  return drafts.length > 0 && left === 0 && !blocked && !drafts.some(isFree);
};

/** Words for others. In a shared room people ask each other for that too: only a colon after the name means the bot. */
const readPassedOn = (text: string, tokens: readonly Token[], hearing: Hearing): Reading | null => {
  const { roster, speaker, addressed } = hearing;
  const found = passedOn(text, tokens, roster);
  const isOverheard = found?.isMarked === true && speaker !== null && mayManage(speaker);
  if (found === null || !(addressed || isOverheard)) return null;
  const inner = readPhrases(text, found.tokens, { ...hearing, addressed: true });
  const soundsLikeOrder = inner.found === 'intents' && inner.intents.some(isOrderGiven);
  const { to, words } = found;
  return { found: 'intents', intents: [{ do: 'pass-on', to, words, soundsLikeOrder }] };
};

const readSafeWords = (text: string, tokens: readonly Token[], hearing: Hearing): Reading => {
  const passed = readPassedOn(text, tokens, hearing);
  if (passed !== null) return passed;
  const starred = readStarred(text, hearing);
  if (starred !== null) return starred;
  const asked = readListChange(text, tokens, hearing.roster);
  if (asked !== null) {
    if ('unclear' in asked) return { found: 'unclear', problem: asked.unclear };
    return { found: 'intents', intents: [asked.intent] };
  }
  const room = readRoomOrder(tokens);
  if (room !== null) return { found: 'intents', intents: [room] };
  if (hearing.addressed && asksForTicketForm(tokens))
    return { found: 'intents', intents: [{ do: 'ask', question: { about: 'ticket-form' } }] };
  return readReasoned(text, tokens, hearing) ?? readPhrases(text, tokens, hearing);
};

const withWords = (tokens: readonly Token[], change: (word: string) => string): Token[] =>
  tokens.map((token) => (token.kind === 'word' ? { ...token, text: change(token.text) } : token));

const tellsOfDanger = (tokens: readonly Token[], known: ReadonlySet<string>): boolean =>
  isEmergency(
    withWords(tokens, (word) => dangerWord(word, known))
      .map(({ text }) => text)
      .join(' '),
  );

/** What else the message says, outside the clauses that tell of the danger; read as in a shared room. */
const readBesides = (text: string, tokens: readonly Token[], hearing: Hearing): readonly Intent[] => {
  const known = knownWords(hearing.roster);
  const ends = [...tokens.filter(({ kind }) => kind === 'break').map(({ start }) => start), text.length];
  const clauses = ends.map((end, i) => tokens.filter((t) => t.end <= end && t.start > (ends[i - 1] ?? -1)));
  const safe = clauses.filter((clause) => clause.length > 0 && !tellsOfDanger(clause, known));
  const kept = safe.map((clause) => text.slice(clause[0]?.start, clause.at(-1)?.end)).join(', ');
  const isStill = tellsOfDanger(tokenize(kept), known);
  const reading = isStill ? CHATTER : read(kept, { ...hearing, addressed: false });
  return reading.found === 'intents' ? reading.intents : [];
};

const knownWords = oncePer(
  (roster: Roster): ReadonlySet<string> => new Set([...vocabulary, ...nameWords(namesOf(roster))]),
);

/** What a message means to this crew: intents with ids and instants, one thing to ask back, or talk not meant for us. */
export const read = (text: string, hearing: Hearing): Reading => {
  const clean = text.normalize('NFC');
  const tokens = tokenize(clean);
  const known = knownWords(hearing.roster);
  const isLong = clean.length > MAX_LETTERS;
  if (tellsOfDanger(tokens, known)) {
    const besides = isLong ? [] : readBesides(clean, tokens, hearing);
    return { found: 'intents', intents: [{ do: 'call-emergency', words: clean.trim() }, ...besides] };
  }
  if (isLong) return hearing.addressed ? NOT_UNDERSTOOD : CHATTER;
  const spelt = withWords(tokens, (word) => corrected(word, known));
  return readSafeWords(clean, withNumbers(spelt), hearing);
};
