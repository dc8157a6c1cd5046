/** A set of acts that the ranker found, with the names, times and numbers of the message: what it would mean. */
import type { Intent } from '../core/intent.ts';
import { MS_PER_MINUTE } from '../core/units.ts';
import { isOfTruck, signOf } from './acts.ts';
import type { Act } from './acts.ts';
import type { Amount } from './amounts.ts';
import { build } from './build.ts';
import { accepts, aheadOf } from './draft.ts';
import type { Draft } from './draft.ts';
import type { Hearing } from './hearing.ts';
import type { Element, Sign, Slot } from './sign.ts';
import { clockWordsLeft, denied, isNext, lasting, others } from './said-of.ts';
import { numbersOf, withTicket } from './ticket-slots.ts';

export interface LikelyReading {
  intents: readonly Intent[];
  /** Every name, time and number of the message has its place in it. */
  isWhole: boolean;
}

/** A message as its names, times and numbers. */
export interface Parts {
  elements: readonly Element[];
  amounts: readonly Amount[];
}

/** Whose act a clause is: for each act the index of its clause. */
export type ClauseOf = (act: Act) => number;

/** The message cut at its breaks. */
export const clausesOf = (elements: readonly Element[]): Element[][] => {
  const clauses: Element[][] = [[]];
  for (const element of elements) {
    if (element.is === 'break' || element.is === 'question') clauses.push([]);
    else clauses.at(-1)?.push(element);
  }
  return clauses.filter((clause) => clause.length > 0);
};

const draftOf = (sign: Sign, free: readonly Element[]): Draft => ({
  sign,
  named: [],
  slots: [],
  ahead: null,
  asked: false,
  free,
});

/** In these the phrase itself would hold these slots. */
const NAMES: Partial<Record<Sign['topic'], readonly Slot['slot'][]>> = {
  line: ['number', 'ordinal'],
  pilers: ['number', 'ordinal'],
  ticket: ['ticket'],
};

const withNamed = (draft: Draft): Draft => {
  const names = NAMES[draft.sign.topic] ?? [];
  const [named, slots] = [true, false].map((isNamed) =>
    draft.slots.filter(({ slot }) => names.includes(slot) === isNamed),
  );
  return {
    ...draft,
    named: named ?? [],
    slots: slots ?? [],
    ahead: draft.ahead ?? aheadOf(draft.sign, named ?? []),
  };
};

/** "I'm up next": nobody is ahead, where no number says otherwise. */
const withNobodyAhead = (draft: Draft): Draft => {
  const { sign, slots } = draft;
  const isInLine = sign.topic === 'haul' && sign.step === 'joined-line';
  return isInLine && !slots.some(({ slot }) => slot === 'number')
    ? { ...draft, ahead: draft.ahead ?? 0 }
    : draft;
};

interface Placed {
  drafts: readonly Draft[];
  left: readonly Slot[];
}

const takesSlot = (draft: Draft | undefined, slot: Slot): boolean =>
  accepts(draft, slot) || (slot.slot === 'ticket' && draft?.sign.topic === 'ticket');

/** A slot goes to the acts of its own clause first, then to those before it, then to those after it. */
const placed = (drafts: readonly { draft: Draft; clause: number }[], slot: Slot, at: number): number => {
  const order = drafts
    .map(({ clause }, index) => ({
      index,
      far: clause === at ? 0 : clause < at ? at - clause : clause + 100,
    }))
    .sort((a, b) => a.far - b.far);
  return order.find(({ index }) => takesSlot(drafts[index]?.draft, slot))?.index ?? -1;
};

