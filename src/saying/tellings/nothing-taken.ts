import { never, noButtons, noData } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

/** None of the readings was meant. */
export const nothingTaken: TellingKind<'nothing-taken'> = {
  text: (_, voice) => phrase(voice, 'offer.nothing-taken'),
  data: noData,
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
