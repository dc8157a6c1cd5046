import { clockOfNumber, findClock } from './clock-words.ts';
import { atStart, either } from './every-language.ts';
import { isJoining } from './little-words.ts';
import { nameAt } from './names.ts';
import type { Names } from './names.ts';
import type { Element, Lead, Slot } from './sign.ts';
import { ticketAt } from './ticket-serial.ts';
import type { Token } from './tokens.ts';
import { weightAt, wordsAt } from './weights.ts';

interface Found {
  slot: Slot;
  length: number;
}

const AFTER_LEAD = either(({ clock }) => clock.afterLead);
const leadShape = (lead: Lead): string => either(({ clock }) => clock.leads[lead]);
const leads: readonly (readonly [RegExp, Lead | null])[] = [
  [atStart(leadShape('till')), 'till'],
  [atStart(`${leadShape('out')}(?: ${AFTER_LEAD})?`), 'out'],
  [atStart(`${leadShape('in')}(?: ${AFTER_LEAD})?`), 'in'],
  [atStart(`@|${leadShape('at')}`), 'at'],
  [atStart(either(({ clock }) => clock.roughly)), null],
];

/** "Until about 6": the words before a clock, and the strongest of what they say. */
const leadAt = (tokens: readonly Token[], at: number): { lead: Lead | null; length: number } => {
  const words = wordsAt(tokens, at);
  for (const [shape, lead] of leads) {
    const match = shape.exec(words);
    if (match === null) continue;
    const length = match[0].split(' ').length;
    const next = leadAt(tokens, at + length);
    return { lead: lead ?? next.lead, length: length + next.length };
  }
  return { lead: null, length: 0 };
};

const clockAt = (tokens: readonly Token[], at: number): Found | null => {
  const whole = findClock(wordsAt(tokens, at), false);
  if (whole !== null)
    return { slot: clockSlot(tokens, at, whole.clock, null, whole.length), length: whole.length };
  const { lead, length } = leadAt(tokens, at);
  const isLed = lead === 'at' || lead === 'till';
  const found = length === 0 ? null : findClock(wordsAt(tokens, at + length), isLed);
  if (found === null) return lead === null ? null : ledNumber(tokens, at, lead, length);
  const covered = length + found.length;
  return { slot: clockSlot(tokens, at, found.clock, lead, covered), length: covered };
};

const clockSlot = (
  tokens: readonly Token[],
  at: number,
  clock: Extract<Slot, { slot: 'clock' }>['clock'],
  lead: Lead | null,
  length: number,
): Slot => ({ slot: 'clock', clock, lead, said: wordsAt(tokens, at).split(' ').slice(0, length).join(' ') });

/** "At 7", "till 6": a number that may be a clock; what it stands beside tells. */
const ledNumber = (tokens: readonly Token[], at: number, lead: Lead, length: number): Found | null => {
  const number = tokens[at + length];
  // "In 1005 out 1031" are clocks, "in 14" is none.
  const isBare = lead === 'in' || lead === 'out';
  const clock = number?.kind === 'number' ? clockOfNumber(number.text, !isBare) : null;
  if (number === undefined || clock === null) return null;
  if (isBare) return { slot: { slot: 'clock', clock, lead, said: number.text }, length: length + 1 };
  if (degreesAt(tokens, at + length) !== null) return null;
  return { slot: { slot: 'number', text: number.text, lead, said: number.text }, length: length + 1 };
};

const FAHRENHEIT = either(({ clock }) => clock.fahrenheit);
const CELSIUS = either(({ clock }) => clock.celsius);
const degreesShape = new RegExp(
  `^(?:${either(({ clock }) => clock.degrees)}|°)? ?(?:(?<f>f|${FAHRENHEIT})|(?<c>c|${CELSIUS}))?(?![^ ])`,
);

const degreesAt = (tokens: readonly Token[], at: number): Found | null => {
  const number = tokens[at];
  if (number?.kind !== 'number') return null;
  const match = degreesShape.exec(wordsAt(tokens, at + 1));
  const said = match?.[0].trim() ?? '';
  if (said === '') return null;
  const { f, c } = match?.groups ?? {};
  const unit = f !== undefined ? 'F' : c !== undefined ? 'C' : null;
  return {
    slot: { slot: 'degrees', text: number.text, unit, said: number.text },
    length: 1 + said.split(' ').length,
  };
};

const spans = (['other', 'season', 'week', 'today', 'yesterday'] as const).map(
  (span) => [atStart(either(({ clock }) => clock.spans[span])), span] as const,
);

const spanAt = (tokens: readonly Token[], at: number): Found | null => {
  const words = wordsAt(tokens, at);
  for (const [shape, span] of spans) {
    const said = shape.exec(words)?.[0];
    if (said !== undefined) return { slot: { slot: 'span', span, said }, length: said.split(' ').length };
  }
  return null;
};

/** What starts at this token. Names come last, so that no number of a ticket or clock is taken for a truck. */
const slotAt = (text: string, tokens: readonly Token[], at: number, names: Names): Found | null => {
  const metric = names.roster.units === 'metric';
  const token = tokens[at];
  const found =
    ticketAt(text, tokens, at, metric) ??
    degreesAt(tokens, at) ??
    clockAt(tokens, at) ??
    weightAt(tokens, at, metric) ??
    nameAt(names, tokens, at) ??
    spanAt(tokens, at);
  if (found !== null) return found;
  if (token?.kind === 'number') {
    return { slot: { slot: 'number', text: token.text, lead: null, said: token.text }, length: 1 };
  }
  return token?.kind === 'ordinal'
    ? { slot: { slot: 'ordinal', text: token.text, said: token.text }, length: 1 }
    : null;
};

const wordElement = (token: Token): Element => {
  const { start, end, text, kind } = token;
  if (kind === 'break' || isJoining(text)) return { is: 'break', start, end };
  return kind === 'question' ? { is: 'question', start, end } : { is: 'word', text, start, end };
};

/** The tokens with slots in place of the words that they are made of. */
export const elementsOf = (text: string, tokens: readonly Token[], names: Names): Element[] => {
  const elements: Element[] = [];
  let at = 0;
  for (let token = tokens[at]; token !== undefined; token = tokens[at]) {
    const found = slotAt(text, tokens, at, names);
    const length = found?.length ?? 1;
    const end = tokens[at + length - 1]?.end ?? token.end;
    elements.push(
      found === null ? wordElement(token) : { is: 'slot', slot: found.slot, start: token.start, end },
    );
    at += length;
  }
  return elements;
};
