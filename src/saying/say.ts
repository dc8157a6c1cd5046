/** A telling in words, in one language: always a full text; table, buttons and picture beside it. */
import type { Telling } from '../core/telling.ts';
import type { Said } from '../ports/chat.ts';
import { kindOf } from './tellings/index.ts';
import type { Voice } from './voice.ts';

export const say = (telling: Telling, voice: Voice): Said => {
  const kind = kindOf(telling);
  return {
    text: kind.text(voice),
    table: kind.table(voice),
    buttons: kind.buttons(voice),
    picture: kind.picture(voice),
    ring: kind.rings,
    mentions: [],
  };
};

/** For a room of a crew with several languages: the texts one under the other, the first one's buttons. */
export const sayToRoom = (telling: Telling, voices: readonly Voice[]): Said => {
  const [first, ...others] = voices.map((voice) => say(telling, voice));
  if (!first) throw new Error('A room is spoken to in at least one language.');
  return { ...first, text: [first, ...others].map((said) => said.text).join('\n\n') };
};
