import type { Ticket } from '../book/facts.ts';
import { loadOfTicket } from '../haul/belonging.ts';
import type { BookedTicket } from '../haul/load.ts';
import { truckById } from '../roster.ts';
import type { TruckId } from '../roster.ts';
import { netOf } from '../book/weights.ts';
import { minutesBetween } from '../units.ts';
import type { EpochMs, Lb } from '../units.ts';
import { SAME_TICKET_MIN } from './assumptions.ts';
import { refused, stationFor, taken, truckFor } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { weightWarnings } from './weight-warnings.ts';

/** A truck does not get the same serial twice; another truck may, at another station. */
const sameTicket = (harvest: Harvest, ticket: Ticket, sentMs: EpochMs): BookedTicket | undefined =>
  harvest.tickets.find((known) => {
    const sameTruck = known.truck === ticket.truck;
    if (known.serial !== null && ticket.serial !== null)
      return known.serial === ticket.serial && (sameTruck || known.station === ticket.station);
    const apartMin = Math.abs(minutesBetween(known.sentMs, sentMs));
    return sameTruck && known.netLb === ticket.netLb && apartMin < SAME_TICKET_MIN;
  });

/** The first weight alone: the truck is between the weights, and the second weight will complete the ticket. */
const firstWeightOnly = (
  intent: IntentOf<'book-ticket'>,
  truck: TruckId,
  grossLb: Lb,
  harvest: Harvest,
  speaking: Speaking,
): Accepted => {
  const { field, station } = intent;
  const warnings = weightWarnings(
    { grossLb, tareLb: null, netLb: null },
    truckById(harvest.roster, truck),
    [],
  );
  return taken(
    speaking,
    intent.atMs,
    [{ kind: 'truck-reported', truck, step: 'first-weighed', field, station, grossLb, words: null }],
    warnings,
  );
};

/**
 * A weigh ticket: net = first weight - second weight, in pounds with or without decimals.
 * Refused: second not below first, weights that disagree, an impossible net, a serial already booked.
 */
export const acceptTicket = (
  intent: IntentOf<'book-ticket'>,
  harvest: Harvest,
  speaking: Speaking,
): Accepted => {
  const truck = truckFor(speaking, intent.truck);
  if (truck === null) return refused({ refused: 'no-truck' });
  const { serial, tareLb } = intent;
  if (intent.grossLb !== null && tareLb === null && intent.netLb === null && serial === null)
    return firstWeightOnly(intent, truck, intent.grossLb, harvest, speaking);
  const atMs = intent.atMs ?? speaking.sentMs;
  const firstWeighedMs =
    intent.firstWeighedMs !== null && intent.firstWeighedMs <= atMs ? intent.firstWeighedMs : null;
  const load = loadOfTicket(harvest.trucks.get(truck)?.loads ?? [], { atMs, firstWeighedMs });
  const grossLb = intent.grossLb ?? (intent.netLb === null ? (load?.grossLb ?? null) : null);
  const net = netOf({ grossLb, tareLb, netLb: intent.netLb });
  if ('refusal' in net) return refused(net.refusal);
  const station = stationFor(
    harvest.roster,
    intent.station ?? (intent.field === null ? (load?.station ?? null) : null),
    intent.field ?? harvest.dugField,
  );
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
  const known = sameTicket(harvest, ticket, speaking.sentMs);
  if (known) return refused({ refused: 'serial-known', ticket: known });
  const earlier = harvest.tickets.filter((t) => t.truck === truck);
  const warnings = weightWarnings(
    { grossLb, tareLb, netLb: net.netLb },
    truckById(harvest.roster, truck),
    earlier,
  );
  return taken(speaking, intent.atMs, [{ kind: 'ticket-booked', ticket }], warnings);
};
