import type { Said } from '../../ports/chat.ts';
import { exceptionLines, unforecastLine } from '../parts/dig.ts';
import { noticeShort } from '../parts/notice.ts';
import { isInferred, placeOf, rowData, rowText } from '../parts/truck-row.ts';
import { ANSWER_HOLDS_MIN, never, noButtons } from '../telling-kind.ts';
import type { TellingKind, TellingOf } from '../telling-kind.ts';
import { phrase, time, truckName } from '../voice.ts';
import type { Voice } from '../voice.ts';

type Table = NonNullable<Said['table']>;

/** Of the dig only what is out of the ordinary. */
const boardText = ({ rows, dig }: TellingOf<'board'>, voice: Voice): string =>
  [
    ...dig.holds.map((hold) => noticeShort(hold, dig.rain, voice)),
    ...exceptionLines(dig, voice),
    // A place that never had a forecast is nothing out of the ordinary.
    ...dig.unforecast
      .filter(({ sinceMs }) => sinceMs !== null)
      .map((one) => unforecastLine('may-dig.unforecast', one, voice)),
    phrase(voice, 'board.title', { time: time(voice, voice.nowMs) }),
    ...rows.map((row) => rowText(row, voice)),
    ...(rows.some(isInferred) ? [phrase(voice, 'board.mark')] : []),
  ].join('\n');

const boardTable = ({ rows }: TellingOf<'board'>, voice: Voice): Table => ({
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

export const board: TellingKind<'board'> = {
  text: boardText,
  data: ({ rows }, iso) => ({ trucks: rows.map((row) => rowData(row, iso)) }),
  buttons: noButtons,
  table: boardTable,
  rings: never,
  restsOnForecast: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
