import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase, stationName } from '../voice.ts';

export const forecastBack: TellingKind<'forecast-back'> = {
  text: ({ station }, voice) => phrase(voice, 'forecast-back', { station: stationName(voice, station) }),
  data: ({ station }) => ({ station }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
