import type { Intent } from '../core/intent.ts';
import type { Token } from './tokens.ts';

const ROOM = '(?:this|esta|este) (?:room|channel|sala|canal)';
const use = new RegExp(`^(?:use|usa|usar|usen) ${ROOM}$`);
const leave = new RegExp(
  `^(?:(?:stop|quit) using|(?:ya )?no (?:use|uses|usar|usen) mas|(?:deja|deje|dejar|dejen)(?: de usar)?) ${ROOM}$`,
);
/** Words that may stand around it. */
const around = /^(fieldbell|bot|please|pls|plz|por|favor|porfavor|now|ahora)$/;

export const roomWords: readonly string[] = 'use using usa usar usen uses room channel sala canal'.split(' ');

/** "Use this room", where that is the whole message: in the middle of a talk it means something else. */
export const readRoomOrder = (tokens: readonly Token[]): Intent | null => {
  if (tokens.some(({ kind }) => kind === 'question')) return null;
  const words = tokens.filter(({ kind, text }) => kind !== 'break' && !around.test(text));
  const said = words.map(({ text }) => text).join(' ');
  if (use.test(said)) return { do: 'use-room', use: true };
  return leave.test(said) ? { do: 'use-room', use: false } : null;
};
