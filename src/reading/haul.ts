import type { HaulStep } from '../core/book/facts.ts';
import type { Roster, TruckId } from '../core/roster.ts';
import type { Element } from './sign.ts';
import { slotsOf } from './sign.ts';
import type { Built } from './hearing.ts';
import { told } from './hearing.ts';
import { countOf, truckOf } from './resolve.ts';
import type { Resolved } from './resolve.ts';
import { firstWeight, netTicket } from './ticket.ts';
import { isLittle } from './little-words.ts';

const isTelling = (element: Element): boolean => element.is === 'word' && !isLittle(element.text);

/** The words as the person wrote them, names and times between them left out; null where they tell nothing. */
export const wordsOfElements = (free: readonly Element[], text: string): string | null => {
  const runs: Element[][] = [];
  for (const element of free) {
    const run = runs.at(-1);
    const isNext = run !== undefined && /^\s*$/.test(text.slice(run.at(-1)?.end, element.start));
    if (isNext) run.push(element);
    else runs.push([element]);
  }
  const telling = runs
    .map((run) => run.slice(0, run.findLastIndex(isTelling) + 1))
    .filter((run) => run.length > 0);
  return telling.length === 0
    ? null
    : telling.map((run) => text.slice(run[0]?.start, run.at(-1)?.end)).join(', ');
};

/** The trucks named, the truck of the person named, or null for the speaker's own. */
const reporters = ({ trucks, person }: Resolved, roster: Roster): (TruckId | null)[] =>
  trucks.length > 0 ? [...trucks] : [truckOf(person, roster)];

/** Nobody can see the end of a line of a hundred trucks; larger numbers are clocks or slips. */
const MAX_AHEAD = 100;

export const buildReport = (step: HaulStep, resolved: Resolved, text: string, roster: Roster): Built => {
  const { draft, field, station, atMs, untilMs, numbers, slots } = resolved;
  const count = step === 'joined-line' ? countOf(numbers[0]) : null;
  const used = count !== null && count < MAX_AHEAD && draft.ahead === null ? 1 : 0;
  if (numbers.length > used) return null;
  const ahead = draft.ahead ?? count;
  const words = step === 'down' ? wordsOfElements(draft.free, text) : null;
  const reports = reporters(resolved, roster).map(
    (truck) => ({ do: 'report', step, truck, field, station, atMs, ahead, words, untilMs }) as const,
  );
  const weights = slotsOf(slots, 'weight');
  if (weights.length === 0) return told(...reports);
  if (step === 'first-weighed') return told(firstWeight(weights, resolved));
  const ticket = step === 'dumped' ? netTicket(weights, resolved) : null;
  return ticket === null ? null : told(...reports, ticket);
};
