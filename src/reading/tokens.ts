import { either } from './every-language.ts';

/**
 * A message cut into words, numbers and marks. `text` is folded (lower case, no accents, no apostrophes); `start` and
 * `end` are places in the text, so that a person's own words can be quoted.
 */
export interface Token {
  kind: 'word' | 'number' | 'ordinal' | 'time' | 'break' | 'question';
  text: string;
  start: number;
  end: number;
  /** True where nothing stands between it and the token before: the "pm" of "3pm". */
  glued: boolean;
}

export const fold = (text: string): string =>
  text.normalize('NFD').replace(/\p{M}/gu, '').replace(/['’`]/gu, '').toLowerCase();

/** In order: the first that fits wins. Thousands before decimals, so that 79,840 is one number and 79840,29320 two. */
const shapes = [
  // "Ten-four" is radio talk for "understood".
  ['code', /(?<![\d-])10-4(?![\d-])/],
  ['time', /(?<!\d)\d{1,2}:\d{2}(?!\d|:\d)/],
  ['ordinal', new RegExp(`\\d{1,2}${either(({ numbers }) => numbers.ordinalEnds)}(?!\\p{L})`, 'u')],
  [
    'number',
    /\d{1,3}(?:,\d{3})+(?:\.\d+)?(?!\d)|\d{1,3}(?:\.\d{3})+(?:,\d+)?(?!\d)|\d+[.,]\d{1,3}(?!\d)|\d+/,
  ],
  ['meridiem', /(?<!\p{L})[ap]\.\s?m\b\.?/u],
  ['word', /[\p{L}\p{M}'’`]+|[#@°%]/u],
  ['break', /[,;.!…\n/&+:()]|[-–—](?=\s)/],
  ['question', /\?/],
] as const;

const anyShape = new RegExp(shapes.map(([name, shape]) => `(?<${name}>${shape.source})`).join('|'), 'giu');

const kindOf = (groups: Record<string, string | undefined>): Token['kind'] => {
  const found = shapes.find(([name]) => groups[name] !== undefined)?.[0] ?? 'word';
  return found === 'meridiem' || found === 'code' ? 'word' : found;
};

const textOf = (kind: Token['kind'], raw: string): string => {
  switch (kind) {
    case 'word':
      return fold(raw).replace(/[.\s]/g, '');
    case 'ordinal':
      return raw.replace(/\D/g, '');
    case 'break':
      return ',';
    case 'number':
    case 'time':
    case 'question':
      return raw;
  }
};

/** `text` is taken in Unicode form C; so must be the text that `start` and `end` are used on. */
export const tokenize = (text: string): Token[] => {
  const tokens: Token[] = [];
  for (const match of text.matchAll(anyShape)) {
    const kind = kindOf(match.groups ?? {});
    const start = match.index;
    const glued = tokens.at(-1)?.end === start;
    tokens.push({ kind, text: textOf(kind, match[0]), start, end: start + match[0].length, glued });
  }
  return tokens.filter((token) => token.text !== '');
};