const place = (
  acts: readonly Act[],
  clauses: readonly Element[][],
  clauseOf: ClauseOf,
  isFirst: boolean,
): Placed => {
  const free = clauses.flat().filter(({ is }) => is === 'word');
  let drafts = acts.flatMap((act) => {
    const sign = signOf(act);
    return sign === null ? [] : [{ draft: draftOf(sign, free), clause: clauseOf(act) }];
  });
  const left: Slot[] = [];
  clauses.forEach((clause, at) => {
    for (const element of clause) {
      if (element.is !== 'slot') continue;
      const { slot } = element;
      const index = placed(drafts, slot, at);
      if (index < 0) left.push(slot);
      drafts = drafts.map((one, i) =>
        i === index ? { ...one, draft: { ...one.draft, slots: [...one.draft.slots, slot] } } : one,
      );
    }
  });
  const ordered = drafts.sort((a, b) => a.clause - b.clause).map(({ draft }) => withNamed(draft));
  return { drafts: ordered.map((draft) => (isFirst ? withNobodyAhead(draft) : draft)), left };
};

const AGO_MIN = 90;

/** "Back at 5" is the end of a closure, "closed at 5" its beginning: which of them is nearer. */
const closure = (draft: Draft, text: string, hearing: Hearing): Draft => {
  const { sign } = draft;
  if (sign.topic !== 'station' || sign.open) return draft;
  const since = build(draft, text, hearing);
  const intent = since !== null && 'intents' in since ? since.intents[0] : undefined;
  const isPast =
    intent?.do === 'report-station' &&
    (intent.atMs === null || intent.atMs > hearing.sentMs - AGO_MIN * MS_PER_MINUTE);
  return isPast ? draft : { ...draft, sign: { ...sign, ahead: true } };
};

/** The draft as intents; where its numbers make no sense, without them. Null = not even so. */
const built = (said: Draft, text: string, hearing: Hearing): LikelyReading | null => {
  const draft = closure(said, text, hearing);
  const whole = build(draft, text, hearing);
  if (whole !== null && 'intents' in whole) return { intents: whole.intents, isWhole: true };
  const slots = draft.slots.filter(({ slot }) => slot !== 'number' && slot !== 'weight');
  const less = build({ ...draft, named: [], slots }, text, hearing);
  return less !== null && 'intents' in less ? { intents: less.intents, isWhole: false } : null;
};

/** Acts that say the same thing twice: counted trucks belong to who stands in the line, a second weight to its ticket. */
const withoutTwins = (acts: readonly Act[]): Act[] =>
  acts.filter(
    (act) =>
      !(act === 'line_count' && acts.includes('in_line')) &&
      !(act === 'weighed_out' && acts.includes('ticket')) &&
      !(act === 'ask_restart' && acts.includes('ask_dig')),
  );

/** Null where there is no place for one of the acts, or what the message says of it makes no sense. */
export const likelyReading = (
  acts: readonly Act[],
  text: string,
  { elements, amounts }: Parts,
  clauseOf: ClauseOf,
  hearing: Hearing,
): LikelyReading | null => {
  const wanted = withoutTwins(acts);
  if (wanted.length === 0 || wanted.some((act) => signOf(act) === null)) return null;
  const isCorrection = wanted.includes('correct');
  const aside = [
    ...(isCorrection ? denied(elements) : []),
    ...lasting(elements),
    ...(wanted.every(isOfTruck) ? others(elements) : []),
  ];
  const meant = elements.filter((element) => !aside.includes(element));
  const isMeant = (amount: Amount): boolean =>
    !aside.some(({ start, end }) => amount.start < end && start < amount.end);
  const numbers = numbersOf(acts, amounts.filter(isMeant));
  const { drafts, left } = place(wanted, withTicket(clausesOf(meant), numbers), clauseOf, isNext(elements));
  const readings = drafts.map((draft) => built(draft, text, hearing));
  const intents: Intent[] = [];
  for (const reading of readings) {
    if (reading === null) return null;
    intents.push(...reading.intents);
  }
  // How long something lasts, a truck beside, a time that is not read: there is more to it than the reading has.
  const isUnclear =
    numbers?.isClear === false || clockWordsLeft(meant) || (aside.length > 0 && !isCorrection);
  const isWhole = !isUnclear && left.length === 0 && readings.every((reading) => reading?.isWhole === true);
  return { intents, isWhole };
};
