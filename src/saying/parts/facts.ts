import type { Fact, FactOf, Ticket } from '../../core/book/facts.ts';
import { hasLine } from '../../core/book/kinds.ts';
import type { FactWithLine } from '../../core/book/kinds.ts';
import type { EpochMs } from '../../core/units.ts';
import {
  fieldName,
  number,
  personName,
  phrase,
  stationName,
  temperature,
  time,
  tons,
  truckName,
  weight,
} from '../voice.ts';
import type { Voice } from '../voice.ts';
import type { Data, Iso } from '../telling-kind.ts';
import { quoted } from './station.ts';
import { untilText } from './machines.ts';

const reported = (fact: FactOf<'truck-reported'>, voice: Voice): string => {
  const values = {
    truck: truckName(voice, fact.truck),
    field: fieldName(voice, fact.field),
    time: time(voice, fact.atMs),
    until: untilText(fact.untilMs, voice),
  };
  return fact.step === 'first-weighed' && fact.grossLb !== null
    ? phrase(voice, 'step.first-weighed-lb', { ...values, weight: weight(voice, fact.grossLb) })
    : phrase(
        voice,
        fact.step === 'left-field' && fact.field === null ? 'step.left-somewhere' : `step.${fact.step}`,
        values,
      );
};

const booked = (ticket: Ticket, atMs: EpochMs, voice: Voice): string => {
  const { grossLb, tareLb } = ticket;
  const values = {
    truck: truckName(voice, ticket.truck),
    tons: tons(voice, ticket.netLb),
    weights:
      grossLb !== null && tareLb !== null
        ? phrase(voice, 'receipt.weights', { gross: weight(voice, grossLb), tare: weight(voice, tareLb) })
        : '',
    field: ticket.field === null ? phrase(voice, 'tally.no-field') : fieldName(voice, ticket.field),
    time: time(voice, atMs),
  };
  return ticket.serial === null
    ? phrase(voice, 'receipt.ticket-no-serial', values)
    : phrase(voice, 'receipt.ticket', { ...values, serial: ticket.serial });
};

const pilers = (fact: FactOf<'pilers-seen'>, voice: Voice): string => {
  const values = { station: stationName(voice, fact.station), time: time(voice, fact.atMs) };
  return fact.open !== null
    ? phrase(voice, 'receipt.pilers-open', { ...values, count: fact.open })
    : phrase(voice, 'receipt.pilers-down', { ...values, count: fact.down ?? 0 });
};

const stationState = (fact: FactOf<'station-reported'>, voice: Voice): string => {
  const values = { station: stationName(voice, fact.station), time: time(voice, fact.atMs) };
  if (fact.open) return phrase(voice, 'receipt.station-open', values);
  return phrase(voice, 'receipt.station-closed', { ...values, until: untilText(fact.untilMs, voice) });
};

const turnedAway = (fact: FactOf<'loads-turned-away'>, voice: Voice): string => {
  const { station, words } = fact;
  const values = {
    station: stationName(voice, station),
    why: quoted(words, voice),
    time: time(voice, fact.atMs),
  };
  return fact.truck === null
    ? phrase(voice, 'receipt.turned-away', values)
    : phrase(voice, 'receipt.truck-turned-away', { ...values, truck: truckName(voice, fact.truck) });
};

/** One fact in one short sentence. */
const factLine = (fact: FactWithLine, voice: Voice): string => {
  const at = time(voice, fact.atMs);
  switch (fact.kind) {
    case 'truck-reported':
      return reported(fact, voice);
    case 'ticket-booked':
      return booked(fact.ticket, fact.atMs, voice);
    case 'line-seen':
      return phrase(voice, 'receipt.line-seen', {
        count: fact.ahead,
        station: stationName(voice, fact.station),
        time: at,
      });
    case 'pilers-seen':
      return pilers(fact, voice);
    case 'station-reported':
      return stationState(fact, voice);
    case 'loads-turned-away':
      return turnedAway(fact, voice);
    case 'root-measured': {
      const place = fact.station !== null ? stationName(voice, fact.station) : fieldName(voice, fact.field);
      return phrase(voice, 'receipt.root', {
        temperature: temperature(voice, fact.temperatureF),
        place,
        time: at,
      });
    }
    case 'crown-checked':
      return phrase(voice, fact.sound ? 'receipt.crown-sound' : 'receipt.crown-frosted', {
        field: fieldName(voice, fact.field),
        time: at,
      });
    case 'field-dug':
      return phrase(voice, 'receipt.field-dug', { field: fieldName(voice, fact.field), time: at });
    case 'acres-told':
      return phrase(voice, `receipt.acres.${fact.machine}`, {
        acres: number(voice, fact.acres, 1),
        field: fieldName(voice, fact.field),
        time: at,
      });
    case 'machine-reported':
      return phrase(voice, `receipt.machine-${fact.runs ? 'runs' : 'down'}.${fact.machine}`, {
        time: at,
        until: untilText(fact.untilMs, voice),
      });
    case 'word-taught':
      return fact.means === null
        ? phrase(voice, 'receipt.forgotten', { said: fact.said })
        : phrase(voice, 'receipt.taught', { said: fact.said, means: fact.means });
    case 'truck-taken':
      return phrase(voice, 'receipt.truck-taken', {
        person: personName(voice, fact.person),
        truck: truckName(voice, fact.truck),
      });
    case 'entry-corrected':
      return phrase(voice, 'receipt.correction');
    case 'shift-told':
      return shiftLine(fact, voice);
  }
};

const shiftLine = ({ off, noticesWhenOff }: FactOf<'shift-told'>, voice: Voice): string => {
  if (noticesWhenOff !== null)
    return phrase(voice, noticesWhenOff ? 'receipt.notices-when-off' : 'receipt.no-notices-when-off');
  return phrase(voice, off === true ? 'receipt.off-shift' : 'receipt.on-shift');
};

/** Those that receipts repeat. */
export const factLines = (facts: readonly Fact[], voice: Voice): string[] =>
  facts.filter(hasLine).map((fact) => factLine(fact, voice));

/** Of a fact's header only time and sender are data; the rest is bookkeeping. */
const bookkeeping = new Set(['id', 'cause', 'atMs', 'sentMs', 'heardMs']);

const entryData = (fact: Fact, iso: Iso): Data => ({
  ...Object.fromEntries(Object.entries(fact).filter(([name]) => !bookkeeping.has(name))),
  at: iso(fact.atMs),
});

export const entriesData = (facts: readonly Fact[], iso: Iso): Data[] =>
  facts.map((fact) => entryData(fact, iso));
