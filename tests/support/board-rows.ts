/** A truck in every phase, and one that nobody has heard of. */
import type { BoardRow } from '../../src/core/answers/board.ts';
import type { Phase } from '../../src/core/haul/truck.ts';
import { at } from './given.ts';

const row: BoardRow = {
  truck: '3',
  phase: 'hauling',
  sinceMs: at('10:15'),
  source: 'stated',
  field: 'north-40',
  station: 'north-station',
  loads: 2,
  words: null,
};
const phases: Record<Phase, BoardRow> = {
  'at-field': { ...row, phase: 'at-field' },
  loading: { ...row, phase: 'loading', loads: 1 },
  hauling: row,
  'in-line': { ...row, phase: 'in-line' },
  'on-piler': { ...row, phase: 'on-piler', source: 'inferred' },
  returning: { ...row, phase: 'returning', source: 'ticket' },
  parked: { ...row, phase: 'parked', field: null, station: null },
  down: { ...row, phase: 'down', words: 'flat' },
};
const unheard: BoardRow = {
  ...row,
  phase: null,
  sinceMs: null,
  source: 'inferred',
  field: null,
  station: null,
  loads: 0,
};
export const boardRows: readonly BoardRow[] = [...Object.values(phases), unheard];
