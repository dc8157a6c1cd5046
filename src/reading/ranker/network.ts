/**
 * The second learned reader: a small network that sees which words stand beside which, where the other (linear.ts) sees
 * only which words there are. Two layers of attention over the words, each a sum of its pieces and concepts (Vaswani et
 * al., Attention Is All You Need, 2017), learned by tests/reading/training/network.py.
 */
import type { RankedMessage } from './features.ts';
import type { RankedAct, Ranker } from './rank.ts';
import { NETWORK } from './network-shape.ts';
import { rowsOf } from './network-rows.ts';
import { weightsIn } from './network-weights.ts';
import type { LayerWeights, Linear, Matrix, NetworkWeights, Norm } from './network-weights.ts';

const { width: WIDTH, heads: HEADS } = NETWORK.shape;
const PER_HEAD = WIDTH / HEADS;
/** As PyTorch's LayerNorm has it. */
const EPSILON = 1e-5;

/** Rows one behind the other. */
type Rows = Float32Array;

const dot = (a: Rows, atA: number, b: Rows, atB: number, length: number): number => {
  let sum = 0;
  for (let i = 0; i < length; i += 1) sum += (a[atA + i] ?? 0) * (b[atB + i] ?? 0);
  return sum;
};

/** Four rows at once, so that each weight is fetched once for them and no sum waits for another: twice as fast. */
const throughFour = (rows: Rows, row: number, { weights, biases }: Linear, out: Rows): void => {
  const [wide, narrow, start] = [weights.columns, weights.rows, row * weights.columns];
  for (let to = 0; to < narrow; to += 1) {
    let [first, second, third, fourth] = [0, 0, 0, 0];
    for (let i = 0; i < wide; i += 1) {
      const weight = weights.values[to * wide + i] ?? 0;
      first += (rows[start + i] ?? 0) * weight;
      second += (rows[start + wide + i] ?? 0) * weight;
      third += (rows[start + 2 * wide + i] ?? 0) * weight;
      fourth += (rows[start + 3 * wide + i] ?? 0) * weight;
    }
    const bias = biases[to] ?? 0;
    out[row * narrow + to] = first + bias;
    out[(row + 1) * narrow + to] = second + bias;
    out[(row + 2) * narrow + to] = third + bias;
    out[(row + 3) * narrow + to] = fourth + bias;
  }
};

const through = (rows: Rows, linear: Linear): Rows => {
  const { weights, biases } = linear;
  const [wide, narrow] = [weights.columns, weights.rows];
  const count = rows.length / wide;
  const out = new Float32Array(count * narrow);
  let row = 0;
  for (; row + 4 <= count; row += 4) throughFour(rows, row, linear, out);
  for (; row < count; row += 1)
    for (let to = 0; to < narrow; to += 1)
      out[row * narrow + to] = dot(rows, row * wide, weights.values, to * wide, wide) + (biases[to] ?? 0);
  return out;
};

const normed = (rows: Rows, { gains, offsets }: Norm): Rows => {
  const out = new Float32Array(rows.length);
  for (let start = 0; start < rows.length; start += WIDTH) {
    const row = rows.subarray(start, start + WIDTH);
    const mean = row.reduce((sum, value) => sum + value, 0) / WIDTH;
    const variance = row.reduce((sum, value) => sum + (value - mean) ** 2, 0) / WIDTH;
    const share = 1 / Math.sqrt(variance + EPSILON);
    for (let i = 0; i < WIDTH; i += 1)
      out[start + i] = ((row[i] ?? 0) - mean) * share * (gains[i] ?? 1) + (offsets[i] ?? 0);
  }
  return out;
};

const softmax = (values: Float32Array): Float32Array => {
  const most = values.reduce((a, b) => Math.max(a, b), -Infinity);
  const powers = values.map((value) => Math.exp(value - most));
  const sum = powers.reduce((a, b) => a + b, 0);
  return powers.map((power) => power / sum);
};

