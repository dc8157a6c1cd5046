import type { Day } from '../day.ts';
import type { Ticket } from '../facts.ts';
import { hasEnded } from '../haul/load.ts';
import type { BookedTicket, Load } from '../haul/load.ts';
import { truckById } from '../roster.ts';
import type { TruckId } from '../roster.ts';
import { netOf, weightWarnings } from '../tally/weights.ts';
import { minutesBetween } from '../units.ts';
import type { Lb } from '../units.ts';
import { refused, stationFor, taken, truckFor } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';

/** Without a serial, the same weights of the same truck within this time are the same ticket sent twice. */
const SAME_TICKET_MIN = 20;

const sameTicket = (day: Day, ticket: Ticket, sentMs: number): BookedTicket | undefined =>
  day.tickets.find((known) =>
    ticket.serial === null
      ? known.truck === ticket.truck &&
        known.netLb === ticket.netLb &&
        Math.abs(minutesBetween(known.sentMs, sentMs)) < SAME_TICKET_MIN
      : known.serial === ticket.serial && known.station === ticket.station,
  );

const loadUnderWay = (day: Day, truck: TruckId): Load | undefined => {
  const load = day.trucks.get(truck)?.loads.at(-1);
  return load && !hasEnded(load) ? load : undefined;
};

/** The first weight alone: the truck is between the weights, and the second one will close the ticket. */
const firstWeightOnly = (
  intent: IntentOf<'book-ticket'>,
  truck: TruckId,
  grossLb: Lb,
  speaking: Speaking,
): Accepted =>
  taken(speaking, intent.atMs, [
    {
      kind: 'truck-reported',
      truck,
      step: 'first-weighed',
      field: intent.field,
      station: intent.station,
      grossLb,
      words: null,
    },
  ]);

/**
 * A weigh ticket: net = first weight - second weight, in whole or parts of pounds.
 * Refused: second not below first, weights that disagree, a net that cannot be, a serial already booked.
 */
export const acceptTicket = (intent: IntentOf<'book-ticket'>, day: Day, speaking: Speaking): Accepted => {
  const truck = truckFor(speaking, intent.truck);
  if (truck === null) return refused({ refused: 'no-truck' });
  const { serial, tareLb, firstWeighedMs } = intent;
  if (intent.grossLb !== null && tareLb === null && intent.netLb === null && serial === null)
    return firstWeightOnly(intent, truck, intent.grossLb, speaking);
  const load = loadUnderWay(day, truck);
  const grossLb = intent.grossLb ?? (intent.netLb === null ? (load?.grossLb ?? null) : null);
  const net = netOf({ grossLb, tareLb, netLb: intent.netLb });
  if ('refusal' in net) return refused(net.refusal);
  const station = stationFor(day.roster, intent.station, intent.field ?? load?.field ?? null);
  if (station === null) return refused({ refused: 'no-station' });
  const ticket: Ticket = {
    station,
    serial,
    truck,
    field: intent.field,
    grossLb,
    tareLb,
    netLb: net.netLb,
    firstWeighedMs,
  };
  const known = sameTicket(day, ticket, speaking.sentMs);
  if (known) return refused({ refused: 'serial-known', ticket: known });
  const earlier = day.tickets.filter((t) => t.truck === truck);
  const warnings = weightWarnings(
    { grossLb, tareLb, netLb: net.netLb },
    truckById(day.roster, truck),
    earlier,
  );
  return taken(speaking, intent.atMs, [{ kind: 'ticket-booked', ticket }], warnings);
};
