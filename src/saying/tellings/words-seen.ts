import { never, noButtons, noData } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

/** Thanks for a confirmation. */
export const wordsSeen: TellingKind<'words-seen'> = {
  text: (_, voice) => phrase(voice, 'notice.seen'),
  data: noData,
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
