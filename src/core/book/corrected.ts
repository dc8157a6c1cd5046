/** A fact as a correction leaves it. */
import type { TruckId } from '../roster.ts';
import type { Correction, Fact, Ticket } from './facts.ts';
import { netOf, reweigh, setsWeight } from './weights.ts';

/** The truck that it is about; null = none. */
export const truckOf = (fact: Fact): TruckId | null => {
  if (fact.kind === 'ticket-booked') return fact.ticket.truck;
  if (fact.kind === 'truck-reported' || fact.kind === 'line-seen' || fact.kind === 'truck-taken')
    return fact.truck;
  return null;
};

const ticketCorrected = (ticket: Ticket, set: Correction): Ticket => {
  const placed = { ...ticket, truck: set.truck ?? ticket.truck, field: set.field ?? ticket.field };
  if (!setsWeight(set)) return placed;
  const weights = reweigh(ticket, set);
  const net = netOf(weights);
  return 'refusal' in net ? placed : { ...placed, ...weights, netLb: net.netLb };
};

export const corrected = (said: Fact, set: Correction): Fact => {
  const fact = set.atMs === null ? said : { ...said, atMs: set.atMs, timeStated: true };
  switch (fact.kind) {
    case 'truck-reported':
      return {
        ...fact,
        truck: set.truck ?? fact.truck,
        field: set.field ?? fact.field,
        grossLb: fact.grossLb === null ? null : (set.grossLb ?? fact.grossLb),
      };
    case 'ticket-booked':
      return { ...fact, ticket: ticketCorrected(fact.ticket, set) };
    case 'line-seen':
      return { ...fact, truck: set.truck ?? fact.truck };
    case 'truck-taken':
      return { ...fact, truck: set.truck ?? fact.truck };
    case 'field-dug':
      return { ...fact, field: set.field ?? fact.field };
    case 'root-measured':
    case 'crown-checked':
      return { ...fact, field: set.field ?? fact.field };
    case 'pilers-seen':
    case 'station-reported':
    case 'entry-corrected':
    case 'entry-withdrawn':
    case 'forecast-issued':
    case 'air-observed':
    case 'notice-raised':
    case 'notice-seen':
    case 'line-warned':
    case 'shift-told':
    case 'emergency-called':
    case 'stranger-heard':
    case 'language-chosen':
    case 'list-changed':
      return fact;
  }
};

/** Is there anything in the fact that this correction sets? */
export const takes = (fact: Fact, set: Correction): boolean => {
  const reported = fact.kind === 'truck-reported';
  if (setsWeight(set)) return fact.kind === 'ticket-booked' || (reported && fact.grossLb !== null);
  if (set.truck !== null) return truckOf(fact) !== null;
  if (set.field !== null) return reported || fact.kind === 'ticket-booked' || 'field' in fact;
  return true;
};
