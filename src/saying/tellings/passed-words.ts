import { gotItButton } from '../parts/buttons.ts';
import { never } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { personName, phrase } from '../voice.ts';

/** In quotes and with the name of who says so: no words of ours, and no order. */
export const passedWords: TellingKind<'passed-words'> = {
  text: ({ fact: { by, toAll, words } }, voice) => {
    const person = by === null ? '' : personName(voice, by);
    const said = phrase(voice, toAll ? 'words.to-all' : 'words.to-some', { person, words });
    return `${said}\n${phrase(voice, 'notice.reply')}`;
  },
  data: ({ fact: { by, to, toAll, words, atMs } }, iso) => ({ by, to, toAll, words, at: iso(atMs) }),
  buttons: (_, voice) => [gotItButton(voice)],
  rings: ({ rings }) => rings,
  restsOnForecast: never,
  holdsMin: null,
};
