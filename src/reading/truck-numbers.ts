import type { Roster, TruckId } from '../core/roster.ts';
import type { Named, Slot, SlotOf } from './sign.ts';
import type { Token } from './tokens.ts';

export interface FoundName {
  slot: Slot;
  length: number;
}

const truckWord =
  /^(truck|trucks|troca|trocas|troka|camion|camiones|semi|trailer|unit|rig|unidad|camioneta)$/;
const numberWord = /^(number|numero|num|#)$/;
const inLine = /^(in|en) (the |la )?(line|fila|linea|cola)/;

/** Numbers that a phone hears as other words after "truck". */
const misheard = new Map(Object.entries({ to: '2', too: '2', tree: '3', for: '4', won: '1', ate: '8' }));
const afterMisheard = /^(is|has|loaded|loading|in|leaving|left|empty|dumped|parked|broke|down|back|full)$/;

const truckNumber = (tokens: readonly Token[], at: number): string | null => {
  const token = tokens[at];
  if (token?.kind === 'number' && /^\d{1,3}$/.test(token.text)) return String(Number(token.text));
  const heard = misheard.get(token?.text ?? '');
  return heard !== undefined && afterMisheard.test(tokens[at + 1]?.text ?? '') ? heard : null;
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
  if (truckWord.test(word)) return numberWord.test(next) ? 2 : 1;
  const rest = tokens.slice(at + 2, at + 5).map(({ text }) => text);
  if (numberWord.test(word)) return number === null || inLine.test(rest.join(' ')) ? null : 1;
  if (word === 't') return isKnownTruck(roster, number ?? '') || tokens[at + 1]?.glued === true ? 1 : null;
  const isPlace = inLine.test(rest.join(' ')) || tokens[at - 1]?.text === 'soy';
  return !isPlace &&
    /^(la|el)$/.test(word) &&
    tokens[at + 1]?.kind === 'number' &&
    isKnownTruck(roster, number ?? '')
    ? 1
    : null;
};

/** "Trucks 3 and 4": the numbers that go on after the first. */
const moreTrucks = (roster: Roster, tokens: readonly Token[], at: number): FoundName[] => {
  const number = /^(and|y)$/.test(tokens[at]?.text ?? '') ? truckNumber(tokens, at + 1) : null;
  const rest = tokens
    .slice(at + 2, at + 5)
    .map(({ text }) => text)
    .join(' ');
  if (number === null || /^(ahead|trucks|adelante|trocas)/.test(rest) || !isKnownTruck(roster, number))
    return [];
  const slot: Slot = { slot: 'truck', trucks: [truckNamed(roster, number, number)], said: number };
  return [{ slot, length: 2 }, ...moreTrucks(roster, tokens, at + 2)];
};

/** The truck told by its number: "truck 3", "T3", "la 3"; several in "trucks 3 and 4". */
export const truckByNumber = (roster: Roster, tokens: readonly Token[], at: number): FoundName | null => {
  const before = beforeTruckNumber(roster, tokens, at);
  const number = before === null ? null : truckNumber(tokens, at + before);
  if (before === null || number === null) return null;
  const said = tokens
    .slice(at, at + before + 1)
    .map(({ text }) => text)
    .join(' ');
  const more = truckWord.test(tokens[at]?.text ?? '') ? moreTrucks(roster, tokens, at + before + 1) : [];
  const others = more.flatMap(({ slot }) => (slot.slot === 'truck' ? slot.trucks : []));
  const slot: SlotOf<'truck'> = {
    slot: 'truck',
    trucks: [truckNamed(roster, number, said), ...others],
    said,
  };
  return { slot, length: before + 1 + more.reduce((sum, { length }) => sum + length, 0) };
};