/** Each row looks at all rows, in several ways at once. */
const attended = (asked: Rows, count: number): Rows => {
  const out = new Float32Array(count * WIDTH);
  const at = (row: number, part: number, head: number): number => (row * 3 + part) * WIDTH + head * PER_HEAD;
  for (let head = 0; head < HEADS; head += 1)
    for (let row = 0; row < count; row += 1) {
      const looks = new Float32Array(count);
      for (let other = 0; other < count; other += 1)
        looks[other] =
          dot(asked, at(row, 0, head), asked, at(other, 1, head), PER_HEAD) / Math.sqrt(PER_HEAD);
      const shares = softmax(looks);
      for (let other = 0; other < count; other += 1)
        for (let i = 0; i < PER_HEAD; i += 1) {
          const to = row * WIDTH + head * PER_HEAD + i;
          out[to] = (out[to] ?? 0) + (shares[other] ?? 0) * (asked[at(other, 2, head) + i] ?? 0);
        }
    }
  return out;
};

const sum = (a: Rows, b: Rows): Rows => a.map((value, i) => value + (b[i] ?? 0));

const layered = (rows: Rows, layer: LayerWeights): Rows => {
  const count = rows.length / WIDTH;
  const heard = attended(through(normed(rows, layer.beforeAttention), layer.asked), count);
  const seen = sum(rows, through(heard, layer.told));
  const wider = through(normed(seen, layer.beforeWider), layer.wider).map((value) => Math.max(0, value));
  return sum(seen, through(wider, layer.narrower));
};

const added = (out: Rows, start: number, { values }: Matrix, row: number, share: number): void => {
  for (let i = 0; i < WIDTH; i += 1)
    out[start + i] = (out[start + i] ?? 0) + (values[row * WIDTH + i] ?? 0) * share;
};

/** The sender's role and what the truck last did, then the words. */
const firstRows = ({ words, state, role }: RankedMessage, weights: NetworkWeights): Rows => {
  const rows = rowsOf(words);
  const out = new Float32Array((rows.length + 1) * WIDTH);
  added(
    out,
    0,
    weights.states,
    Math.max(
      0,
      NETWORK.states.findIndex((one) => one === state),
    ),
    1,
  );
  added(
    out,
    0,
    weights.roles,
    Math.max(
      0,
      NETWORK.roles.findIndex((one) => one === role),
    ),
    1,
  );
  rows.forEach((pieces, at) => {
    const start = (at + 1) * WIDTH;
    for (const piece of pieces) added(out, start, weights.table, piece, 1 / Math.sqrt(pieces.length));
    added(out, start, weights.places, at, 1);
  });
  return out;
};

/** Each act looks for its evidence among the rows by itself. */
const evidence = (rows: Rows, act: number, weights: NetworkWeights, keys: Rows, values: Rows): number => {
  const count = rows.length / WIDTH;
  const looks = Float32Array.from(
    { length: count },
    (_, row) => dot(weights.questions.values, act * WIDTH, keys, row * WIDTH, WIDTH) / Math.sqrt(WIDTH),
  );
  const { weights: answers, biases } = weights.answers;
  return softmax(looks).reduce(
    (total, share, row) => total + share * dot(answers.values, act * WIDTH, values, row * WIDTH, WIDTH),
    biases[act] ?? 0,
  );
};

/** @throws Error if the bytes are not weights for these acts. */
export const openNetwork = <Act extends string>(bytes: Uint8Array, acts: readonly Act[]): Ranker<Act> => {
  const weights = weightsIn(bytes, acts.length);
  return (message) => {
    const rows = weights.layers.reduce(layered, firstRows(message, weights));
    const whole = through(rows.subarray(0, WIDTH), weights.whole);
    const [keys, values] = [through(rows, weights.keys), through(rows, weights.values)];
    const ranked = acts.map((act, at): RankedAct<Act> => {
      const found = evidence(rows, at, weights, keys, values) + (whole[at] ?? 0);
      return { act, certainty: 1 / (1 + Math.exp(-found)) };
    });
    return ranked.sort((a, b) => b.certainty - a.certainty);
  };
};
