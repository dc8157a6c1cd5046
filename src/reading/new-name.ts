import type { Roster } from '../core/roster.ts';
import { listed, wordSet } from './every-language.ts';
import type { Token } from './tokens.ts';

export interface Words {
  text: string;
  tokens: readonly Token[];
  roster: Roster;
}

/** Where the words of a new name end. */
const stops = new Set([
  ...['@', ','],
  ...listed(
    ({ lists }) => lists.afterName,
    ({ calledBy }) => calledBy,
  ),
]);
const areaUnits = wordSet(
  ({ lists }) => lists.keys.acres,
  ({ lists }) => lists.keys.hectares,
);
const MAX_NAME_WORDS = 4;

/** The words of a new name, as written, from this token on; null where there are none, or a sentence. */
export const newName = ({ text, tokens }: Words, at: number): { name: string; end: number } | null => {
  const stop = tokens.findIndex(
    (token, i) =>
      i >= at &&
      (stops.has(token.text) || (token.kind === 'number' && areaUnits.has(tokens[i + 1]?.text ?? ''))),
  );
  const end = stop === -1 ? tokens.length : stop;
  const [first, last] = [tokens[at], tokens[end - 1]];
  if (first === undefined || last === undefined || end <= at || end - at > MAX_NAME_WORDS) return null;
  return { name: text.slice(first.start, last.end), end };
};
