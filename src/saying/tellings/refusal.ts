import type { Refusal } from '../../core/refusal.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import {
  fieldName,
  number,
  personName,
  phrase,
  ticketExamples,
  time,
  tons,
  truckName,
  weight,
} from '../voice.ts';
import type { Voice } from '../voice.ts';

const serialKnown = (ticket: Extract<Refusal, { refused: 'serial-known' }>['ticket'], voice: Voice): string =>
  phrase(voice, 'refused.serial-known', {
    serial: ticket.serial ?? phrase(voice, 'tickets.no-serial'),
    truck: truckName(voice, ticket.truck),
    tons: tons(voice, ticket.netLb),
    person: ticket.by === null ? '' : personName(voice, ticket.by),
    time: time(voice, ticket.sentMs),
  });

const moreThanField = (
  { field, acres, fieldAcres }: Extract<Refusal, { refused: 'more-than-field' }>,
  voice: Voice,
): string =>
  phrase(voice, 'refused.more-than-field', {
    field: fieldName(voice, field),
    acres: number(voice, acres, 1),
    has: number(voice, fieldAcres, 1),
  });

const refusalText = (refusal: Refusal, voice: Voice): string => {
  const lb = (value: number): string => weight(voice, value);
  switch (refusal.refused) {
    case 'no-truck':
    case 'offer-over':
    case 'no-station':
    case 'nothing-to-undo':
    case 'nothing-to-correct':
    case 'nothing-to-see':
    case 'dig-not-stopped':
    case 'dig-stopped-already':
    case 'order-overtaken':
    case 'drill-on-already':
    case 'no-drill':
    case 'last-manager':
    case 'no-room-here':
    case 'room-used-already':
    case 'room-not-used':
    case 'room-of-file':
      return phrase(voice, `refused.${refusal.refused}`);
    case 'weight-missing':
      return phrase(voice, 'refused.weight-missing', ticketExamples(voice));
    case 'no-field':
      return phrase(voice, 'refused.no-field', { example: voice.roster.fields[0]?.name ?? 'north 40' });
    case 'more-than-field':
      return moreThanField(refusal, voice);
    case 'crowns-not-checked':
      return phrase(voice, 'refused.crowns-not-checked', {
        example: voice.roster.fields[0]?.name ?? 'north 40',
      });
    case 'time-ahead':
      return phrase(voice, 'refused.time-ahead', { time: time(voice, refusal.atMs) });
    case 'not-allowed':
      return phrase(voice, `refused.not-allowed.${refusal.what}`);
    case 'second-not-below-first':
      return phrase(voice, 'refused.second-not-below-first', {
        gross: lb(refusal.grossLb),
        tare: lb(refusal.tareLb),
      });
    case 'net-impossible':
      return phrase(voice, 'refused.net-impossible', {
        net: lb(refusal.netLb),
        min: lb(refusal.minLb),
        max: lb(refusal.maxLb),
      });
    case 'weights-disagree':
      return phrase(voice, 'refused.weights-disagree', {
        net: lb(refusal.netLb),
        computed: lb(refusal.computedLb),
      });
    case 'serial-known':
      return serialKnown(refusal.ticket, voice);
    case 'too-many':
      return phrase(voice, 'refused.too-many', { taken: refusal.taken });
    case 'no-such-entry':
      return phrase(voice, 'refused.no-such-entry', { name: refusal.name });
  }
};

export const refusal: TellingKind<'refusal'> = {
  text: ({ refusal: refused }, voice) => refusalText(refused, voice),
  data: ({ refusal: { refused } }) => ({ refused }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
