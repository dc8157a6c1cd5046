/** A fact as a correction leaves it. */
import type { TruckId } from '../roster.ts';
import type { Correction, Fact, Ticket } from './facts.ts';
import { holdsCount, recounted } from './counts.ts';
import { netOf, reweigh, setsWeight } from './weights.ts';

/** The truck that it is about; null = none. */
export const truckOf = (fact: Fact): TruckId | null => {
  if (fact.kind === 'ticket-booked') return fact.ticket.truck;
  return 'truck' in fact ? fact.truck : null;
};

const ticketCorrected = (ticket: Ticket, set: Correction): Ticket => {
  const placed = {
    ...ticket,
    serial: set.serial ?? ticket.serial,
    truck: set.truck ?? ticket.truck,
    field: set.field ?? ticket.field,
  };
  if (!setsWeight(set)) return placed;
  const weights = reweigh(ticket, set);
  const net = netOf(weights);
  return 'refusal' in net ? placed : { ...placed, ...weights, netLb: net.netLb };
};

/** Whatever kind of fact names a truck or a field can have it corrected. */
export const corrected = (said: Fact, set: Correction): Fact => {
  const { atMs, truck, field } = set;
  const timed = atMs === null ? said : { ...said, atMs, timeStated: true };
  const trucked = truck !== null && 'truck' in timed ? { ...timed, truck } : timed;
  const placed = field !== null && 'field' in trucked ? { ...trucked, field } : trucked;
  const { count } = set;
  const fact = count !== undefined && holdsCount(placed, count) ? recounted(placed, count.value) : placed;
  if (fact.kind === 'ticket-booked') return { ...fact, ticket: ticketCorrected(fact.ticket, set) };
  if (fact.kind === 'truck-reported' && fact.grossLb !== null)
    return { ...fact, grossLb: set.grossLb ?? fact.grossLb };
  return fact;
};

/** Is there anything in the fact that this correction sets? */
export const takes = (fact: Fact, set: Correction): boolean => {
  const isTicket = fact.kind === 'ticket-booked';
  if (set.serial !== undefined) return isTicket;
  if (set.count !== undefined) return holdsCount(fact, set.count);
  if (setsWeight(set)) return isTicket || (fact.kind === 'truck-reported' && fact.grossLb !== null);
  if (set.truck !== null) return truckOf(fact) !== null;
  if (set.field !== null) return isTicket || 'field' in fact;
  return true;
};
