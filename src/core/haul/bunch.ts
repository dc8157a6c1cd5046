/** Tickets that a driver sends in a bunch, at the end of a shift say. */
import { minutesBetween } from '../units.ts';
import type { Minutes } from '../units.ts';
import type { BookedTicket, Load } from './load.ts';

/** Tickets of one truck sent within so long of one another are one bunch; nobody makes two rounds in it. */
const BUNCH_MIN: Minutes = 30;

interface Bunched {
  load: Load;
  ticket: BookedTicket;
}

/** A ticket that tells its field or its first weight needs no order to find its load. */
const saysLittle = ({ field, firstWeighedMs, serial }: BookedTicket): boolean =>
  field === null && firstWeighedMs === null && serial !== null;

const comparable = (bunch: readonly Bunched[]): boolean =>
  bunch.every(({ ticket }) => /^\d+$/.test(ticket.serial ?? '')) &&
  new Set(bunch.map(({ ticket }) => ticket.serial?.length)).size === 1;

/**
 * A lone ticket closes the newest load that can have been weighed out. When another one follows and only an older load
 * is left for it, both are of a bunch: serials run up, and so do the loads.
 */
export const orderBunch = (loads: readonly Load[], closed: Load): void => {
  const newest = closed.ticket;
  if (!newest || !saysLittle(newest)) return;
  const bunch = loads.flatMap((load): Bunched[] =>
    load.ticket && saysLittle(load.ticket) && minutesBetween(load.ticket.atMs, newest.atMs) < BUNCH_MIN
      ? [{ load, ticket: load.ticket }]
      : [],
  );
  if (bunch.at(-1)?.load === closed || !comparable(bunch)) return;
  const tickets = bunch.map(({ ticket }) => ticket).sort((a, b) => Number(a.serial) - Number(b.serial));
  bunch.forEach(({ load }, at) => {
    load.ticket = tickets[at] ?? load.ticket;
  });
};
