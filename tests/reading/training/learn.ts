/**
 * Learns the ranker's weights: logistic regression for each act by stochastic gradient with AdaGrad steps (Duchi, Hazan &
 * Singer, JMLR 12, 2011). While learning, features and words are dropped, words misspelt and messages joined, so that
 * no single word decides. The same examples and seed give the same weights, bit for bit.
 */
import { FEATURES, featuresOf } from '../../../src/reading/ranker/features.ts';
import type { RankedMessage } from '../../../src/reading/ranker/features.ts';
import { mulberry32 } from '../../support/random.ts';
import type { Example } from './corpus.ts';

const ROUNDS = 25;
const FIRST_STEP = 0.5;
const FEATURE_DROPPED = 0.3;
const WORD_DROPPED = 0.03;
const WORD_MISSPELT = 0.1;
const STATE_DROPPED = 0.15;
const JOINED = 0.25;
const MOST_WORDS = 40;
/** Labels are the work of people: nothing is certain. */
const TRUE_AT = 0.94;
const FALSE_AT = 0.006;
const SHRINK = 1e-6;

export interface Weights {
  /** Feature by feature, one number an act. */
  weights: Float32Array;
  biases: Float32Array;
}

type Random = () => number;

const misspelt = (word: string, random: Random): string => {
  if (word.length < 4 || word.startsWith('#') || random() > WORD_MISSPELT) return word;
  const at = Math.floor(random() * (word.length - 1));
  const kind = random();
  const [a, b] = [word.slice(0, at), word.slice(at)];
  if (kind < 0.3) return a + b.slice(1);
  if (kind < 0.6) return `${a}${b[1] ?? ''}${b[0] ?? ''}${b.slice(2)}`;
  if (kind < 0.8) return a + ('aeiosntrl'[Math.floor(random() * 9)] ?? '') + b.slice(1);
  return a + (b[0] ?? '') + b;
};

interface Disturbed {
  message: RankedMessage;
  acts: ReadonlySet<string>;
}

const LINKS = [',', '.', 'and', 'y'];

const disturbed = (example: Example, all: readonly Example[], random: Random): Disturbed => {
  const { message } = example;
  const other = random() < JOINED ? all[Math.floor(random() * all.length)] : undefined;
  const joins =
    other !== undefined && other.acts.length > 0 && example.acts.length > 0 && example.acts.length < 3;
  const link = LINKS[Math.floor(random() * LINKS.length)] ?? ',';
  const words = joins ? [...message.words, link, ...other.message.words].slice(0, MOST_WORDS) : message.words;
  return {
    message: {
      words: words.filter(() => random() > WORD_DROPPED).map((word) => misspelt(word, random)),
      state: random() < STATE_DROPPED ? 'none' : message.state,
      role: message.role,
    },
    acts: new Set(joins ? [...example.acts, ...other.acts] : example.acts),
  };
};

const shuffled = <T>(list: readonly T[], random: Random): T[] => {
  const out = [...list];
  for (let at = out.length - 1; at > 0; at -= 1) {
    const other = Math.floor(random() * (at + 1));
    const [a, b] = [out[at], out[other]];
    if (a !== undefined && b !== undefined) [out[at], out[other]] = [b, a];
  }
  return out;
};

/** One message's step. Acts in `fair` are neither taught nor untaught. */
const step = (
  { weights, biases }: Weights,
  past: Weights,
  features: readonly number[],
  wanted: (number | null)[],
  rate: number,
): void => {
  const acts = wanted.length;
  const share = 1 / Math.sqrt(features.length);
  const sums = Float64Array.from(biases);
  for (const feature of features)
    for (let act = 0; act < acts; act += 1)
      sums[act] = (sums[act] ?? 0) + (weights[feature * acts + act] ?? 0) * share;
  wanted.forEach((value, act) => {
    if (value === null) return;
    const error = 1 / (1 + Math.exp(-(sums[act] ?? 0))) - value;
    past.biases[act] = (past.biases[act] ?? 0) + error * error;
    biases[act] = (biases[act] ?? 0) - (rate * error) / Math.sqrt(past.biases[act] ?? 1);
    if (Math.abs(error * share) < 1e-4) return;
    for (const feature of features) {
      const at = feature * acts + act;
      const slope = error * share + SHRINK * (weights[at] ?? 0);
      past.weights[at] = (past.weights[at] ?? 0) + slope * slope;
      weights[at] = (weights[at] ?? 0) - (rate * slope) / Math.sqrt(past.weights[at] ?? 1);
    }
  });
};

export const learn = (all: readonly Example[], acts: readonly string[], seed: number): Weights => {
  const random = mulberry32(seed);
  const size = FEATURES * acts.length;
  const learned = { weights: new Float32Array(size), biases: new Float32Array(acts.length).fill(-4) };
  const past = { weights: new Float32Array(size).fill(1e-3), biases: new Float32Array(acts.length).fill(1) };
  for (let round = 0; round < ROUNDS; round += 1) {
    const rate = FIRST_STEP * (1 - (0.9 * round) / ROUNDS);
    for (const example of shuffled(all, random)) {
      const { message, acts: held } = disturbed(example, all, random);
      const features = featuresOf(message).filter(() => random() > FEATURE_DROPPED);
      if (features.length === 0) continue;
      const fair = new Set(example.also.flat());
      const wanted = acts.map((act) => (held.has(act) ? TRUE_AT : fair.has(act) ? null : FALSE_AT));
      step(learned, past, features, wanted, rate);
    }
  }
  return learned;
};

/** As the product reads them: for each act a bias and a step, then one signed byte for each feature and act. */
export const asBytes = ({ weights, biases }: Weights): Uint8Array => {
  const acts = biases.length;
  const bytes = new Uint8Array(acts * 8 + weights.length);
  const view = new DataView(bytes.buffer);
  biases.forEach((bias, act) => {
    let largest = 0;
    for (let at = act; at < weights.length; at += acts)
      largest = Math.max(largest, Math.abs(weights[at] ?? 0));
    const size = largest === 0 ? 1 : largest / 127;
    view.setFloat32(act * 8, bias, true);
    view.setFloat32(act * 8 + 4, size, true);
    for (let at = act; at < weights.length; at += acts)
      view.setInt8(acts * 8 + at, Math.round((weights[at] ?? 0) / size));
  });
  return bytes;
};
