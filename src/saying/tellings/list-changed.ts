import type { ListChange } from '../../core/roster.ts';
import { fieldEntry, limitsEntry, personEntry, stationEntry, truckEntry } from '../parts/lists.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';
import type { Voice } from '../voice.ts';

type Entered = Exclude<Extract<ListChange, { put: unknown }>, { list: 'rooms' }>;

const entryText = (change: Entered, voice: Voice): string => {
  switch (change.list) {
    case 'people':
      return personEntry(change.put, voice);
    case 'trucks':
      return truckEntry(change.put, voice);
    case 'fields':
      return fieldEntry(change.put, voice);
    case 'stations':
      return stationEntry(change.put, voice);
    case 'limits':
      return limitsEntry(voice.roster, voice);
  }
};

const changeText = (change: ListChange, voice: Voice): string => {
  if (change.list === 'rooms') return phrase(voice, 'put' in change ? 'room.used' : 'room.left');
  return 'remove' in change
    ? phrase(voice, 'list.removed', { name: change.remove })
    : phrase(voice, 'list.put', { entry: entryText(change, voice) });
};

export const listChanged: TellingKind<'list-changed'> = {
  text: ({ change }, voice) => changeText(change, voice),
  data: ({ change }) => ({ ...change }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
