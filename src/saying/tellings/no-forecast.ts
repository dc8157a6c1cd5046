import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase, stationName } from '../voice.ts';

export const noForecast: TellingKind<'no-forecast'> = {
  text: ({ station, why }, voice) =>
    phrase(voice, 'no-forecast', { station: stationName(voice, station), why }),
  data: ({ station, why }) => ({ station, why }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
