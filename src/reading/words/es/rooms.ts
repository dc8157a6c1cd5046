import type { LanguageWords } from '../language-words.ts';

export const rooms: LanguageWords['rooms'] = {
  use: 'usa|usar|usen',
  leave: '(?:ya )?no (?:use|uses|usar|usen) mas|(?:deja|deje|dejar|dejen)(?: de usar)?',
  this: 'esta|este',
  room: 'sala|canal',
  around: 'por favor porfavor ahora',
  known: 'usa usar usen uses sala canal',
};
