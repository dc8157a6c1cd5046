import { conceptsIn } from './concepts.ts';

/** What the ranker looks at in a message, as numbers of features: equal texts share a number, and rarely others do. */
export const FEATURES = 1 << 16;

/** A message as the ranker sees it. Words are those of `wordsFor`. */
export interface RankedMessage {
  words: readonly string[];
  /** What the sender's truck, or the sender, last did: one of the corpus's states; `none` = not known. */
  state: string;
  /** driver, foreman, grower, digger, topper. */
  role: string;
}

/** FNV-1a over UTF-16 units (http://www.isthe.com/chongo/tech/comp/fnv/): a whole number of 32 bits. */
export const fnv1a = (text: string): number => {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return hash >>> 0;
};

const featureOf = (text: string): number => fnv1a(text) % FEATURES;

const letterGroups = (word: string): string[] => {
  const edged = `<${word}>`;
  return [3, 4, 5].flatMap((size) =>
    Array.from({ length: Math.max(0, edged.length - size + 1) }, (_, at) => `c${edged.slice(at, at + size)}`),
  );
};

const neighbours = (words: readonly string[]): string[] => {
  const edged = ['^', ...words, '$'];
  const pairs = edged.slice(1).map((word, at) => `b${edged[at] ?? ''} ${word}`);
  const threes = edged.slice(2).flatMap((word, at) => {
    const [first, middle] = [edged[at] ?? '', edged[at + 1] ?? ''];
    return [`t${first} ${word}`, `3${first} ${middle} ${word}`];
  });
  return [...pairs, ...threes];
};

const isNumber = (word: string): boolean => word.startsWith('#') && !/^#(field|station)$/.test(word);

/** The numbers alone, in order: two weights and a serial are a ticket in any words. */
const numbers = (words: readonly string[]): string[] => {
  const all = words.filter(isNumber);
  const [first] = all;
  const beside = words.filter((word) => !word.startsWith('#'));
  return [`N${all.join(' ')}`, ...(first === undefined ? [] : beside.map((word) => `Nw${first}${word}`))];
};

const concepts = (words: readonly string[], state: string): string[] => {
  const found = conceptsIn(words);
  const pairs = found.slice(1).map((concept, at) => `kk${found[at] ?? ''} ${concept}`);
  const first = words[0] ?? '';
  return [
    ...found.flatMap((concept) => [`k${concept}`, `sk${state}${concept}`, `fk${first} ${concept}`]),
    ...pairs,
  ];
};

/** So few words are looked at as one, too. */
const SHORT = 4;

/** The numbers of the features that the message has, each once. */
export const featuresOf = (message: RankedMessage): number[] => {
  const { words, state, role } = message;
  const whole = words.length <= SHORT ? [`e${words.join(' ')}`, `E${state}${words.join(' ')}`] : [];
  const texts = [
    ...words.flatMap((word) => [`w${word}`, ...letterGroups(word), `s${state}${word}`, `r${role}${word}`]),
    ...neighbours(words),
    ...numbers(words),
    ...concepts(words, state),
    ...whole,
    ...[`S${state}`, `R${role}`, `SR${state}${role}`, `n${Math.min(words.length, 8)}`],
  ];
  return [...new Set(texts.map(featureOf))];
};
