import { rowData, rowText } from '../parts/truck-row.ts';
import { ANSWER_HOLDS_MIN, never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';

/** Where one truck is. */
export const truck: TellingKind<'truck'> = {
  text: ({ row }, voice) => rowText(row, voice),
  data: ({ row }, iso) => rowData(row, iso),
  buttons: noButtons,
  rings: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
