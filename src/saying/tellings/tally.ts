import { ticketTons } from '../parts/figures.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { Data, Iso, TellingKind, TellingOf } from '../telling-kind.ts';
import { fieldName, phrase, tons, truckName } from '../voice.ts';
import type { Voice } from '../voice.ts';

const tallyText = ({ tally: told, asked, span }: TellingOf<'tally'>, voice: Voice): string => {
  const names = [
    ...(told.truck === null ? [] : [truckName(voice, told.truck)]),
    ...(told.field === null ? [] : [fieldName(voice, told.field)]),
  ];
  const who = names.map((name) => phrase(voice, 'tally.who', { name })).join('');
  const head = phrase(voice, `tally.${asked}`, {
    span: phrase(voice, `tally.${span}`),
    who,
    tons: tons(voice, told.netLb),
    loads: told.loads,
  });
  const byField = told.byField.map((line) =>
    phrase(voice, 'tally.field', {
      field: line.field === null ? phrase(voice, 'tally.no-field') : fieldName(voice, line.field),
      tons: tons(voice, line.netLb),
      loads: line.loads,
    }),
  );
  const missing =
    told.withoutTicket > 0 ? [phrase(voice, 'tally.without-ticket', { count: told.withoutTicket })] : [];
  const net = told.netLb > 0 ? [phrase(voice, 'tally.net')] : [];
  return [head, ...(told.field === null ? byField : []), ...missing, ...net].join('\n');
};

const tallyData = ({ tally: told, span }: TellingOf<'tally'>, iso: Iso): Data => ({
  span,
  loads: told.loads,
  tons: ticketTons(told.netLb),
  since: iso(told.sinceMs),
  byField: told.byField.map(({ field, loads, netLb }) => ({ field, loads, tons: ticketTons(netLb) })),
  byTruck: told.byTruck.map(({ truck, loads, netLb }) => ({ truck, loads, tons: ticketTons(netLb) })),
  withoutTicket: told.withoutTicket,
  truck: told.truck,
  field: told.field,
});

/** Tons and loads of a span, by field (by truck where one field was asked for), and what is missing. */
export const tally: TellingKind<'tally'> = {
  text: tallyText,
  data: tallyData,
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
