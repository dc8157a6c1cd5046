import { always, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase, time } from '../voice.ts';

export const emergency: TellingKind<'emergency'> = {
  text: ({ name, truck, atMs, words }, voice) =>
    phrase(voice, 'emergency.alert', {
      name,
      truck: truck === null ? '' : phrase(voice, 'emergency.truck', { truck }),
      time: time(voice, atMs),
      words,
    }),
  data: ({ name, truck, words, atMs }, iso) => ({ name, truck, words, at: iso(atMs) }),
  buttons: noButtons,
  rings: always,
  holdsMin: null,
};
