/** The digger and the topper, which are no trucks. */
import type { FieldMachine } from '../core/book/facts.ts';
import { kindWords, wordSet } from './every-language.ts';
import { wordsOfElements } from './haul.ts';
import { told } from './hearing.ts';
import type { Built, Hearing } from './hearing.ts';
import type { Resolved } from './resolve.ts';
import { isLittle } from './little-words.ts';
import { tokenize } from './tokens.ts';

const diggers = kindWords(({ kinds }) => kinds.digger);
const toppers = kindWords(({ kinds }) => kinds.topper);
const beside = wordSet(({ talk }) => talk.besideMachine);

const called = (word: string): FieldMachine | null =>
  diggers.has(word) ? 'digger' : toppers.has(word) ? 'topper' : null;

/** The machine that the text names; not one that somebody only stands by. */
const machineNamed = (text: string): FieldMachine | null => {
  const words = tokenize(text).map((token) => token.text);
  const named = words.flatMap((word, at) => {
    const machine = called(word);
    const before = words.slice(0, at).findLast((other) => beside.has(other) || !isLittle(other));
    return machine === null || beside.has(before ?? '') ? [] : [machine];
  });
  const [first = null, ...others] = named;
  // "Digger's going but the topper broke": which of them is a matter of words that are not looked at here.
  return others.every((other) => other === first) ? first : null;
};

const truckWords = wordSet(({ names }) => names.truck);
const tellsOfTruck = (text: string): boolean => tokenize(text).some((token) => truckWords.has(token.text));

/** Whose operator has no truck of his own means his machine where he names none. */
const ownMachine = ({ speaker }: Hearing): FieldMachine | null => {
  if (speaker?.truck !== null) return null;
  if (speaker.roles.includes('digger-operator')) return 'digger';
  return speaker.roles.includes('topper-operator') ? 'topper' : null;
};

/** The machine that stands or works again by such words; null = a truck does. */
export const machineMeant = (
  { trucks, person }: Resolved,
  text: string,
  hearing: Hearing,
): FieldMachine | null => {
  if (trucks.length > 0 || person !== null) return null;
  return machineNamed(text) ?? (tellsOfTruck(text) ? null : ownMachine(hearing));
};

export const buildMachine = (
  machine: FieldMachine,
  runs: boolean,
  { draft, atMs, untilMs, numbers }: Resolved,
  text: string,
): Built => {
  if (numbers.length > 0) return null;
  const words = runs ? null : wordsOfElements(draft.free, text);
  return told({ do: 'report-machine', machine, runs, atMs, untilMs, words });
};
