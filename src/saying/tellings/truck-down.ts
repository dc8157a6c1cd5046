import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { personName, phrase, time, truckName } from '../voice.ts';

export const truckDown: TellingKind<'truck-down'> = {
  text: ({ truck, words, by, atMs }, voice) =>
    phrase(voice, 'truck-down', {
      truck: truckName(voice, truck),
      time: time(voice, atMs),
      person: by === null ? '' : personName(voice, by),
      words: words ?? phrase(voice, 'truck-down.no-words'),
    }),
  data: ({ truck, words, atMs }, iso) => ({ truck, words, at: iso(atMs) }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
