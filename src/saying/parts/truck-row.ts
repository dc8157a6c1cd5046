/** A truck on the board. */
import type { BoardRow } from '../../core/answers/board.ts';
import { isoOrNull } from './figures.ts';
import type { Data, Iso } from '../telling-kind.ts';
import { fieldName, phrase, stationName, time, truckName } from '../voice.ts';
import type { Voice } from '../voice.ts';

/** "at North station" or "from North 40", with a blank ahead; empty for a truck that is neither. */
export const placeOf = (row: BoardRow, voice: Voice): string => {
  const atStation = row.phase === 'in-line' || row.phase === 'on-piler';
  if (atStation && row.station !== null)
    return phrase(voice, 'board.at', { place: stationName(voice, row.station) });
  if (row.phase === 'hauling' && row.field !== null)
    return phrase(voice, 'board.from', { place: fieldName(voice, row.field) });
  return '';
};

/** Heard of, but where it is was worked out from a later message. */
export const isInferred = (row: BoardRow): boolean => row.phase !== null && row.source === 'inferred';

const noteOf = (row: BoardRow, voice: Voice): string => {
  const words = row.words === null ? '' : `: ${row.words}`;
  return isInferred(row) ? words + phrase(voice, 'board.inferred') : words;
};

/** One truck in one line: where, since when, how many loads, and whether that was told or worked out. */
export const rowText = (row: BoardRow, voice: Voice): string => {
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

export const rowData = (truck: BoardRow, iso: Iso): Data => {
  const { sinceMs, source, ...rest } = truck;
  return { ...rest, since: isoOrNull(iso, sinceMs), inferred: source === 'inferred' };
};
