import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase } from '../voice.ts';

/** The receipt of words that are passed on; who meant an order hears that it is none. */
export const wordsPassed: TellingKind<'words-passed'> = {
  text: ({ fact: { to, toAll, words, soundsLikeOrder } }, voice) => {
    const room = toAll && voice.roster.rooms.length > 0 ? phrase(voice, 'words.and-room') : '';
    const passed = phrase(voice, 'words.passed', { count: to.length, room, words });
    return soundsLikeOrder ? `${passed}\n${phrase(voice, 'words.no-order')}` : passed;
  },
  data: ({ fact: { to, toAll, words, soundsLikeOrder } }) => ({ to, toAll, words, soundsLikeOrder }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
