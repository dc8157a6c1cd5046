import { never, noButtons, noData } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

/** Stands in the place of an earlier board. */
export const boardMoved: TellingKind<'board-moved'> = {
  text: (_, voice) => phrase(voice, 'board.moved'),
  data: noData,
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
