import { never, noButtons, noData } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

export const strangerAnswer: TellingKind<'stranger-answer'> = {
  text: (_, voice) => phrase(voice, 'stranger.answer'),
  data: noData,
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
