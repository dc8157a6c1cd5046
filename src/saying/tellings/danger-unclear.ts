import { always, never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase, time } from '../voice.ts';

export const dangerUnclear: TellingKind<'danger-unclear'> = {
  text: ({ name, truck, atMs, words }, voice) =>
    phrase(voice, 'emergency.unclear', {
      name,
      truck: truck === null ? '' : phrase(voice, 'emergency.truck', { truck }),
      time: time(voice, atMs),
      words,
    }),
  data: ({ name, truck, words, atMs }, iso) => ({ name, truck, words, at: iso(atMs) }),
  buttons: noButtons,
  rings: always,
  restsOnForecast: never,
  holdsMin: null,
};
