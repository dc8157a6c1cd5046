/** Tickets that a driver sends in a bunch, at the end of a shift say. */
import { addMinutes, minutesBetween } from '../units.ts';
import type { Minutes } from '../units.ts';
import { onTruckSince } from './load.ts';
import type { BookedTicket, Load } from './load.ts';

/** Tickets of one truck sent within so long of one another are one bunch; nobody makes two rounds in it. */
const BUNCH_MIN: Minutes = 30;

interface Bunched {
  /** Which of the truck's loads. */
  at: number;
  ticket: BookedTicket;
}

/** A ticket that tells its field or its first weight needs no order to find its load. */
const saysLittle = ({ field, firstWeighedMs, serial }: BookedTicket): boolean =>
  field === null && firstWeighedMs === null && serial !== null;

const comparable = (bunch: readonly Bunched[]): boolean =>
  bunch.every(({ ticket }) => /^\d+$/.test(ticket.serial ?? '')) &&
  new Set(bunch.map(({ ticket }) => ticket.serial?.length)).size === 1;

/** A load that was on the truck longer ago gets no ticket any more (belonging.ts), and so is of no bunch. */
const OLDEST_MIN: Minutes = 48 * 60;

/** Tickets that were sent shortly before this one and say as little, by their loads. */
const bunchWith = (loads: readonly Load[], newest: BookedTicket): Bunched[] => {
  const recent = onTruckSince(loads, addMinutes(newest.atMs, 0 - OLDEST_MIN));
  const earlier = loads.length - recent.length;
  return recent.flatMap(({ ticket }, at): Bunched[] =>
    ticket && minutesBetween(ticket.atMs, newest.atMs) < BUNCH_MIN && saysLittle(ticket)
      ? [{ at: earlier + at, ticket }]
      : [],
  );
};

/**
 * The loads after a ticket has closed number `closed` of them. A lone ticket closes the newest load that can have been
 * weighed out. When another one follows and only an older load is left for it, both are of a bunch: serials run up, and
 * so do the loads.
 */
export const inOrderOfSerials = (loads: readonly Load[], closed: number): readonly Load[] => {
  const newest = loads.at(closed)?.ticket;
  if (!newest || !saysLittle(newest)) return loads;
  const bunch = bunchWith(loads, newest);
  if (bunch.at(-1)?.at === closed || !comparable(bunch)) return loads;
  const tickets = bunch.map(({ ticket }) => ticket).sort((a, b) => Number(a.serial) - Number(b.serial));
  const ticketOf = new Map(bunch.map(({ at }, place) => [at, tickets[place]]));
  return loads.map((load, at) => {
    const ticket = ticketOf.get(at);
    return ticket === undefined ? load : { ...load, ticket };
  });
};
