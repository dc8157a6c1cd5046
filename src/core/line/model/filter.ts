/** Carries the paths through the day's observations up to now. */
import type { Minutes } from '../../units.ts';
import { BIN_MIN, DAY_BINS, atBin } from './usual-day.ts';
import type { LineProfile } from './usual-day.ts';
import { KEPT, STEP_MIN, copyPath, newPath, stepPath } from './particle.ts';
import type { Path, Prior, Step } from './particle.ts';
import { normal } from './random.ts';
import type { Random } from './random.ts';
import type { LineEvent, Timeline } from './timeline.ts';
import { hearPilers, weighCount, weighJoin, weighPending, weighWeighing } from './score.ts';

export interface Filter {
  paths: Path[];
  /** Where resampled paths are written; swapped with `paths`. */
  spare: Path[];
  random: Random;
  step: number;
  profile: LineProfile;
  mostOpen: number;
  /** Log-likelihood of the events so far. */
  evidence: number;
}

/** Kept so that the pilers of the paths are busy about as much as pilers are. */
const BUSY = 0.73;

export const stepAt = (filter: Filter, atMin: Minutes): Step => {
  const { profile, mostOpen } = filter;
  const usual = profile.arrivalsPerMin;
  const dayLength = Math.max(1, usual.filter((rate) => rate > 0.01).length);
  const meanPerMin = usual.reduce((sum, rate) => sum + rate, 0) / dayLength;
  return {
    arrivals: atBin(usual, atMin) * STEP_MIN,
    levelSd: profile.levelSd,
    scatter: Math.sqrt(profile.dispersion),
    returning: profile.returning,
    usualLine: atBin(profile.usualLine, atMin),
    pilersOpen: profile.pilersOpen.length > 0 ? atBin(profile.pilersOpen, atMin) : null,
    perMinWanted: meanPerMin / BUSY,
    mostOpen,
  };
};

export const newFilter = (
  profile: LineProfile,
  prior: Prior,
  paths: number,
  mostOpen: number,
  random: Random,
): Filter => {
  const fresh = (): Path => newPath(random, prior);
  return {
    paths: Array.from({ length: paths }, fresh),
    spare: Array.from({ length: paths }, fresh),
    random,
    step: 0,
    profile,
    mostOpen,
    evidence: 0,
  };
};

/** Runs from opening to `nowMin`, weighing every event on its way. */
export const runFilter = (filter: Filter, timeline: Timeline, nowMin: Minutes): void => {
  const pending: number[] = [];
  const left = [...timeline.events].reverse();
  const applyUpTo = (untilMin: Minutes): void => {
    let applied = 0;
    for (let event = left.at(-1); event !== undefined && event.atMin <= untilMin; event = left.at(-1)) {
      apply(filter, event, pending);
      left.pop();
      applied += 1;
    }
    if (applied > 0) resampleIfUneven(filter);
  };
  // An event belongs to the nearest end of a step.
  applyUpTo(STEP_MIN / 2);
  const steps = Math.round(nowMin / STEP_MIN);
  while (filter.step < steps) {
    advance(filter, pending);
    applyUpTo((filter.step + 0.5) * STEP_MIN);
  }
  applyUpTo(Infinity);
  for (const slot of pending) for (const path of filter.paths) weighPending(path, slot, nowMin);
  resample(filter);
};

const advance = (filter: Filter, pending: readonly number[]): void => {
  const step = stepAt(filter, filter.step * STEP_MIN);
  filter.step += 1;
  const at = filter.step & (KEPT - 1);
  const bin = Math.min(DAY_BINS - 1, Math.floor((filter.step * STEP_MIN) / BIN_MIN));
  for (const path of filter.paths) {
    stepPath(path, step, filter.random);
    path.joinedThen[at] = path.joined;
    path.weighedThen[at] = path.weighed;
    path.openThen[bin] = path.open;
    path.lineThen[bin] = path.joined - path.weighed;
  }
  for (const slot of pending)
    for (const path of filter.paths) notePassing(path, slot, filter.step * STEP_MIN);
};

const notePassing = (path: Path, slot: number, atMin: Minutes): void => {
  if (Number.isNaN(path.passedMin[slot]) && path.unloaded >= (path.numbers[slot] ?? NaN))
    path.passedMin[slot] = atMin;
};

