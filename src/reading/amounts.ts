/** The numbers of a message as scale tickets have them: "79,840", "77.9k", "seventy seven six ten", "25.26 tons". */
import { atStart, either, wordSet } from './every-language.ts';
import type { Token } from './tokens.ts';
import type { LanguageWords } from './words/language-words.ts';

export type TicketRole = 'gross' | 'tare' | 'net' | 'serial';

export interface Amount {
  /** As a number: 79840, 77.9, 48213. */
  value: number;
  unit: 'lb' | 'kg' | 'tons' | 'tonnes' | 'thousand' | null;
  /** What the words beside it call it. */
  label: TicketRole | null;
  /** Digits alone, as serials are written; null = written otherwise. */
  digits: string | null;
  /** With a comma or point: a weight, hardly a serial. */
  isGrouped: boolean;
  /** In the text. */
  start: number;
  end: number;
}

const ROLES: readonly TicketRole[] = ['gross', 'tare', 'net', 'serial'];
const labels = ROLES.map(
  (role) => [role, new RegExp(`^${either(({ tickets }) => tickets.labels[role])}$`)] as const,
);
const units = (
  [
    ['tonnes', ({ tickets }: LanguageWords) => tickets.units.tonnes],
    ['tons', ({ tickets }: LanguageWords) => tickets.units.tons],
    ['lb', ({ tickets }: LanguageWords) => tickets.units.lb],
    ['kg', ({ tickets }: LanguageWords) => tickets.units.kg],
    ['thousand', ({ tickets }: LanguageWords) => tickets.thousands],
  ] as const
).map(([unit, pick]) => [unit, atStart(either(pick))] as const);

/** "79,840" and "79.840" are thousands, "78,7" and "25.26" fractions. */
const valueOf = (text: string): number => {
  const thousands = /^\d{1,3}(?:[.,]\d{3})+$/.test(text);
  return Number(thousands ? text.replace(/[.,]/g, '') : text.replace(',', '.'));
};

const isNumber = (token: Token | undefined): token is Token & { kind: 'number' } => token?.kind === 'number';
const isBetween = (value: number, min: number, max: number): boolean => value >= min && value <= max;

interface Spoken {
  value: number;
  /** Null = it is a fraction. */
  digits: string | null;
  length: number;
}

const whole = (value: number, length: number): Spoken => ({ value, digits: String(value), length });

const POINT = new RegExp(`^${either(({ tickets }) => tickets.point)}$`);
const PARTS = [
  [0.5, atStart(either(({ clock }) => clock.andHalf))],
  [0.25, atStart(either(({ tickets }) => tickets.andQuarter))],
  [0.75, atStart(either(({ tickets }) => tickets.andThreeQuarters))],
] as const;

/** "And a half", "y cuarto": what is added, and how many words it takes. */
const partAt = (tokens: readonly Token[], at: number): { part: number; length: number } | null => {
  const words = wordsFrom(tokens, at);
  const found = PARTS.map(([part, shape]) => ({ part, said: shape.exec(words)?.[0] })).find(
    ({ said }) => said !== undefined,
  );
  return found?.said === undefined ? null : { part: found.part, length: found.said.split(' ').length };
};

/** "Twenty five point four", "24 and a half". */
const fractionAt = (tokens: readonly Token[], at: number): Spoken | null => {
  const [first, second, third] = [tokens[at], tokens[at + 1], tokens[at + 2]];
  if (!isNumber(first) || !/^\d+$/.test(first.text)) return null;
  if (POINT.test(second?.text ?? '') && isNumber(third) && /^\d+$/.test(third.text))
    return { value: Number(`${first.text}.${third.text}`), digits: null, length: 3 };
  const more = partAt(tokens, at + 1);
  return more === null
    ? null
    : { value: Number(first.text) + more.part, digits: null, length: 1 + more.length };
};

const MOST_DIGITS = 5;
const SPOKEN_ZERO = new RegExp(`^${either(({ tickets }) => tickets.spokenZero)}$`);

/** "Forty eight four oh two": a zero that is said as a letter stands only within a number. */
const isPiece = (token: Token | undefined, before: string): boolean =>
  isNumber(token) || (before !== '' && SPOKEN_ZERO.test(token?.text ?? ''));

/** Said or typed in pieces: "seventy seven six ten", "48 213", "ocho cero nueve cuatro cero", and "80 4" for 80.4. */
const piecesAt = (tokens: readonly Token[], at: number): Spoken | null => {
  let digits = '';
  let next = at;
  for (let token = tokens[next]; token !== undefined && isPiece(token, digits); token = tokens[next]) {
    const joined = digits + (isNumber(token) ? token.text : '0');
    if (!/^\d{1,5}$/.test(joined) || token.text.length > 3) break;
    [digits, next] = [joined, next + 1];
  }
  const length = next - at;
  if (length < 2) return null;
  if (digits.length === MOST_DIGITS) return whole(Number(digits), length);
  const isShort = length === 2 && /^[2-9]\d\d$/.test(digits) && tokens[at]?.text.length === 2;
  return isShort ? { value: Number(digits) / 10, digits: null, length } : null;
};

