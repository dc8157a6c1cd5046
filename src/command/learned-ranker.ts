import { readFileSync } from 'node:fs';
import type { Act } from '../reading/acts.ts';
import { openRanker } from '../reading/ranker/rank.ts';
import type { Ranker } from '../reading/ranker/rank.ts';
import { SHAPE } from '../reading/ranker/shape.ts';

/** The ranker with the weights that are shipped. */
export const learnedRanker = (): Ranker<Act> =>
  openRanker(readFileSync(new URL('../reading/ranker/weights.bin', import.meta.url)), SHAPE.acts);
