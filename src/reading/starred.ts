/** "*28120", "48213*": the right word alone, with a star, for the one that was sent before. */
import type { Reading } from '../core/intent.ts';
import { amountsIn } from './amounts.ts';
import { elementsOf } from './elements.ts';
import type { Hearing } from './hearing.ts';
import { likelyReadings } from './likely.ts';
import { isLittle } from './little-words.ts';
import { namesOf } from './names.ts';
import { withNumbers } from './numbers.ts';
import { tokenize } from './tokens.ts';

const SHAPE = /^\s*(?:\*\s*([^*]+)|([^*]+?)\s*\*)\s*$/u;

/**
 * The correction, where the words beside the star are nothing but what is set: taken where that is clear, else asked about.
 * Null = they are something else.
 */
export const readStarred = (text: string, hearing: Hearing): Reading | null => {
  const match = SHAPE.exec(text);
  const said = match?.[1] ?? match?.[2];
  if (said === undefined) return null;
  const tokens = withNumbers(tokenize(said));
  const elements = elementsOf(said, tokens, namesOf(hearing.roster));
  const isOnlySlots = elements.every((element) => element.is !== 'word' || isLittle(element.text));
  if (!isOnlySlots || !elements.some(({ is }) => is === 'slot')) return null;
  const parts = { elements, amounts: amountsIn(tokens) };
  const readings = likelyReadings(['correct'], said, parts, () => 0, hearing);
  const [first] = readings;
  if (first === undefined) return null;
  return first.isWhole
    ? { found: 'intents', intents: first.intents }
    : { found: 'likely', readings: readings.map(({ intents }) => intents) };
};
