import type { LanguageWords } from '../language-words.ts';

export const rooms: LanguageWords['rooms'] = {
  use: 'use',
  leave: '(?:stop|quit) using',
  this: 'this',
  room: 'room|channel',
  around: 'please pls plz now',
  known: 'use using room channel',
};