const apply = (filter: Filter, event: LineEvent, pending: number[]): void => {
  const { random, paths, step } = filter;
  switch (event.is) {
    case 'joined':
      if (event.pending) pending.push(event.slot);
      for (const path of paths) weighJoin(path, event, step, random);
      return;
    case 'weighed':
      for (const path of paths) weighWeighing(path, event, random);
      return;
    case 'counted':
      for (const path of paths) weighCount(path, event, random);
      return;
    case 'pilers':
      filter.mostOpen = Math.max(filter.mostOpen, event.open ?? 1);
      for (const path of paths) hearPilers(path, event.open, event.down, random);
      return;
  }
};

/** Shares of the paths, summing to 1. */
const weightsOf = (paths: readonly Path[]): Float64Array => {
  let most = -Infinity;
  for (const path of paths) most = Math.max(most, path.logWeight);
  const weights = new Float64Array(paths.length);
  let sum = 0;
  let index = 0;
  for (const path of paths) {
    const weight = Math.exp(path.logWeight - most);
    weights[index] = weight;
    sum += weight;
    index += 1;
  }
  for (index = 0; index < weights.length; index += 1) weights[index] = (weights[index] ?? 0) / sum;
  return weights;
};

const resampleIfUneven = (filter: Filter): void => {
  const weights = weightsOf(filter.paths);
  let squares = 0;
  for (const weight of weights) squares += weight * weight;
  if (1 / squares < 0.5 * filter.paths.length) resample(filter, weights);
};

/** Log of the mean weight. */
const evidenceOf = (paths: readonly Path[]): number => {
  const most = paths.reduce((best, path) => Math.max(best, path.logWeight), -Infinity);
  return (
    most + Math.log(paths.reduce((sum, path) => sum + Math.exp(path.logWeight - most), 0) / paths.length)
  );
};

/** Systematic resampling (Kitagawa, J. Comput. Graph. Stat. 5(1), 1996). */
const resample = (filter: Filter, weights = weightsOf(filter.paths)): void => {
  const { paths, spare, random } = filter;
  filter.evidence += evidenceOf(paths);
  const count = paths.length;
  let taken = 0;
  let reached = random() / count;
  let sum = 0;
  paths.forEach((path, index) => {
    sum += weights[index] ?? 0;
    for (; taken < count && (reached < sum || index === count - 1); reached += 1 / count) {
      const copy = spare[taken];
      if (copy !== undefined) copyPath(path, copy);
      taken += 1;
    }
  });
  filter.paths = spare;
  filter.spare = paths;
  spreadApart(filter);
};

/**
 * Copies get slightly different fixed rates, without widening what is believed of these: kernel smoothing with
 * shrinkage (Liu & West, in Sequential Monte Carlo Methods in Practice, 2001).
 */
const spreadApart = ({ paths, random }: Filter): void => {
  const day = momentsOf(paths, (path) => Math.log(path.dayFactor));
  const rate = momentsOf(paths, (path) => Math.log(path.perPilerMin));
  for (const path of paths) {
    path.logWeight = 0;
    path.dayFactor = Math.exp(moved(Math.log(path.dayFactor), day, random));
    path.perPilerMin = Math.exp(moved(Math.log(path.perPilerMin), rate, random));
    path.yardPerPiler = Math.min(3, Math.max(1, path.yardPerPiler + 0.05 * normal(random)));
  }
};

interface Moments {
  mean: number;
  sd: number;
}

const momentsOf = (paths: readonly Path[], of: (path: Path) => number): Moments => {
  let sum = 0;
  let squares = 0;
  for (const path of paths) {
    const value = of(path);
    sum += value;
    squares += value * value;
  }
  const mean = sum / paths.length;
  return { mean, sd: Math.sqrt(Math.max(1e-4, squares / paths.length - mean * mean)) };
};

/** Kernel width against the spread of the paths. */
const KERNEL = 0.2;
const KEEP = Math.sqrt(1 - KERNEL * KERNEL);

const moved = (value: number, { mean, sd }: Moments, random: Random): number =>
  mean + KEEP * (value - mean) + KERNEL * sd * normal(random);
