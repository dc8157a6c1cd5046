import { accepts, aheadOf, continues, hasTruck, isDown, merged, takesFree } from './draft.ts';
import type { Draft } from './draft.ts';
import { isCause } from './causes.ts';
import { wordSet } from './every-language.ts';
import { isBlocker, isGreeting, isLittle } from './little-words.ts';
import { longestPhrase } from './phrases.ts';
import type { Match, Phrase } from './phrases.ts';
import type { Element, Slot, SlotOf } from './sign.ts';

/** A message as drafts. Its fit tells how much of it was understood. */
export interface Composition {
  drafts: readonly Draft[];
  /** Words and slots that belong to nothing. */
  left: number;
  /** Elements that mean something here. */
  known: number;
  /** Words such as "the", outside phrases. */
  little: number;
  /** A denial, a plan, a question or another person's doing stands in it. */
  blocked: boolean;
}

interface State extends Composition {
  /** Slots of a clause whose phrase has not come yet. */
  pending: readonly Slot[];
  /** A person named just before a phrase may be its subject. */
  subject: SlotOf<'person'> | null;
  /** Cause words said before the stop or breakdown that they explain. */
  loose: readonly Element[];
  inClause: boolean;
}

const withLast = (state: State, change: (draft: Draft) => Draft): State => {
  const last = state.drafts.at(-1);
  return last === undefined ? state : { ...state, drafts: [...state.drafts.slice(0, -1), change(last)] };
};

const attach = (state: State, slot: Slot): State =>
  withLast(state, (draft) => ({ ...draft, slots: [...draft.slots, slot] }));

/** Slots of a clause without a phrase belong to what was said before, where they fit. */
const flush = (state: State): State =>
  state.pending.reduce<State>(
    (now, slot) =>
      accepts(now.drafts.at(-1), slot) ? attach(now, slot) : { ...now, pending: [...now.pending, slot] },
    { ...state, pending: [] },
  );

const newDraft = (state: State, match: Match, words: readonly Element[]): Draft => {
  const { sign } = match;
  const subject =
    state.subject !== null && sign.topic === 'haul' && !hasTruck(state.pending) ? [state.subject] : [];
  const own = sign.topic === 'haul' && sign.tells ? words : [];
  return {
    sign,
    named: match.slots,
    slots: [...state.pending, ...subject],
    ahead: aheadOf(sign, match.slots),
    asked: false,
    free:
      sign.topic === 'stop' || sign.topic === 'turned-away' || isDown(sign) ? [...state.loose, ...own] : [],
  };
};

const withSign = (state: State, match: Match, words: readonly Element[]): State => {
  const last = state.drafts.at(-1);
  const isOther = hasTruck([...state.pending, ...match.slots]) && hasTruck(last?.slots ?? []);
  const goesOn =
    last !== undefined && state.subject === null && !isOther && continues(last, match, state.inClause);
  const after = goesOn
    ? withLast(state, (draft) => merged(draft, match, state.pending, words))
    : { ...state, drafts: [...state.drafts, newDraft(state, match, words)] };
  const loose = !goesOn && takesFree(after.drafts.at(-1)) ? [] : state.loose;
  return { ...after, loose, pending: [], subject: null, inClause: true, known: state.known + match.weight };
};

const withSlot = (state: State, slot: Slot): State => {
  const known = { ...state, known: state.known + 1 };
  const last = state.drafts.at(-1);
  if (slot.slot === 'person') {
    return state.inClause && accepts(last, slot) ? attach(known, slot) : { ...state, subject: slot };
  }
  return state.inClause && accepts(last, slot)
    ? attach(known, slot)
    : { ...known, pending: [...state.pending, slot] };
};

/** "Stop digging if it gets hot" is no order yet. */
const conditions = wordSet(({ talk }) => talk.conditions);
/** "No, loaded" answers before it reports. */
const negations = wordSet(({ talk }) => talk.no);

const withWord = (state: State, element: Element, text: string, next: Element | undefined): State => {
  const last = state.drafts.at(-1);
  if (isLittle(text) && !takesFree(last)) return { ...state, little: state.little + 1 };
  const isOpening = isGreeting(text) && !isBlocker(text) && state.drafts.length + state.known === 0;
  if (isOpening) return { ...state, little: state.little + 1 };
  const isAnswer = negations.has(text) && next?.is === 'break' && state.drafts.length === 0;
  if (isAnswer) return state;
  if (last?.sign.topic === 'stop' && conditions.has(text)) return { ...state, blocked: true };
  if (takesFree(last)) {
    return withLast(state, (draft) => ({ ...draft, free: [...draft.free, element] }));
  }
  if (isCause(text)) return { ...state, loose: [...state.loose, element] };
  return isBlocker(text) ? { ...state, blocked: true } : { ...state, left: state.left + 1 };
};

const withElement = (state: State, element: Element, next: Element | undefined): State => {
  switch (element.is) {
    case 'break':
      return { ...flush(state), inClause: false, subject: null };
    case 'question':
      return {
        ...withLast(flush(state), (draft) => ({ ...draft, asked: true })),
        inClause: false,
        subject: null,
      };
    case 'slot':
      return withSlot(state, element.slot);
    case 'word':
      return withWord(state, element, element.text, next);
  }
};

const empty: State = {
  drafts: [],
  left: 0,
  known: 0,
  little: 0,
  blocked: false,
  pending: [],
  subject: null,
  loose: [],
  inClause: false,
};

/** "Today" where nobody asked for a span says nothing. */
const counts = (slot: Slot): boolean => slot.slot !== 'span' || slot.span !== 'today';

export const compose = (list: readonly Phrase[], elements: readonly Element[]): Composition => {
  let state = empty;
  let at = 0;
  for (let element = elements[at]; element !== undefined; element = elements[at]) {
    const match = longestPhrase(list, elements, at);
    const end = match?.end ?? at + 1;
    state =
      match === null
        ? withElement(state, element, elements[end])
        : withSign(state, match, elements.slice(at, end));
    at = end;
  }
  const { drafts, left, known, little, blocked, pending, loose } = flush(state);
  return { drafts, left: left + pending.filter(counts).length + loose.length, known, little, blocked };
};
