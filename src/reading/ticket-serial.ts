import { atStart, either, wordSet } from './every-language.ts';
import type { SlotOf } from './sign.ts';
import type { Token } from './tokens.ts';
import { weightAt, weightsFrom, wordsAt } from './weights.ts';

const TICKET = either(({ tickets }) => tickets.ticket);
const NUMBER = either(({ tickets }) => tickets.number);
const ticketWord = atStart(`${TICKET}(?: (?:${NUMBER}|#))*(?: #)?`);
const shortNumbers = wordSet(({ tickets }) => tickets.numberInShort);

/** Serials are kept as printed: leading zeros, letters and dashes count. */
const serialShape = /^[a-z]{0,3}-?\d[\da-z]*(?:-[\da-z]+)*/i;
const MIN_DIGITS_BESIDE_LETTERS = 3;

interface Found {
  slot: SlotOf<'ticket'>;
  length: number;
}

const isSerial = (serial: string): boolean =>
  /^\d+$/.test(serial) || serial.replace(/\D/g, '').length >= MIN_DIGITS_BESIDE_LETTERS;

/** The serial that starts at this token, and how many tokens it covers. */
const serialAt = (text: string, tokens: readonly Token[], at: number, metric: boolean) => {
  const first = tokens[at];
  if (first === undefined) return null;
  const serial = serialShape.exec(text.slice(first.start))?.[0] ?? '';
  const end = first.start + serial.length;
  const covered = tokens.slice(at).findIndex((token) => token.end >= end) + 1;
  const endsWithToken = tokens[at + covered - 1]?.end === end;
  if (serial === '' || !isSerial(serial) || !endsWithToken) return null;
  const asWeight = weightAt(tokens, at, metric);
  const isLabelled = asWeight !== null && (asWeight.slot.role !== null || asWeight.length > 1);
  return isLabelled ? null : { serial, length: covered };
};

/** "ticket 48213", "boleta no. 48213", "ticket" alone. */
const namedTicket = (text: string, tokens: readonly Token[], at: number, metric: boolean): Found | null => {
  const words = ticketWord.exec(wordsAt(tokens, at))?.[0];
  if (words === undefined) return null;
  const length = words.split(' ').length;
  const isInShort = shortNumbers.has(tokens[at + length - 1]?.text ?? '');
  const start = tokens[at + length]?.kind === 'break' && isInShort ? 1 : 0;
  const serial = serialAt(text, tokens, at + length + start, metric);
  const used = serial === null ? length : length + start + serial.length;
  return { slot: { slot: 'ticket', serial: serial?.serial ?? null, said: words }, length: used };
};

const isLong = (token: Token | undefined): boolean => /^\d{5,}$/.test(token?.text ?? '');

/** "48213 79840 29320" or "48213 25.26 tons": a serial of five digits or more with what was weighed behind it. */
const bareTicket = (tokens: readonly Token[], at: number, metric: boolean): Found | null => {
  const token = tokens[at];
  if (token?.kind !== 'number' || !isLong(token)) return null;
  // The second long number in a row is a weight.
  if (isLong(tokens.slice(0, at).findLast(({ kind }) => kind !== 'break'))) return null;
  if (weightAt(tokens, at, metric)?.slot.role != null) return null;
  const weights = weightsFrom(tokens, at + 1, metric);
  const [first] = weights;
  if (weights.length < 2 && first?.role !== 'net' && first?.tons !== true) return null;
  return { slot: { slot: 'ticket', serial: token.text, said: token.text }, length: 1 };
};

export const ticketAt = (text: string, tokens: readonly Token[], at: number, metric: boolean): Found | null =>
  namedTicket(text, tokens, at, metric) ?? bareTicket(tokens, at, metric);
