/** Acts that come to the same in our model are made the same, in a label and in what was read alike. */
import type { Act, Slots } from './acts.ts';
import type { Scene } from './scene.ts';

const WEIGHTS = ['gross_lb', 'tare_lb', 'net_lb'];
const weighs = ({ slots }: Act): boolean => WEIGHTS.some((slot) => slot in slots);
const isBare = ({ slots }: Act): boolean => Object.keys(slots).every((slot) => slot === 'truck');

const truckOf = ({ slots }: Act, { ownTruck }: Scene): string => String(slots['truck'] ?? ownTruck);

/** A tare closes the load as a ticket does. */
const closesLoad = (act: Act): boolean => act.act === 'ticket' || (act.act === 'weighed_out' && weighs(act));

/** The load was weighed, tipped and left behind, which a ticket of it says too. */
const isImplied = (act: Act): boolean =>
  act.act === 'weighed_out' || (isBare(act) && /^(weighed_in|dumped|returning)$/.test(act.act));

const agree = (one: Slots, other: Slots): boolean =>
  Object.entries(one).every(
    ([slot, value]) => slot === 'time' || other[slot] === undefined || other[slot] === value,
  );

/** First and second weight, serial and steps of one load, told apart or together, are one ticket. */
const withTickets = (acts: readonly Act[], scene: Scene): Act[] => {
  const tickets: Act[] = [];
  const rest: Act[] = [];
  for (const act of acts) {
    const at = tickets.findIndex(
      (ticket) => truckOf(ticket, scene) === truckOf(act, scene) && agree(act.slots, ticket.slots),
    );
    const known = tickets[at];
    if (!closesLoad(act)) rest.push(act);
    else if (known === undefined) tickets.push({ act: 'ticket', slots: act.slots });
    else tickets[at] = { act: 'ticket', slots: { ...act.slots, ...known.slots } };
  }
  const left: Act[] = [];
  for (const act of rest) {
    const at = tickets.findIndex((ticket) => truckOf(ticket, scene) === truckOf(act, scene));
    const ticket = tickets[at];
    const isFirst = act.act === 'weighed_in' && ticket !== undefined && agree(act.slots, ticket.slots);
    if (ticket === undefined || !(isFirst || isImplied(act))) left.push(act);
    else if (isFirst) {
      const { gross_lb } = act.slots;
      tickets[at] = {
        act: 'ticket',
        slots: { ...(gross_lb === undefined ? {} : { gross_lb }), ...ticket.slots },
      };
    }
  }
  return [...tickets, ...left];
};

/** A driver's count of the trucks ahead says that he stands in the line, unless it is told since when. */
const withCounts = (acts: readonly Act[], scene: Scene): Act[] => {
  const isInLine = acts.some(({ act }) => act === 'in_line');
  const counts = acts.some(({ act }) => act === 'line_count');
  const stands = (act: Act): boolean =>
    act.act === 'in_line' &&
    isBare(act) &&
    /^(loaded|in_line)$/.test(scene.line.state) &&
    truckOf(act, scene) === scene.ownTruck;
  return acts
    .filter((act) => !(counts && stands(act)))
    .map((act) => {
      const { time, ...slots } = act.slots;
      const keepsTime = time !== undefined && (act.act !== 'line_count' || !isInLine);
      return keepsTime ? act : { act: act.act, slots };
    });
};

/** An empty truck on its way back has tipped its load. */
const withoutTipping = (acts: readonly Act[], scene: Scene): Act[] =>
  acts.filter(
    (act) =>
      !(act.act === 'dumped' && isBare(act)) ||
      !acts.some((other) => other.act === 'returning' && truckOf(other, scene) === truckOf(act, scene)),
  );

/** Weighed out without weights: the truck is empty, which our model calls returning. */
const withEmpty = (acts: readonly Act[], scene: Scene): Act[] => {
  const isSaid = (act: Act): boolean =>
    acts.some(
      (other) =>
        /^(returning|at_field|parked)$/.test(other.act) && truckOf(other, scene) === truckOf(act, scene),
    );
  return acts.flatMap((act) => {
    if (act.act !== 'weighed_out') return [act];
    return isSaid(act) ? [] : [{ ...act, act: 'returning' }];
  });
};

/** "Left the scale at 12:35, rolling": the time may be that of either. */
const withTimeOfEmpty = (acts: readonly Act[]): Act[] => {
  const time = acts.find(({ act, slots }) => act === 'weighed_out' && 'time' in slots)?.slots['time'];
  return acts.map((act) =>
    act.act === 'returning' && time !== undefined ? { ...act, slots: { time, ...act.slots } } : act,
  );
};

const once = (acts: readonly Act[]): Act[] => {
  const keyOf = ({ act, slots }: Act): string => JSON.stringify([act, Object.entries(slots).sort()]);
  return [...new Map(acts.map((act) => [keyOf(act), act])).values()];
};

export const settled = (acts: readonly Act[], scene: Scene): Act[] =>
  once(withoutTipping(withEmpty(withTickets(withCounts(acts, scene), scene), scene), scene));

/** What a label comes to, in the ways that are alike for us. */
export const fairReadings = (acts: readonly Act[], scene: Scene): Act[][] => [
  settled(acts, scene),
  settled(withTimeOfEmpty(acts), scene),
];
