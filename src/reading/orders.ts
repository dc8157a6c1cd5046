import type { Correction, Counted } from '../core/book/facts.ts';
import type { Intent, IntentTarget } from '../core/intent.ts';
import type { Roster, TruckId } from '../core/roster.ts';
import { trucksNumbered } from './truck-numbers.ts';
import { holdOf } from './causes.ts';
import { wordsOfElements } from './haul.ts';
import type { Built, Hearing } from './hearing.ts';
import { told } from './hearing.ts';
import type { Resolved } from './resolve.ts';
import { slotsOf } from './sign.ts';
import { fahrenheitOf } from './degrees.ts';
import { tokenize } from './tokens.ts';
import { kindWords, wordSet } from './every-language.ts';
import type { Sign, Slot } from './sign.ts';

const KINDS_OF: readonly (readonly [Counted, ReadonlySet<string>])[] = [
  ['pilers', kindWords(({ kinds }) => kinds.piler)],
  ['acres', kindWords(({ kinds }) => kinds.acres)],
  ['root', wordSet(({ talk }) => talk.root)],
  ['line', wordSet(({ talk }) => talk.ahead)],
];
/** Loads and tons are reckoned, and have no number of their own to set. */
const RECKONED = kindWords(
  ({ kinds }) => kinds.loads,
  ({ kinds }) => kinds.tons,
);

/** What a corrected number counts, by the words around it; undefined = nothing that an entry holds. */
const countedIn = (text: string): Counted | null | undefined => {
  const said = tokenize(text).map((token) => token.text);
  if (said.some((word) => RECKONED.has(word))) return undefined;
  return KINDS_OF.find(([, words]) => said.some((word) => words.has(word)))?.[0] ?? null;
};

/** "The ticket" alone has none. */
const serialIn = (slots: readonly Slot[]): string | null =>
  slotsOf(slots, 'ticket').find(({ serial }) => serial !== null)?.serial ?? null;
const serialOf = ({ slots }: Resolved): string | null => serialIn(slots);

const targetOf = (resolved: Resolved, truck: TruckId | null): IntentTarget => {
  const serial = serialOf(resolved);
  return serial === null ? { by: 'latest', truck } : { by: 'serial', serial };
};

/** Nobody counts more of anything here, and no root is warmer. Grade: chosen. */
const MOST_COUNTED = 200;

export const buildWithdrawal = (resolved: Resolved): Built => {
  // "Delete ticket" without its serial may mean any of them.
  const isAnyTicket = slotsOf(resolved.slots, 'ticket').length > 0 && serialOf(resolved) === null;
  return isAnyTicket
    ? null
    : told({ do: 'withdraw', target: targetOf(resolved, resolved.trucks[0] ?? null) });
};

const correctionOf = (resolved: Resolved, truck: TruckId | null): Correction => {
  const weights = slotsOf(resolved.slots, 'weight');
  const lbOf = (role: 'gross' | 'tare' | 'net') => weights.find((weight) => weight.role === role)?.lb ?? null;
  const net = weights.find(({ role, tons }) => role === null && tons)?.lb ?? null;
  const { field, atMs } = resolved;
  return { truck, field, atMs, grossLb: lbOf('gross'), tareLb: lbOf('tare'), netLb: lbOf('net') ?? net };
};

type Count = NonNullable<Correction['count']>;

/** "6 ahead, not 16", "it's 52": one number of which the words say what it counts, or nothing. */
const countOf = (resolved: Resolved, text: string, roster: Roster): Count | null => {
  const [degrees] = slotsOf(resolved.slots, 'degrees');
  if (degrees !== undefined)
    return { value: fahrenheitOf(degrees.text, degrees.unit, roster.units === 'metric'), of: 'root' };
  const [number, ...others] = resolved.numbers;
  const of = countedIn(text);
  const value = Number(number?.replace(',', '.') ?? NaN);
  return others.length > 0 || of === undefined || !(value >= 0 && value < MOST_COUNTED)
    ? null
    : { value, of };
};

const isEmpty = (set: Correction): boolean => Object.values(set).every((value) => value === null);

/** Where nothing else is set, a serial beside the phrase is the right one, and so is a number. */
const withRest = (set: Correction, resolved: Resolved, text: string, roster: Roster): Correction => {
  const serial = serialIn(resolved.draft.slots);
  if (serial !== null && isEmpty(set)) return { ...set, serial };
  const isBeside = isEmpty({ ...set, field: null });
  const count = isBeside ? countOf(resolved, text, roster) : null;
  return count === null ? set : { ...set, count };
};

/** "That was truck 4 not 3": 4 is set on the newest entry of truck 3. */
export const buildCorrection = (
  sign: Extract<Sign, { topic: 'correct' }>,
  resolved: Resolved,
  text: string,
  roster: Roster,
): Built => {
  const [number] = slotsOf(resolved.draft.named, 'number').filter(({ lead }) => lead === null);
  const wrongOne = number === undefined ? [] : trucksNumbered(number.text, roster);
  const trucks = [...resolved.trucks, ...wrongOne];
  const [right = null, wrong = null] = sign.reversed ? trucks.toReversed() : trucks;
  const set = withRest(correctionOf(resolved, right), resolved, text, roster);
  const isUnknown = number !== undefined && wrongOne.length === 0;
  if (isEmpty(set) || isUnknown) return null;
  const target =
    set.serial === undefined ? targetOf(resolved, wrong) : ({ by: 'latest', truck: wrong } as const);
  return told({ do: 'correct', target, set });
};

export const buildStop = ({ draft, atMs, untilMs }: Resolved, text: string): Built => {
  const words = wordsOfElements(draft.free, text);
  const holds = draft.free.flatMap((element) => (element.is === 'word' ? (holdOf(element.text) ?? []) : []));
  const end = untilMs === null ? {} : { untilMs };
  return told({ do: 'order-stop', hold: holds[0] ?? 'other', stopAtMs: atMs, ...end, words });
};

export const buildDig = ({ field, atMs }: Resolved): Built =>
  field === null ? null : told({ do: 'dig-field', field, atMs });

export const buildTakeTruck = ({ trucks, person }: Resolved): Built => {
  const [truck] = trucks;
  return truck === undefined ? null : told({ do: 'take-truck', person, truck });
};

/** On or off shift, and since when; who comes on with another truck than his own has taken it. */
export const buildShift = (
  { off, noticesWhenOff }: Extract<Sign, { topic: 'shift' }>,
  { trucks, atMs, numbers }: Resolved,
  { speaker }: Hearing,
): Built => {
  const [truck, ...others] = trucks;
  if (numbers.length > 0 || others.length > 0) return null;
  const shift: Intent = { do: 'tell-shift', off, noticesWhenOff, ...(atMs === null ? {} : { atMs }) };
  const takes = off === false && truck !== undefined && truck !== speaker?.truck;
  return takes ? told(shift, { do: 'take-truck', person: null, truck }) : told(shift);
};

export const acknowledged: Intent = { do: 'acknowledge' };
