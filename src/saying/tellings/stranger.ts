import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

export const stranger: TellingKind<'stranger'> = {
  text: ({ name, platform }, voice) => phrase(voice, 'stranger.alert', { name, platform }),
  data: ({ platform, user }) => ({ platform, user }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
