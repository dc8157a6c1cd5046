import type { Correction } from '../core/book/facts.ts';
import type { Intent, IntentTarget } from '../core/intent.ts';
import type { Roster, TruckId } from '../core/roster.ts';
import { trucksNumbered } from './truck-numbers.ts';
import { holdOf } from './causes.ts';
import { wordsOfElements } from './haul.ts';
import type { Built } from './hearing.ts';
import { told } from './hearing.ts';
import type { Resolved } from './resolve.ts';
import { slotsOf } from './sign.ts';
import type { Sign } from './sign.ts';

const serialOf = ({ slots }: Resolved): string | null => slotsOf(slots, 'ticket')[0]?.serial ?? null;

const targetOf = (resolved: Resolved, truck: TruckId | null): IntentTarget => {
  const serial = serialOf(resolved);
  return serial === null ? { by: 'latest', truck } : { by: 'serial', serial };
};

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

/** "That was truck 4 not 3": 4 is set on the newest entry of truck 3. */
export const buildCorrection = (
  sign: Extract<Sign, { topic: 'correct' }>,
  resolved: Resolved,
  roster: Roster,
): Built => {
  const [number] = slotsOf(resolved.draft.named, 'number').filter(({ lead }) => lead === null);
  const wrongOne = number === undefined ? [] : trucksNumbered(number.text, roster);
  const trucks = [...resolved.trucks, ...wrongOne];
  const [right = null, wrong = null] = sign.reversed ? trucks.toReversed() : trucks;
  const set = correctionOf(resolved, right);
  const isUnknown = number !== undefined && wrongOne.length === 0;
  const isEmpty = Object.values(set).every((value) => value === null);
  return isEmpty || isUnknown ? null : told({ do: 'correct', target: targetOf(resolved, wrong), set });
};

export const buildStop = ({ draft, atMs }: Resolved, text: string): Built => {
  const words = wordsOfElements(draft.free, text);
  const holds = draft.free.flatMap((element) => (element.is === 'word' ? (holdOf(element.text) ?? []) : []));
  return told({ do: 'order-stop', hold: holds[0] ?? 'other', stopAtMs: atMs, words });
};

export const buildDig = ({ field, atMs }: Resolved): Built =>
  field === null ? null : told({ do: 'dig-field', field, atMs });

export const buildTakeTruck = ({ trucks, person }: Resolved): Built => {
  const [truck] = trucks;
  return truck === undefined ? null : told({ do: 'take-truck', person, truck });
};

export const acknowledged: Intent = { do: 'acknowledge' };
