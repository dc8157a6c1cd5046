/** Carries the paths through the day's observations up to now. */
import type { Minutes } from '../../units.ts';
import { BIN_MIN, DAY_BINS, atBin } from './usual-day.ts';
import type { UsualDay } from './usual-day.ts';
import {
  KEPT,
  LEAST_YARD,
  MOST_YARD,
  STEP_MIN,
  copyParticle,
  newParticle,
  stepParticle,
} from './particle.ts';
import type { Particle, Prior, SharedStep } from './particle.ts';
import { normal } from './random.ts';
import type { Random } from './random.ts';
import type { LineEvent, Timeline } from './timeline.ts';
import { hearPilers, scoreCount, scoreJoin, scorePending, scoreWeighing } from './score.ts';

export interface Filter {
  paths: Particle[];
  /** Buffer for resampled paths; swapped with `paths`. */
  spare: Particle[];
  random: Random;
  step: number;
  profile: UsualDay;
  mostOpen: number;
  /** Log-likelihood of the events so far. */
  evidence: number;
}

/** With this share the pilers of the paths are busy about as much as pilers are (`PILERS_BUSY`). Grade: chosen. */
const BUSY = 0.73;
/** An hour with less than this share of the busiest one's trucks does not belong to the day. Grade: chosen. */
const QUIET_SHARE = 0.3;
/** Paths are resampled when their effective number falls below this share. Grade: chosen. */
const EVEN_ENOUGH = 0.5;

export const stepAt = (filter: Filter, atMin: Minutes): SharedStep => {
  const { profile, mostOpen } = filter;
  const usual = profile.arrivalsPerMin;
  const busiest = Math.max(...usual);
  const ofDay = usual.filter((rate) => rate >= QUIET_SHARE * busiest);
  const meanPerMin = ofDay.reduce((sum, rate) => sum + rate, 0) / Math.max(1, ofDay.length);
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
  profile: UsualDay,
  prior: Prior,
  paths: number,
  mostOpen: number,
  random: Random,
): Filter => {
  const fresh = (): Particle => newParticle(random, prior);
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

/** Runs from opening to `nowMin`, scoring every event on the way. */
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
  for (const slot of pending)
    for (const particle of filter.paths) scorePending(particle, slot, nowMin, filter.profile.tickets);
  resample(filter);
};

const advance = (filter: Filter, pending: readonly number[]): void => {
  const step = stepAt(filter, filter.step * STEP_MIN);
  filter.step += 1;
  const at = filter.step & (KEPT - 1);
  const bin = Math.min(DAY_BINS - 1, Math.floor((filter.step * STEP_MIN) / BIN_MIN));
  for (const particle of filter.paths) {
    stepParticle(particle, step, filter.random);
    particle.joinedThen[at] = particle.joined;
    particle.weighedThen[at] = particle.weighed;
    particle.openThen[bin] = particle.open;
    particle.lineThen[bin] = particle.joined - particle.weighed;
  }
  for (const slot of pending)
    for (const particle of filter.paths) notePassing(particle, slot, filter.step * STEP_MIN);
};

const notePassing = (particle: Particle, slot: number, atMin: Minutes): void => {
  if (Number.isNaN(particle.passedMin[slot]) && particle.unloaded >= (particle.numbers[slot] ?? NaN))
    particle.passedMin[slot] = atMin;
};

const apply = (filter: Filter, event: LineEvent, pending: number[]): void => {
  const { random, paths, step } = filter;
  switch (event.is) {
    case 'joined':
      if (event.pending) pending.push(event.slot);
      for (const particle of paths) scoreJoin(particle, event, step, random);
      return;
    case 'weighed':
      for (const particle of paths) scoreWeighing(particle, event, random);
      return;
    case 'counted':
      for (const particle of paths) scoreCount(particle, event, random);
      return;
    case 'pilers':
      filter.mostOpen = Math.max(filter.mostOpen, event.open ?? 1);
      for (const particle of paths) hearPilers(particle, event.open, event.down, random);
      return;
  }
};

/** Shares of the paths, summing to 1. */
const weightsOf = (paths: readonly Particle[]): Float64Array => {
  let most = -Infinity;
  for (const particle of paths) most = Math.max(most, particle.logScore);
  const weights = new Float64Array(paths.length);
  let sum = 0;
  let index = 0;
  for (const particle of paths) {
    const weight = Math.exp(particle.logScore - most);
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
  if (1 / squares < EVEN_ENOUGH * filter.paths.length) resample(filter, weights);
};

/** Log of the mean weight. */
const evidenceOf = (paths: readonly Particle[]): number => {
  const most = paths.reduce((best, particle) => Math.max(best, particle.logScore), -Infinity);
  return (
    most +
    Math.log(paths.reduce((sum, particle) => sum + Math.exp(particle.logScore - most), 0) / paths.length)
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
  paths.forEach((particle, index) => {
    sum += weights[index] ?? 0;
    for (; taken < count && (reached < sum || index === count - 1); reached += 1 / count) {
      const copy = spare[taken];
      if (copy !== undefined) copyParticle(particle, copy);
      taken += 1;
    }
  });
  filter.paths = spare;
  filter.spare = paths;
  spreadApart(filter);
};

/**
 * Gives copies slightly different fixed rates, without widening the distribution of these: kernel smoothing with
 * shrinkage (Liu & West, in Sequential Monte Carlo Methods in Practice, 2001).
 */
const spreadApart = ({ paths, random }: Filter): void => {
  const day = momentsOf(paths, (particle) => Math.log(particle.dayFactor));
  const rate = momentsOf(paths, (particle) => Math.log(particle.perPilerMin));
  for (const particle of paths) {
    particle.logScore = 0;
    particle.dayFactor = Math.exp(moved(Math.log(particle.dayFactor), day, random));
    particle.perPilerMin = Math.exp(moved(Math.log(particle.perPilerMin), rate, random));
    particle.yardPerPiler = movedYard(particle.yardPerPiler, random);
  }
};

/** Places by which a path's yard moves. Grade: chosen. */
const YARD_SD = 0.05;

const movedYard = (places: number, random: Random): number =>
  Math.min(MOST_YARD, Math.max(LEAST_YARD, places + YARD_SD * normal(random)));

interface Moments {
  mean: number;
  sd: number;
}

const momentsOf = (paths: readonly Particle[], of: (particle: Particle) => number): Moments => {
  let sum = 0;
  let squares = 0;
  for (const particle of paths) {
    const value = of(particle);
    sum += value;
    squares += value * value;
  }
  const mean = sum / paths.length;
  return { mean, sd: Math.sqrt(Math.max(1e-4, squares / paths.length - mean * mean)) };
};

/** Kernel width against the spread of the paths. Grade: chosen. */
const KERNEL = 0.2;
const KEEP = Math.sqrt(1 - KERNEL * KERNEL);

const moved = (value: number, { mean, sd }: Moments, random: Random): number =>
  mean + KEEP * (value - mean) + KERNEL * sd * normal(random);
