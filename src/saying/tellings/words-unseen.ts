import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { personName, phrase } from '../voice.ts';

/** Who has not confirmed words that were passed on. */
export const wordsUnseen: TellingKind<'words-unseen'> = {
  text: ({ words, seen, unseen }, voice) =>
    unseen.length === 0
      ? phrase(voice, 'unseen.all')
      : phrase(voice, 'unseen.some', {
          title: `"${words}"`,
          names: unseen.map((person) => personName(voice, person)).join(', '),
          seen: seen.length,
          all: seen.length + unseen.length,
        }),
  data: ({ words, seen, unseen }) => ({ words, seen, unseen }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
