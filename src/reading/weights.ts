import { lbFromKg, lbFromShortTon, lbFromTonne } from '../core/units.ts';
import type { Lb } from '../core/units.ts';
import { atStart, either, listed } from './every-language.ts';
import { numeralOf } from './numbers.ts';
import type { Role, SlotOf, Unit } from './sign.ts';
import type { Token } from './tokens.ts';

/**
 * A bare "tons" or "t" means the operation's own tons: short ones unless it is metric.
 * "Toneladas" alone is metric to most who say it, but on a farm that counts short tons it is taken for those.
 */
const units: readonly (readonly [RegExp, Unit])[] = (
  ['tonnes', 'short tons', 'tons', 'lb', 'kg'] as const
).map((unit) => {
  const shape = either(({ tickets }) => tickets.units[unit]);
  return [atStart(unit === 'tons' ? `${shape}|t` : shape), unit];
});
const AFTER_ROLE = either(({ tickets }) => tickets.afterRole);
const roles: readonly (readonly [RegExp, Role])[] = (['gross', 'tare', 'net'] as const).map((role) => [
  atStart(`${either(({ tickets }) => tickets.roles[role])}(?: ${AFTER_ROLE})?`),
  role,
]);

interface Found<T> {
  value: T;
  length: number;
}

const firstOf = <T>(table: readonly (readonly [RegExp, T])[], words: string): Found<T> | null => {
  for (const [shape, value] of table) {
    const match = shape.exec(words);
    if (match) return { value, length: match[0].split(' ').length };
  }
  return null;
};

/** Plain numbers from here on are pounds (or kg), up to `MAX_BARE_TONS` tons; between the two nobody can tell. */
const MIN_BARE_LB = 1000;
const MAX_BARE_TONS = 200;

/** Pounds, rounded to whole ones as scales print them; null where the number fits no unit. */
export const lbOf = (text: string, unit: Unit | null, metric: boolean): Lb | null => {
  const { whole, decimal } = numeralOf(text);
  const tons = metric ? lbFromTonne(decimal) : lbFromShortTon(decimal);
  switch (unit) {
    case 'lb':
      return Math.round(whole ?? decimal);
    case 'kg':
      return Math.round(lbFromKg(whole ?? decimal));
    case 'tonnes':
      return Math.round(lbFromTonne(decimal));
    case 'short tons':
      return Math.round(lbFromShortTon(decimal));
    case 'tons':
      return Math.round(tons);
    case null:
      if (whole !== null && whole >= MIN_BARE_LB) return Math.round(metric ? lbFromKg(whole) : whole);
      return decimal < MAX_BARE_TONS ? Math.round(tons) : null;
  }
};

export const isTons = (text: string, unit: Unit | null): boolean =>
  unit === null ? (numeralOf(text).whole ?? 0) < MIN_BARE_LB : unit !== 'lb' && unit !== 'kg';

interface Amount {
  text: string;
  unit: Unit | null;
  length: number;
}

const amountAt = (tokens: readonly Token[], at: number): Amount | null => {
  const [number, glued] = [tokens[at], tokens[at + 1]];
  if (number?.kind !== 'number') return null;
  // "80k" is 80,000.
  if (glued?.text === 'k' && glued.glued) return { text: `${number.text}000`, unit: null, length: 2 };
  const unit = firstOf(units, wordsAt(tokens, at + 1));
  return { text: number.text, unit: unit?.value ?? null, length: 1 + (unit?.length ?? 0) };
};

/** Up to 10 tokens as one line of words, to match shapes against. */
export const wordsAt = (tokens: readonly Token[], at: number): string =>
  tokens
    .slice(at, at + 10)
    .map(({ text }) => text)
    .join(' ');

const between = new Set(['=', ...listed(({ tickets }) => tickets.between)]);

const skipBetween = (tokens: readonly Token[], at: number): number =>
  between.has(tokens[at]?.text ?? '') ? skipBetween(tokens, at + 1) : at;

interface Weighed {
  slot: SlotOf<'weight'>;
  length: number;
}

const weightSlot = (amount: Amount, role: Role | null, metric: boolean): SlotOf<'weight'> | null => {
  const lb = lbOf(amount.text, amount.unit, metric);
  return lb === null
    ? null
    : { slot: 'weight', role, lb, tons: isTons(amount.text, amount.unit), said: amount.text };
};

/** "gross 79840": the role, then the amount. */
const labelledBefore = (tokens: readonly Token[], at: number, metric: boolean): Weighed | null => {
  const role = firstOf(roles, wordsAt(tokens, at));
  if (role === null) return null;
  const start = skipBetween(tokens, at + role.length);
  const amount = amountAt(tokens, start);
  const slot = amount === null ? null : weightSlot(amount, role.value, metric);
  return slot === null || amount === null ? null : { slot, length: start + amount.length - at };
};

/** True where every amount from here on has its role behind it: "79840 gross 29320 tare". */
const isAmountFirst = (tokens: readonly Token[], at: number): boolean => {
  const role = firstOf(roles, wordsAt(tokens, at));
  if (role === null) return false;
  const start = skipBetween(tokens, at + role.length);
  const next = amountAt(tokens, start);
  return next === null || isAmountFirst(tokens, start + next.length);
};

const roleAfter = (tokens: readonly Token[], at: number): Found<Role> | null =>
  isAmountFirst(tokens, at) ? firstOf(roles, wordsAt(tokens, at)) : null;

/** No beet truck, full or empty, weighs less; smaller bare numbers are counts or clocks. */
export const MIN_WEIGHT_LB = 10_000;

/** A weight, told from other numbers by its unit, by "gross", "tare", "net" beside it, or by its size. */
export const weightAt = (tokens: readonly Token[], at: number, metric: boolean): Weighed | null => {
  const labelled = labelledBefore(tokens, at, metric);
  const amount = labelled === null ? amountAt(tokens, at) : null;
  if (amount === null) return labelled;
  const role = roleAfter(tokens, at + amount.length);
  const large =
    /^\d{2,3}[,.]?\d{3}$/.test(amount.text) && (numeralOf(amount.text).whole ?? 0) >= MIN_WEIGHT_LB;
  if (amount.unit === null && role === null && !large) return null;
  const slot = weightSlot(amount, role?.value ?? null, metric);
  return slot === null ? null : { slot, length: amount.length + (role?.length ?? 0) };
};

const isBreak = (token: Token | undefined): boolean => token?.kind === 'break';

/** The weights that follow one another from `at` on, breaks between them allowed. */
export const weightsFrom = (tokens: readonly Token[], at: number, metric: boolean): SlotOf<'weight'>[] => {
  const start = isBreak(tokens[at]) ? at + 1 : at;
  const found = weightAt(tokens, start, metric);
  return found === null ? [] : [found.slot, ...weightsFrom(tokens, start + found.length, metric)];
};
