import type { Roster, TruckId } from '../core/roster.ts';
import { either, listed, tableOf, wordSet } from './every-language.ts';
import type { Named, Slot, SlotOf } from './sign.ts';
import type { Token } from './tokens.ts';

export interface FoundName {
  slot: Slot;
  length: number;
}

const truckWords = wordSet(({ names }) => names.truck);
const truckLetters = wordSet(({ names }) => names.truckInShort);
const numbered = wordSet(({ names }) => names.numbered);
const articles = wordSet(({ names }) => names.the);
const numberMarks = new Set(['#', ...listed(({ names }) => names.number)]);
const inLine = new RegExp(`^${either(({ names }) => names.inLine)}`);
const selfWords = wordSet(({ names }) => names.self);
const joints = wordSet(({ names }) => names.and);
const notMoreTrucks = new RegExp(`^${either(({ names }) => names.notMoreTrucks)}`);

/** Numbers that a phone hears as other words after "truck". */
const misheard = tableOf(({ names }) => names.misheard);
const afterMisheard = wordSet(({ names }) => names.afterMisheard);

const truckNumber = (tokens: readonly Token[], at: number): string | null => {
  const token = tokens[at];
  if (token?.kind === 'number' && /^\d{1,3}$/.test(token.text)) return String(Number(token.text));
  const heard = misheard.get(token?.text ?? '');
  return heard !== undefined && afterMisheard.has(tokens[at + 1]?.text ?? '') ? heard : null;
};

/** Ids of the trucks that "3" may mean. */
export const trucksNumbered = (number: string, roster: Roster): TruckId[] =>
  roster.trucks
    .filter(({ id, name }) => id === number || name.replace(/\D/g, '') === number)
    .map(({ id }) => id);

const truckNamed = (roster: Roster, number: string, said: string): Named => ({
  ids: trucksNumbered(number, roster),
  said,
});

const isKnownTruck = (roster: Roster, number: string): boolean =>
  truckNamed(roster, number, '').ids.length > 0;

/** How many tokens stand before the number of a truck: "truck", "truck number", "#", "la troca", "t3", "la 3". */
const beforeTruckNumber = (roster: Roster, tokens: readonly Token[], at: number): number | null => {
  const [word = '', next = ''] = [tokens[at]?.text, tokens[at + 1]?.text];
  const number = truckNumber(tokens, at + 1);
  if (truckWords.has(word)) return numberMarks.has(next) ? 2 : 1;
  const rest = tokens.slice(at + 2, at + 5).map(({ text }) => text);
  if (numbered.has(tokens[at - 1]?.text ?? '') || numbered.has(word)) return null;
  if (numberMarks.has(word)) return number === null || inLine.test(rest.join(' ')) ? null : 1;
  if (truckLetters.has(word))
    return isKnownTruck(roster, number ?? '') || tokens[at + 1]?.glued === true ? 1 : null;
  const isPlace = inLine.test(rest.join(' ')) || selfWords.has(tokens[at - 1]?.text ?? '');
  return !isPlace &&
    articles.has(word) &&
    tokens[at + 1]?.kind === 'number' &&
    isKnownTruck(roster, number ?? '')
    ? 1
    : null;
};

/** "Trucks 3 and 4": the numbers that go on after the first. */
const moreTrucks = (roster: Roster, tokens: readonly Token[], at: number): FoundName[] => {
  const number = joints.has(tokens[at]?.text ?? '') ? truckNumber(tokens, at + 1) : null;
  const rest = tokens
    .slice(at + 2, at + 5)
    .map(({ text }) => text)
    .join(' ');
  if (number === null || notMoreTrucks.test(rest) || !isKnownTruck(roster, number)) return [];
  const slot: Slot = { slot: 'truck', trucks: [truckNamed(roster, number, number)], said: number };
  return [{ slot, length: 2 }, ...moreTrucks(roster, tokens, at + 2)];
};

/** "2's tare": a number that has something is a truck. */
const possessive = (roster: Roster, tokens: readonly Token[], at: number): FoundName | null => {
  const [token, next] = [tokens[at], tokens[at + 1]];
  const isOwner = token?.kind === 'number' && next?.text === 's' && next.glued;
  return isOwner && isKnownTruck(roster, token.text)
    ? {
        slot: { slot: 'truck', trucks: [truckNamed(roster, token.text, token.text)], said: token.text },
        length: 2,
      }
    : null;
};

/** The truck told by its number: "truck 3", "T3", "la 3", "3's"; several in "trucks 3 and 4". */
export const truckByNumber = (roster: Roster, tokens: readonly Token[], at: number): FoundName | null => {
  const owner = possessive(roster, tokens, at);
  if (owner !== null) return owner;
  const before = beforeTruckNumber(roster, tokens, at);
  const number = before === null ? null : truckNumber(tokens, at + before);
  if (before === null || number === null) return null;
  const said = tokens
    .slice(at, at + before + 1)
    .map(({ text }) => text)
    .join(' ');
  const more = truckWords.has(tokens[at]?.text ?? '') ? moreTrucks(roster, tokens, at + before + 1) : [];
  const others = more.flatMap(({ slot }) => (slot.slot === 'truck' ? slot.trucks : []));
  const slot: SlotOf<'truck'> = {
    slot: 'truck',
    trucks: [truckNamed(roster, number, said), ...others],
    said,
  };
  return { slot, length: before + 1 + more.reduce((sum, { length }) => sum + length, 0) };
};
