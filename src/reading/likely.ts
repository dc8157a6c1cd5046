/** A set of acts that the ranker found, with the names, times and numbers of the message: what it would mean. */
import type { Intent } from '../core/intent.ts';
import { MS_PER_MINUTE } from '../core/units.ts';
import type { EpochMs } from '../core/units.ts';
import { isOfTruck, signOf } from './acts.ts';
import type { Act } from './acts.ts';
import type { Amount } from './amounts.ts';
import { FRESH_MIN } from './assumptions.ts';
import { build } from './build.ts';
import { accepts, aheadOf } from './draft.ts';
import type { Draft } from './draft.ts';
import type { Hearing } from './hearing.ts';
import type { Element, Sign, Slot } from './sign.ts';
import { withReasons } from './reasons.ts';
import { clockWordsLeft, denied, isNext, measured, others, replaced } from './said-of.ts';
import { asPlaceInLine, asTruck } from './bare-numbers.ts';
import { withDegrees } from './degrees-said.ts';
import type { TicketNumbers } from './ticket-numbers.ts';
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

const isNumber = ({ slot }: Slot): boolean => slot === 'number';

/** The numbers of a ticket have been told apart before: another one is none of it. */
const takesSlot = (draft: Draft | undefined, slot: Slot): boolean =>
  draft?.sign.topic === 'ticket'
    ? slot.slot === 'ticket' || (accepts(draft, slot) && !isNumber(slot))
    : accepts(draft, slot);

/** A place is rather where the truck is than where the load of a ticket is from. */
const isLastFor = (draft: Draft, slot: Slot): boolean =>
  slot.slot === 'place' && draft.sign.topic === 'ticket';

/** A slot goes to the acts of its own clause first, then to those before it, then to those after it. */
const placed = (drafts: readonly { draft: Draft; clause: number }[], slot: Slot, at: number): number => {
  const order = drafts
    .map(({ draft, clause }, index) => ({
      index,
      far:
        (clause === at ? 0 : clause < at ? at - clause : clause + 100) + (isLastFor(draft, slot) ? 0.5 : 0),
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

const without = (draft: Draft, sorts: readonly Slot['slot'][]): Draft => ({
  ...draft,
  named: [],
  slots: draft.slots.filter(({ slot }) => !sorts.includes(slot)),
});

/** With only one of the numbers: "three rigs ahead and one of them is asleep". */
const withOneNumber = (draft: Draft): Draft => {
  const first = draft.slots.find(isNumber);
  return { ...draft, slots: draft.slots.filter((slot) => !isNumber(slot) || slot === first) };
};

/** The draft as intents; where its numbers make no sense, with fewer of them. Null = not even so. */
const built = (said: Draft, text: string, hearing: Hearing): LikelyReading | null => {
  const draft = closure(said, text, hearing);
  const tries = [
    draft,
    withOneNumber(draft),
    without(draft, ['number']),
    without(draft, ['number', 'weight']),
  ];
  for (const one of tries) {
    const found = build(one, text, hearing);
    if (found !== null && 'intents' in found) return { intents: found.intents, isWhole: one === draft };
  }
  return null;
};

/** Acts that say the same thing twice: counted trucks belong to who stands in the line, a second weight to its ticket. */
const withoutTwins = (acts: readonly Act[]): Act[] =>
  acts.filter(
    (act) =>
      !(act === 'line_count' && acts.includes('in_line')) &&
      !(act === 'weighed_out' && acts.includes('ticket')) &&
      !(act === 'ask_restart' && acts.includes('ask_dig')),
  );

const OF_ONE_TRUCK = new Set<Act>(['take_truck', 'ask_where', 'ask_ticket']);

/** What a number that stands alone is, by what is done: a place in the line, or a truck. */
const bareNumbersOf = (
  acts: readonly Act[],
  elements: readonly Element[],
  hearing: Hearing,
): readonly Element[] => {
  if (acts.includes('in_line') || acts.includes('line_count')) return asPlaceInLine(elements);
  return acts.some((act) => isOfTruck(act) || OF_ONE_TRUCK.has(act))
    ? asTruck(acts, elements, hearing)
    : elements;
};

const isFresh = (intent: Intent, sentMs: EpochMs): boolean =>
  intent.do !== 'report' || intent.atMs === null || intent.atMs >= sentMs - FRESH_MIN * MS_PER_MINUTE;

/** More ways to tell the numbers of a ticket apart than these are not looked at. */
const MOST_WAYS = 2;

/**
 * What the acts would mean: several readings where the numbers of a ticket can be told apart in several ways, none where
 * there is no place for one of the acts, or what the message says of it makes no sense.
 */
export const likelyReadings = (
  acts: readonly Act[],
  text: string,
  { elements, amounts }: Parts,
  clauseOf: ClauseOf,
  hearing: Hearing,
): LikelyReading[] => {
  const wanted = withoutTwins(acts);
  if (wanted.length === 0 || wanted.some((act) => signOf(act) === null)) return [];
  const isCorrection = wanted.includes('correct');
  const aside = [
    ...(isCorrection ? [...denied(elements), ...replaced(elements)] : []),
    ...measured(elements),
    ...(wanted.every(isOfTruck) ? others(elements) : []),
  ];
  const meant = bareNumbersOf(
    wanted,
    elements.filter((element) => !aside.includes(element)),
    hearing,
  );
  const isMeant = (amount: Amount): boolean =>
    !aside.some(({ start, end }) => amount.start < end && start < amount.end);
  const counted = amounts.filter(isMeant);
  const said = wanted.includes('root_temp') ? withDegrees(meant, counted) : meant;
  const ways: (TicketNumbers | null)[] = numbersOf(acts, counted).slice(0, MOST_WAYS);
  // How long something lasts, a truck beside, a time that is not read: there is more to it than the reading has.
  const isClear = ways.length < 2 && !clockWordsLeft(meant) && (aside.length === 0 || isCorrection);
  return (ways.length === 0 ? [null] : ways).flatMap((numbers) => {
    const clauses = withTicket(clausesOf(said), numbers);
    const { drafts, left } = place(wanted, clauses, clauseOf, isNext(elements));
    const readings = drafts.map((draft) => built(draft, text, hearing));
    if (readings.includes(null)) return [];
    const intents = readings.flatMap((reading) => reading?.intents ?? []);
    const isWhole =
      isClear &&
      left.length === 0 &&
      readings.every((reading) => reading?.isWhole === true) &&
      intents.every((intent) => isFresh(intent, hearing.sentMs));
    return [{ intents: withReasons(intents), isWhole }];
  });
};
