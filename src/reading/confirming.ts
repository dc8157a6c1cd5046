/** "Got it, topper stops in time": who says first that it was seen has seen it, whatever the rest may mean. */
import type { Intent, Reading } from '../core/intent.ts';
import { mayManage } from '../core/roster.ts';
import type { Hearing } from './hearing.ts';
import { isOrderGiven } from './order-given.ts';
import { read } from './read.ts';
import { tokenize } from './tokens.ts';

const isSeen = ({ do: what }: Intent): boolean => what === 'acknowledge';

/** The words before the first comma or full stop say so, and nothing else. */
const beginsSo = (text: string, hearing: Hearing): boolean => {
  const end = tokenize(text).find(({ kind }) => kind === 'break')?.start;
  if (end === undefined) return false;
  const head = read(text.slice(0, end), hearing);
  return head.found === 'intents' && head.intents.length > 0 && head.intents.every(isSeen);
};

/** Of several readings that all confirm, the plain one is taken; but for what may be an order of foreman or grower. */
export const confirmedFirst = (reading: Reading, text: string, hearing: Hearing): Reading => {
  if (reading.found !== 'likely' || !reading.readings.every((intents) => intents.some(isSeen)))
    return reading;
  const mayOrder = hearing.speaker !== null && mayManage(hearing.speaker);
  if (mayOrder && reading.readings.flat().some(isOrderGiven)) return reading;
  return beginsSo(text, hearing) ? { found: 'intents', intents: [{ do: 'acknowledge' }] } : reading;
};
