import type { BookedTicket } from '../../core/haul/load.ts';
import { ticketTons } from '../parts/figures.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { Data, Iso, TellingKind, TellingOf } from '../telling-kind.ts';
import { phrase, time, tons, truckName } from '../voice.ts';
import type { Voice } from '../voice.ts';

const ticketsText = ({ tickets: booked, withoutTicket }: TellingOf<'tickets'>, voice: Voice): string => {
  if (booked.length === 0 && withoutTicket === 0) return phrase(voice, 'tickets.none');
  const rows = booked.map((ticket) =>
    phrase(voice, 'tickets.row', {
      serial: ticket.serial ?? phrase(voice, 'tickets.no-serial'),
      truck: truckName(voice, ticket.truck),
      tons: tons(voice, ticket.netLb),
      time: time(voice, ticket.atMs),
    }),
  );
  const missing = withoutTicket > 0 ? [phrase(voice, 'tally.without-ticket', { count: withoutTicket })] : [];
  return [phrase(voice, 'tickets.title', { count: booked.length }), ...rows, ...missing].join('\n');
};

const ticketData = (ticket: BookedTicket, iso: Iso): Data => ({
  serial: ticket.serial,
  truck: ticket.truck,
  field: ticket.field,
  netLb: ticket.netLb,
  tons: ticketTons(ticket.netLb),
  at: iso(ticket.atMs),
});

export const tickets: TellingKind<'tickets'> = {
  text: ticketsText,
  data: ({ tickets: booked, withoutTicket }, iso) => ({
    tickets: booked.map((ticket) => ticketData(ticket, iso)),
    withoutTicket,
  }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
