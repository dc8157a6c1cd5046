import type { Intent } from '../core/intent.ts';
import { either, wordSet } from './every-language.ts';
import { isBotName } from './little-words.ts';
import type { Token } from './tokens.ts';

const THIS = either(({ rooms }) => rooms.this);
const ROOM = either(({ rooms }) => rooms.room);
const use = new RegExp(`^${either(({ rooms }) => rooms.use)} ${THIS} ${ROOM}$`);
const leave = new RegExp(`^${either(({ rooms }) => rooms.leave)} ${THIS} ${ROOM}$`);
/** Words that may stand around it. */
const around = wordSet(({ rooms }) => rooms.around);

/** "Use this room", where that is the whole message: in the middle of a talk it means something else. */
export const readRoomOrder = (tokens: readonly Token[]): Intent | null => {
  if (tokens.some(({ kind }) => kind === 'question')) return null;
  const words = tokens.filter(({ kind, text }) => kind !== 'break' && !around.has(text) && !isBotName(text));
  const said = words.map(({ text }) => text).join(' ');
  if (use.test(said)) return { do: 'use-room', use: true };
  return leave.test(said) ? { do: 'use-room', use: false } : null;
};
