import type { BoardRow } from '../core/answers/board.ts';
import type { LeftInField } from '../core/answers/left.ts';
import type { Telling } from '../core/telling.ts';
import type { Said } from '../ports/chat.ts';
import { fieldName, number, phrase, stationName, time, tons, truckName } from './voice.ts';
import type { Voice } from './voice.ts';

type Table = NonNullable<Said['table']>;

/** Tons and loads of a span, by field (by truck where one field was asked for), and what is missing. */
export const tallyText = (
  { tally, asked, span }: Extract<Telling, { tell: 'tally' }>,
  voice: Voice,
): string => {
  const names = [
    ...(tally.truck === null ? [] : [truckName(voice, tally.truck)]),
    ...(tally.field === null ? [] : [fieldName(voice, tally.field)]),
  ];
  const who = names.map((name) => phrase(voice, 'tally.who', { name })).join('');
  const head = phrase(voice, `tally.${asked}`, {
    span: phrase(voice, `tally.${span}`),
    who,
    tons: tons(voice, tally.netLb),
    loads: tally.loads,
  });
  const byField = tally.byField.map((line) =>
    phrase(voice, 'tally.field', {
      field: line.field === null ? phrase(voice, 'tally.no-field') : fieldName(voice, line.field),
      tons: tons(voice, line.netLb),
      loads: line.loads,
    }),
  );
  const missing =
    tally.withoutTicket > 0 ? [phrase(voice, 'tally.without-ticket', { count: tally.withoutTicket })] : [];
  const net = tally.netLb > 0 ? [phrase(voice, 'tally.net')] : [];
  return [head, ...(tally.field === null ? byField : []), ...missing, ...net].join('\n');
};

/** What is still in the ground, field by field. */
export const leftText = (fields: readonly LeftInField[], voice: Voice): string => {
  if (fields.length === 0) return phrase(voice, 'left.none');
  const lines = fields.map((line) =>
    phrase(voice, line.hoursLeft === null ? 'left.field' : 'left.field-hours', {
      field: fieldName(voice, line.field),
      tons: tons(voice, line.leftLb),
      acres: number(line.acresLeft, 1),
      loads: line.loadsLeft,
      hours: number(line.hoursLeft ?? 0, 1),
    }),
  );
  return [...lines, phrase(voice, 'left.by-yield')].join('\n');
};

const placeOf = (row: BoardRow, voice: Voice): string => {
  const atStation = row.phase === 'in-line' || row.phase === 'on-piler';
  if (atStation && row.station !== null)
    return phrase(voice, 'board.at', { place: stationName(voice, row.station) });
  if (row.phase === 'hauling' && row.field !== null)
    return phrase(voice, 'board.from', { place: fieldName(voice, row.field) });
  return '';
};

/** Heard of, but where it is was worked out from a later message. */
const isInferred = (row: BoardRow): boolean => row.phase !== null && row.source === 'inferred';

const noteOf = (row: BoardRow, voice: Voice): string => {
  const words = row.words === null ? '' : `: ${row.words}`;
  return isInferred(row) ? words + phrase(voice, 'board.inferred') : words;
};

/** One truck in one line: where, since when, how many loads, and whether that was told or worked out. */
export const boardLine = (row: BoardRow, voice: Voice): string => {
  const truck = truckName(voice, row.truck);
  if (row.phase === null || row.sinceMs === null) return phrase(voice, 'board.unheard', { truck });
  return phrase(voice, 'board.row', {
    truck,
    phase: phrase(voice, `phase.${row.phase}`),
    place: placeOf(row, voice),
    since: phrase(voice, 'board.since', { time: time(voice, row.sinceMs) }),
    loads: row.loads,
    note: noteOf(row, voice),
  });
};

export const boardText = (rows: readonly BoardRow[], voice: Voice): string =>
  [
    phrase(voice, 'board.title', { time: time(voice, voice.nowMs) }),
    ...rows.map((row) => boardLine(row, voice)),
    ...(rows.some(isInferred) ? [phrase(voice, 'board.mark')] : []),
  ].join('\n');

export const boardTable = (rows: readonly BoardRow[], voice: Voice): Table => ({
  header: (['truck', 'phase', 'since', 'loads'] as const).map((column) =>
    phrase(voice, `board.head.${column}`),
  ),
  rows: rows.map((row) => [
    truckName(voice, row.truck),
    row.phase === null
      ? '-'
      : phrase(voice, `phase.${row.phase}`) + placeOf(row, voice) + (isInferred(row) ? ' *' : ''),
    row.sinceMs === null ? '-' : time(voice, row.sinceMs),
    String(row.loads),
  ]),
});

export const ticketsText = (
  { tickets, withoutTicket }: Extract<Telling, { tell: 'tickets' }>,
  voice: Voice,
): string => {
  if (tickets.length === 0 && withoutTicket === 0) return phrase(voice, 'tickets.none');
  const rows = tickets.map((ticket) =>
    phrase(voice, 'tickets.row', {
      serial: ticket.serial ?? phrase(voice, 'tickets.no-serial'),
      truck: truckName(voice, ticket.truck),
      tons: tons(voice, ticket.netLb),
      time: time(voice, ticket.atMs),
    }),
  );
  const missing = withoutTicket > 0 ? [phrase(voice, 'tally.without-ticket', { count: withoutTicket })] : [];
  return [phrase(voice, 'tickets.title', { count: tickets.length }), ...rows, ...missing].join('\n');
};
