import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

export const language: TellingKind<'language'> = {
  text: (_, voice) => phrase(voice, 'language.set'),
  data: ({ language: chosen }) => ({ language: chosen }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