const THOUSAND = new RegExp(`^${either(({ tickets }) => tickets.thousandWord)}$`);

const HUNDREDS = new RegExp(`^${either(({ tickets }) => tickets.hundreds)}$`);

/**
 * "28 mil 900": the word for a thousand has become a number by now, with what is said behind it. "80 mil 6" is 80,600: no
 * scale prints single pounds.
 */
const thousandsAt = (tokens: readonly Token[], at: number): Spoken | null => {
  const [first, second, third] = [tokens[at], tokens[at + 1], tokens[at + 2]];
  if (!isNumber(first) || second === undefined || !/^\d\d\d?$/.test(first.text)) return null;
  const isWord = THOUSAND.test(second.text);
  const isWritten = isNumber(second) && second.end - second.start === second.text.length;
  const rest = isWord ? 0 : isNumber(second) ? Number(second.text) - 1000 : -1;
  if (isWritten || rest < 0 || rest > 999) return null;
  const isMore = rest === 0 && isNumber(third) && /^\d{1,3}$/.test(third.text);
  const over = isMore ? Number(third.text) : rest;
  const isHundreds = over < 10;
  const length = isMore ? 3 : 2;
  const hundredWord = isHundreds && HUNDREDS.test(tokens[at + length]?.text ?? '') ? 1 : 0;
  return whole(Number(first.text) * 1000 + (isHundreds ? over * 100 : over), length + hundredWord);
};

const wordsFrom = (tokens: readonly Token[], at: number): string =>
  tokens
    .slice(at, at + 4)
    .map(({ text }) => text)
    .join(' ');

const labelOf = (text: string | undefined): TicketRole | null =>
  labels.find(([, shape]) => shape.test(text ?? ''))?.[0] ?? null;

/** Words that a label may be away from its number: "the gross came to 82,060". */
const REACH = 3;

/** `taken`: up to here the labels belong to other numbers. */
const labelBefore = (tokens: readonly Token[], at: number, taken: number): TicketRole | null => {
  for (let before = at - 1; before >= Math.max(taken, at - REACH); before -= 1) {
    if (tokens[before]?.kind === 'number') return null;
    const label = labelOf(tokens[before]?.text);
    if (label !== null) return label;
  }
  return null;
};

const OF = wordSet(({ tickets }) => tickets.between);

interface LabelAfter {
  label: TicketRole;
  /** Behind the label. */
  end: number;
}

/** "79840 gross", "79840 de bruto": where no number follows that the word belongs to. */
const labelAfter = (tokens: readonly Token[], at: number): LabelAfter | null => {
  const isOf = OF.has(tokens[at]?.text ?? '');
  const label = labelOf(tokens[at + (isOf ? 1 : 0)]?.text);
  if (label === null) return null;
  return isOf || tokens[at + 1]?.kind !== 'number' ? { label, end: at + (isOf ? 2 : 1) } : null;
};

export const amountsIn = (tokens: readonly Token[]): Amount[] => {
  const found: Amount[] = [];
  let taken = 0;
  for (let at = 0; at < tokens.length;) {
    const token = tokens[at];
    if (token?.kind !== 'number') {
      at += 1;
      continue;
    }
    const spoken = fractionAt(tokens, at) ?? thousandsAt(tokens, at) ?? piecesAt(tokens, at);
    const after = at + (spoken?.length ?? 1);
    const unit = units.find(([, shape]) => shape.test(wordsFrom(tokens, after)))?.[0] ?? null;
    const more = unit === null ? null : partAt(tokens, after + 1);
    const last = tokens[after - 1] ?? token;
    const before = labelBefore(tokens, at, taken);
    const behind = before === null ? labelAfter(tokens, after + (unit === null ? 0 : 1)) : null;
    taken = behind?.end ?? after;
    found.push({
      value: (spoken?.value ?? valueOf(token.text)) + (more?.part ?? 0),
      unit,
      label: before ?? behind?.label ?? null,
      digits: spoken?.digits ?? (/^\d+$|^\d\d,\d{3}$/.test(token.text) ? token.text.replace(',', '') : null),
      isGrouped: spoken === null && /[.,]/.test(token.text),
      start: token.start,
      end: last.end,
    });
    at = after;
  }
  return found.filter(({ value }) => isBetween(value, 0, 99_999_999));
};
