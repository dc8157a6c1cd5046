/**
 * Random numbers from a seed: the same seed gives the same draws, so that the same question gets the same answer.
 *
 * Generator: xoshiro128** 1.1 of Blackman & Vigna, "Scrambled linear pseudorandom number generators", ACM TOMS 47(4),
 * 2021 (https://prng.di.unimi.it/xoshiro128starstar.c, public domain), its state filled from the seed by the 32-bit
 * finaliser of MurmurHash3 over a Weyl sequence (the SplitMix way, Steele, Lea & Flood, OOPSLA 2014).
 */

/** Uniform in [0, 1). */
export type Random = () => number;

/** The finaliser of MurmurHash3: every bit of the input affects every bit of the output. */
const mixed = (word: number): number => {
  let z = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
  z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
  return z ^ (z >>> 16);
};

/** One seed from several whole numbers; their order matters. */
export const seedOf = (...parts: readonly number[]): number =>
  parts.reduce((seed, part) => mixed(seed ^ mixed(part | 0)) + 0x9e3779b9, 0) | 0;

export const randomFrom = (seed: number): Random => {
  let a = mixed((seed + 0x9e3779b9) | 0);
  let b = mixed((seed + 2 * 0x9e3779b9) | 0);
  let c = mixed((seed + 3 * 0x9e3779b9) | 0);
  let d = mixed((seed + 4 * 0x9e3779b9) | 0);
  return () => {
    const times5 = Math.imul(b, 5);
    const word = Math.imul((times5 << 7) | (times5 >>> 25), 9);
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    return (word >>> 0) / 4294967296;
  };
};

/** Mean 0, standard deviation 1; Marsaglia's polar method (SIAM Review 6(3), 1964), one of its two values. */
export const normal = (random: Random): number => {
  for (;;) {
    const x = 2 * random() - 1;
    const y = 2 * random() - 1;
    const square = x * x + y * y;
    if (square > 0 && square < 1) return x * Math.sqrt((-2 * Math.log(square)) / square);
  }
};

export const exponential = (random: Random, mean: number): number => -mean * Math.log(1 - random());
