/** Numbers that a phone has heard as other words, where number words stand around them: "for ate too for five". */
import { tableOf } from './every-language.ts';
import { numberWords } from './numbers.ts';
import type { Token } from './tokens.ts';

const misheard = tableOf(({ numbers }) => numbers.misheard);
const counting = new Set(numberWords);
/** So many in a row are no chance. */
const RUN = 3;

const isNumber = ({ kind, text }: Token): boolean => kind === 'number' || counting.has(text);
const isHeard = ({ kind, text }: Token): boolean => kind === 'word' && misheard.has(text);

/** Where the run of numbers, heard rightly or not, that starts here ends. */
const runFrom = (tokens: readonly Token[], at: number): number => {
  let end = at;
  for (
    let token = tokens[end];
    token !== undefined && (isNumber(token) || isHeard(token));
    token = tokens[end]
  )
    end += 1;
  return end;
};

export const withHeardNumbers = (tokens: readonly Token[]): Token[] => {
  const out: Token[] = [];
  for (let at = 0; at < tokens.length;) {
    const end = Math.max(at + 1, runFrom(tokens, at));
    const run = tokens.slice(at, end);
    const isRun = run.length >= RUN && run.some(isNumber);
    out.push(
      ...run.map((token) =>
        isRun && isHeard(token) ? { ...token, text: misheard.get(token.text) ?? '' } : token,
      ),
    );
    at = end;
  }
  return out;
};
