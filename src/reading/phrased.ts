import type { Sign } from './sign.ts';

/** A sign by the key under which each language has its phrases. */
export interface Phrased<K extends string> {
  key: K;
  sign: Sign;
  /** Phrases without a word of any one language: slots, and kinds of words as `{piler}`. */
  mixed: string;
}

export const phrased = <K extends string>(key: K, sign: Sign, mixed = ''): Phrased<K> => ({
  key,
  sign,
  mixed,
});
