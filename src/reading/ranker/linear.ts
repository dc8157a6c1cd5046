/** The first learned reader: one logistic regression an act over the same features (tests/reading/training/learn.ts). */
import { FEATURES, featuresOf } from './features.ts';
import type { RankedAct, Ranker } from './rank.ts';

/** @throws Error if the bytes are not weights for these acts. */
export const openLinear = <Act extends string>(bytes: Uint8Array, acts: readonly Act[]): Ranker<Act> => {
  const count = acts.length;
  // A bias and a step size for each act, as 32-bit floats, little-endian; then a signed byte for each feature and act.
  const head = count * 8;
  const size = head + FEATURES * count;
  if (bytes.length !== size)
    throw new Error(`The ranker's weights have ${bytes.length} bytes, not ${size}: train them again.`);
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const biases = acts.map((_, act) => view.getFloat32(act * 8, true));
  const steps = acts.map((_, act) => view.getFloat32(act * 8 + 4, true));
  const weights = new Int8Array(bytes.buffer, bytes.byteOffset + head, FEATURES * count);
  return (message) => {
    const features = featuresOf(message);
    const share = 1 / Math.sqrt(Math.max(1, features.length));
    const sums = new Float64Array(count);
    for (const feature of features)
      for (let act = 0; act < count; act += 1)
        sums[act] = (sums[act] ?? 0) + (weights[feature * count + act] ?? 0);
    const certaintyOf = (act: number): number =>
      1 / (1 + Math.exp(-((biases[act] ?? 0) + (sums[act] ?? 0) * (steps[act] ?? 0) * share)));
    return acts
      .map((act, at): RankedAct<Act> => ({ act, certainty: certaintyOf(at) }))
      .sort((a, b) => b.certainty - a.certainty);
  };
};
