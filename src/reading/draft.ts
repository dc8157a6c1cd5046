import type { Match } from './phrases.ts';
import { slotsOf } from './sign.ts';
import type { Element, Sign, Slot } from './sign.ts';

/** One thing said, with the names, times and numbers that belong to it. */
export interface Draft {
  sign: Sign;
  /** Slots inside the phrase, in order, then those around it. */
  named: readonly Slot[];
  slots: readonly Slot[];
  ahead: number | null;
  /** "?" stands behind it. */
  asked: boolean;
  /** The cause of a stop or breakdown, in free words. */
  free: readonly Element[];
}

const takes: Record<Sign['topic'], readonly Slot['slot'][]> = {
  haul: ['truck', 'place', 'clock', 'number', 'weight'],
  ticket: ['truck', 'place', 'clock', 'number', 'weight'],
  line: ['place', 'clock', 'number'],
  pilers: ['place', 'clock', 'number'],
  station: ['place', 'clock', 'number'],
  'turned-away': ['truck', 'place', 'person', 'clock', 'number'],
  root: ['place', 'clock', 'number', 'degrees'],
  crown: ['place', 'clock', 'number'],
  dig: ['place', 'clock', 'number'],
  acres: ['place', 'clock', 'number'],
  machine: ['clock', 'number'],
  'take-truck': ['truck', 'person', 'span'],
  withdraw: ['truck', 'ticket'],
  correct: ['truck', 'place', 'clock', 'number', 'weight', 'ticket', 'degrees'],
  acknowledge: [],
  stop: ['clock', 'number', 'place'],
  resume: ['clock', 'number'],
  drill: ['clock', 'number'],
  shift: ['clock', 'number', 'truck'],
  language: [],
  ask: ['truck', 'place', 'person', 'span', 'clock', 'number', 'ticket'],
};

const isLedNumber = (slot: Slot): boolean => slot.slot === 'number' && slot.lead !== null;

/** There may be several weights, numbers and spans ("so far this week"); of every other slot a draft takes one. */
const isFull = (draft: Draft, slot: Slot): boolean => {
  const held = [...draft.named, ...draft.slots];
  if (slot.slot === 'weight' || slot.slot === 'number' || slot.slot === 'span') return false;
  if (slot.slot === 'place') {
    return slotsOf(held, 'place').some(
      ({ fields }) =>
        fields.length > 0 === slot.fields.length > 0 || slot.fields.length + slot.stations.length === 0,
    );
  }
  if (slot.slot === 'clock') {
    return held.some((other) => (other.slot === 'clock' ? other.lead === slot.lead : isLedNumber(other)));
  }
  return held.some((other) => other.slot === slot.slot);
};

/** True where what is said still lacks such a slot. */
export const accepts = (draft: Draft | undefined, slot: Slot): boolean =>
  draft !== undefined && takes[draft.sign.topic].includes(slot.slot) && !isFull(draft, slot);

export const isDown = (sign: Sign): boolean =>
  (sign.topic === 'haul' && sign.step === 'down') || (sign.topic === 'machine' && !sign.runs);
/** Stops, breakdowns and refused loads are explained in free words. */
export const takesFree = (draft: Draft | undefined): boolean =>
  draft !== undefined &&
  (draft.sign.topic === 'stop' || draft.sign.topic === 'turned-away' || isDown(draft.sign));

/** Trucks ahead, as the phrase counts them. */
export const aheadOf = (sign: Sign, named: readonly Slot[]): number | null => {
  const said = named.find((slot) => slot.slot === 'number' || slot.slot === 'ordinal');
  const count = said === undefined ? null : Number(said.text);
  if (sign.topic === 'line') return sign.ahead ?? count;
  return sign.topic === 'haul' && sign.place && count !== null ? Math.max(0, count - 1) : null;
};

const hasSerial = (slots: readonly Slot[]): boolean =>
  slotsOf(slots, 'ticket').some(({ serial }) => serial !== null);

export const hasTruck = (slots: readonly Slot[]): boolean => slotsOf(slots, 'truck').length > 0;

/** Said twice in one breath, or in two languages, these are still one order. */
const isOnce = ({ topic }: Sign): boolean =>
  topic === 'stop' || topic === 'resume' || topic === 'acknowledge' || topic === 'drill';

const isSetting = (sign: Sign): boolean => sign.topic === 'haul' && sign.needs === 'setting';

/** "What is the wait" and "if I leave at 2" are one question. */
const isAboutLine = (sign: Sign): boolean =>
  sign.topic === 'ask' && (sign.about === 'line' || sign.about === 'leave');

/** True where the phrase only goes on with what the draft says, or the draft was but the setting of the phrase. */
export const continues = (draft: Draft, { sign, slots }: Match, inClause: boolean): boolean => {
  const { sign: before } = draft;
  if (inClause && isSetting(sign) && takes[before.topic].includes('place')) return true;
  if (isOnce(sign) && sign.topic === before.topic) return true;
  if (isAboutLine(before) && isAboutLine(sign)) return true;
  if (before.topic === 'line') return before.mine && sign.topic === 'haul' && sign.step === 'joined-line';
  if (before.topic === 'haul' && sign.topic === 'haul') {
    return before.step === sign.step || (inClause && (before.needs !== null || sign.needs !== null));
  }
  if (before.topic === 'haul' && sign.topic === 'line') return before.step === 'joined-line' && sign.mine;
  if (sign.topic !== 'ticket')
    return before.topic === 'ticket' && sign.topic === 'haul' && sign.needs !== null;
  if (before.topic === 'haul') return before.step === 'first-weighed';
  const isSecond = hasSerial(draft.named) && hasSerial(slots);
  return before.topic === 'ticket' && !isSecond;
};

/** The stronger of two phrases that say one thing. */
const strongerSign = (before: Sign, sign: Sign): Sign => {
  if (isSetting(sign)) return before;
  if (sign.topic === 'ticket' || before.topic === 'line') return sign;
  if (sign.topic === 'ask') return sign.about === 'leave' ? sign : before;
  return before.topic === 'haul' && before.needs !== null && sign.topic === 'haul' ? sign : before;
};

/** The draft with a phrase that goes on with it, the slots before that phrase, and its words. */
export const merged = (
  draft: Draft,
  match: Match,
  slots: readonly Slot[],
  words: readonly Element[],
): Draft => {
  const { sign } = match;
  return {
    ...draft,
    sign: strongerSign(draft.sign, sign),
    named: sign.topic === 'ticket' || sign.topic === 'ask' ? [...draft.named, ...match.slots] : draft.named,
    slots: [...draft.slots, ...(sign.topic === 'haul' ? match.slots : []), ...slots],
    ahead: draft.ahead ?? aheadOf(sign, match.slots),
    free: sign.topic === 'haul' && sign.tells ? [...draft.free, ...words] : draft.free,
  };
};
