import { fieldEntry, limitsEntry, personEntry, stationEntry, truckEntry } from '../parts/lists.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind, TellingOf } from '../telling-kind.ts';
import { phrase } from '../voice.ts';
import type { Voice } from '../voice.ts';

const listText = ({ list: asked }: TellingOf<'list'>, voice: Voice): string => {
  const { roster } = voice;
  const joined = (names: readonly string[]): { names: string } => ({ names: names.join(', ') });
  switch (asked) {
    case 'people':
      return phrase(voice, 'list.people', joined(roster.people.map((p) => personEntry(p, voice))));
    case 'trucks':
      return phrase(voice, 'list.trucks', joined(roster.trucks.map((t) => truckEntry(t, voice))));
    case 'fields':
      return phrase(voice, 'list.fields', joined(roster.fields.map((f) => fieldEntry(f, voice))));
    case 'stations':
      return phrase(voice, 'list.stations', joined(roster.stations.map((s) => stationEntry(s, voice))));
    case 'limits':
      return limitsEntry(roster, voice);
  }
};

export const list: TellingKind<'list'> = {
  text: listText,
  data: ({ list: asked }) => ({ list: asked }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
