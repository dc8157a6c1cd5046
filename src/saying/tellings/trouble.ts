import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

/** The bot itself failed. */
export const trouble: TellingKind<'trouble'> = {
  text: ({ reference }, voice) => phrase(voice, 'trouble', { reference }),
  data: ({ reference }) => ({ reference }),
  buttons: noButtons,
  rings: never,
  holdsMin: null,
};
