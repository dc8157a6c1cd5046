/** "Tell everybody: start 5:00 at South 80", "dile a Ana que venga": words for others, in which nothing else is read. */
import type { PersonId, Roster } from '../core/roster.ts';
import { atStart, either } from './every-language.ts';
import { isBotName, isLittle } from './little-words.ts';
import { nameAt, namesOf } from './names.ts';
import type { Slot } from './sign.ts';
import type { Token } from './tokens.ts';
import { wordsAt } from './weights.ts';

export interface PassedOn {
  to: readonly PersonId[] | 'everybody';
  /** As the sender wrote them. */
  words: string;
  /** The same as tokens. */
  tokens: readonly Token[];
  /** A colon stands before them, so that it is meant for the bot wherever it is said. */
  isMarked: boolean;
}

const TELL = atStart(either(({ passOn }) => passOn.tell));
const TELL_ALL = atStart(either(({ passOn }) => passOn.tellAll));
const EVERYBODY = atStart(either(({ passOn }) => passOn.everybody));
const TO = atStart(either(({ passOn }) => passOn.to));
const THAT = atStart(either(({ passOn }) => passOn.that));
const AND = atStart(either(({ names }) => names.and.replaceAll(/\s+/g, '|')));

/** How many tokens the shape takes from there on; 0 = it does not fit. */
const taken = (shape: RegExp, tokens: readonly Token[], at: number): number =>
  shape.exec(wordsAt(tokens, at))?.[0].split(' ').length ?? 0;

const peopleOf = (slot: Slot, { people }: Roster): PersonId[] => {
  if (slot.slot === 'person') return [slot.id];
  if (slot.slot !== 'truck') return [];
  const trucks = slot.trucks.flatMap(({ ids }) => ids);
  return people.filter(({ truck }) => truck !== null && trucks.includes(truck)).map(({ id }) => id);
};

interface Addressees {
  to: readonly PersonId[] | 'everybody';
  end: number;
}

/** "Mateo", "a Ana y Ben", "truck 3". */
const named = (tokens: readonly Token[], from: number, roster: Roster): Addressees | null => {
  const at = from + taken(TO, tokens, from);
  const found = nameAt(namesOf(roster), tokens, at);
  const to = found === null ? [] : peopleOf(found.slot, roster);
  if (found === null || to.length === 0) return null;
  const end = at + found.length;
  const and = taken(AND, tokens, end);
  const more = and === 0 ? null : named(tokens, end + and, roster);
  return more === null || more.to === 'everybody' ? { to, end } : { to: [...to, ...more.to], end: more.end };
};

const addressees = (tokens: readonly Token[], from: number, roster: Roster): Addressees | null => {
  const isForAll = taken(TELL_ALL, tokens, from);
  if (isForAll > 0) {
    const at = from + isForAll;
    return { to: 'everybody', end: at + taken(EVERYBODY, tokens, at) };
  }
  const tell = taken(TELL, tokens, from);
  if (tell === 0) return null;
  const everybody = taken(EVERYBODY, tokens, from + tell);
  return everybody > 0
    ? { to: 'everybody', end: from + tell + everybody }
    : named(tokens, from + tell, roster);
};

const isAround = ({ kind, text }: Token): boolean => kind === 'break' || isBotName(text) || isLittle(text);

/** Null where nobody is to be told anything. */
export const passedOn = (text: string, tokens: readonly Token[], roster: Roster): PassedOn | null => {
  const from = tokens.findIndex((token) => !isAround(token));
  const found = from < 0 ? null : addressees(tokens, from, roster);
  if (found === null) return null;
  const mark = tokens[found.end];
  const isMarked = mark?.kind === 'break' && text[mark.start] === ':';
  const after = tokens.findIndex(({ kind }, at) => at >= found.end && kind !== 'break');
  const first = after < 0 ? tokens.length : after + taken(THAT, tokens, after);
  const rest = tokens.slice(first);
  const words = text.slice(rest[0]?.start ?? text.length).trim();
  return words === '' ? null : { to: found.to, words, tokens: rest, isMarked };
};
