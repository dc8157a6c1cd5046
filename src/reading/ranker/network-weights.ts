/** The network's weights as network.py writes them. */
import { NETWORK } from './network-shape.ts';

const { width: WIDTH, wider: WIDER, layers: LAYERS, pieces: PIECES, mostWords: MOST_WORDS } = NETWORK.shape;

export interface Matrix {
  rows: number;
  columns: number;
  /** Row by row. */
  values: Float32Array;
}

export interface Linear {
  weights: Matrix;
  biases: Float32Array;
}

export interface Norm {
  gains: Float32Array;
  offsets: Float32Array;
}

export interface LayerWeights {
  beforeAttention: Norm;
  beforeWider: Norm;
  asked: Linear;
  told: Linear;
  wider: Linear;
  narrower: Linear;
}

export interface NetworkWeights {
  table: Matrix;
  places: Matrix;
  states: Matrix;
  roles: Matrix;
  questions: Matrix;
  layers: readonly LayerWeights[];
  keys: Linear;
  values: Linear;
  answers: Linear;
  whole: Linear;
}

/** Reads one piece of the file after the other. */
interface Reader {
  matrix: (rows: number, columns: number) => Matrix;
  vector: (length: number) => Float32Array;
  left: () => number;
}

const readerOf = (bytes: Uint8Array): Reader => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 0;
  const take = (length: number): number => {
    if (at + length > bytes.length)
      throw new Error('The network has fewer weights than its shape: train it again.');
    at += length;
    return at - length;
  };
  const vector = (length: number): Float32Array => {
    const start = take(length * 4);
    return Float32Array.from({ length }, (_, i) => view.getFloat32(start + i * 4, true));
  };
  const matrix = (rows: number, columns: number): Matrix => {
    const scales = vector(rows);
    const start = take(rows * columns);
    const values = new Float32Array(rows * columns);
    for (let i = 0; i < values.length; i += 1)
      values[i] = view.getInt8(start + i) * (scales[Math.floor(i / columns)] ?? 0);
    return { rows, columns, values };
  };
  return { matrix, vector, left: () => bytes.length - at };
};

const linear = ({ matrix, vector }: Reader, to: number, from: number): Linear => ({
  weights: matrix(to, from),
  biases: vector(to),
});

const norm = ({ vector }: Reader): Norm => ({ gains: vector(WIDTH), offsets: vector(WIDTH) });

const layer = (reader: Reader): LayerWeights => ({
  beforeAttention: norm(reader),
  beforeWider: norm(reader),
  asked: linear(reader, 3 * WIDTH, WIDTH),
  told: linear(reader, WIDTH, WIDTH),
  wider: linear(reader, WIDER, WIDTH),
  narrower: linear(reader, WIDTH, WIDER),
});

/** @throws Error if there are more or fewer of them than the shape has. */
export const weightsIn = (bytes: Uint8Array, acts: number): NetworkWeights => {
  const reader = readerOf(bytes);
  const weights = {
    table: reader.matrix(PIECES + NETWORK.concepts, WIDTH),
    places: reader.matrix(MOST_WORDS, WIDTH),
    states: reader.matrix(NETWORK.states.length, WIDTH),
    roles: reader.matrix(NETWORK.roles.length, WIDTH),
    questions: reader.matrix(acts, WIDTH),
    layers: Array.from({ length: LAYERS }, () => layer(reader)),
    keys: linear(reader, WIDTH, WIDTH),
    values: linear(reader, WIDTH, WIDTH),
    answers: linear(reader, acts, WIDTH),
    whole: linear(reader, acts, WIDTH),
  };
  if (reader.left() > 0) throw new Error('The network has more weights than its shape: train it again.');
  return weights;
};
