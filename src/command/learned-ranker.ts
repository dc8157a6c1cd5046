import { readFileSync } from 'node:fs';
import type { Act } from '../reading/acts.ts';
import type { Rankers } from '../reading/hearing.ts';
import { openLinear } from '../reading/ranker/linear.ts';
import { openNetwork } from '../reading/ranker/network.ts';
import { averaged } from '../reading/ranker/rank.ts';
import { SHAPE } from '../reading/ranker/shape.ts';

const weights = (file: string): Uint8Array =>
  readFileSync(new URL(`../reading/ranker/${file}`, import.meta.url));

/** The learned readers with the weights that are shipped. */
export const learnedRankers = (): Rankers => {
  const linear = openLinear<Act>(weights('linear.bin'), SHAPE.acts);
  return { rank: averaged(linear, openNetwork<Act>(weights('network.bin'), SHAPE.acts)), glance: linear };
};
