/**
 * One possible course of the station's day: three counters (trucks joined, weighed, unloaded) and the hidden variables
 * that drive them. A forecast runs some hundreds of them and scores each by what the crew reported: a particle filter
 * (Gordon, Salmond & Smith, IEE Proc. F 140(2), 1993).
 *
 * The line is first come, first served: the truck that joined as number N is weighed as number N. So its wait lasts
 * from `joined` = N to `weighed` = N, and the trucks that joined meanwhile are the line behind it.
 */
import { DAY_BINS } from './usual-day.ts';
import { HABITS_MIN } from './lateness.ts';
import { normal } from './random.ts';
import type { Random } from './random.ts';

export interface Particle {
  /** Counts since opening; `unloaded` <= `weighed` <= `joined`. */
  joined: number;
  weighed: number;
  unloaded: number;
  /** Arrivals compared with the usual: a factor for the day, and a log level that drifts within it. */
  dayFactor: number;
  level: number;
  /** How late this crew tells "in line", on average. */
  lateMin: number;
  /** Trucks that one working piler takes. */
  perPilerMin: number;
  /** Places between scale and piler, for each piler open. */
  yardPerPiler: number;
  open: number;
  down: number;
  logScore: number;
  /** `joined` and `weighed` at the end of each of the last `KEPT` steps; ring buffers. */
  joinedThen: Float64Array;
  weighedThen: Float64Array;
  /** For each of our trucks in the line: its number, and when `unloaded` passed it (NaN = not yet). */
  numbers: Float64Array;
  passedMin: Float64Array;
  /** `weighed` at the newest ticket of each serial roll. */
  marks: Float64Array;
  /** Pilers open, and trucks in the line, in each half hour so far. */
  openThen: Uint8Array;
  lineThen: Float64Array;
}

/** Grade: chosen; a truck is unloaded in about 5 min. */
export const STEP_MIN = 3;
/** Steps in the ring buffers: 48 min. A power of two. */
export const KEPT = 16;

/** What is the same for all paths during one step. */
export interface SharedStep {
  arrivals: number;
  /** Log-noise of arrivals within the day. */
  levelSd: number;
  /** Standard deviation of the trucks that join, over that of Poisson arrivals. */
  scatter: number;
  /** Share of the arrivals that is missing for each truck in the line beyond the usual. */
  returning: number;
  usualLine: number;
  /** Pilers usually open now; null = not learned. */
  pilersOpen: number | null;
  /** What the usual day needs: trucks per minute over the share of the time that pilers are busy. */
  perMinWanted: number;
  mostOpen: number;
}

/** Memory of the level of arrivals within the day. Grade: chosen. */
const LEVEL_MEMORY_MIN = 60;
const LEVEL_KEEP = Math.exp(-STEP_MIN / LEVEL_MEMORY_MIN);
const LEVEL_KICK = Math.sqrt(1 - LEVEL_KEEP * LEVEL_KEEP);
/** How far the level may answer to trucks that are kept in the line, in logs: least and most. Grade: chosen. */
const LEVEL_ANSWER = { least: -0.7, most: 1.5 };
/** Standard deviation of unloading times, over their mean. Grade: chosen. */
const SERVICE_CV = 0.42;
/** Minutes that a scale needs for one truck. Grade: chosen. */
const MIN_ON_SCALE = 1.2;
const SCALE_PER_STEP = STEP_MIN / MIN_ON_SCALE;
/** Places between scale and piler, for each piler open: least and most. Grade: chosen. */
export const LEAST_YARD = 1;
export const MOST_YARD = 3;
/** How fast the pilers open follow what is usual or needed, min. Grade: chosen. */
const TURN_MIN = 100;
/** Pilers that are opened for each truck in the line beyond this many. Grade: chosen. */
const PULL_OF_LINE = 0.02;
const PULL_BEYOND = 3;
/** How often a piler breaks down, and for how long. Grade: chosen. */
const BREAKDOWN_EVERY_MIN = 500;
const BREAKDOWN_LASTS_MIN = 25;
/** Share of the time that one more piler is open: never quite impossible, never quite sure. Grade: chosen. */
const SHARE = { least: 0.02, most: 0.95 };

export interface Prior {
  perPilerMin: number;
  rateSd: number;
  daySd: number;
  levelSd: number;
  /** Pilers that the station usually has open. */
  pilers: number;
  slots: number;
  rolls: number;
  /** How likely each of `HABITS_MIN` is. */
  late: readonly number[];
}

export const newParticle = (random: Random, prior: Prior): Particle => ({
  joined: 0,
  weighed: 0,
  unloaded: 0,
  dayFactor: Math.exp(prior.daySd * normal(random)),
  level: prior.levelSd * normal(random),
  lateMin: drawnHabit(random, prior.late),
  perPilerMin: prior.perPilerMin * Math.exp(prior.rateSd * normal(random)),
  yardPerPiler: LEAST_YARD + (MOST_YARD - LEAST_YARD) * random(),
  open: openedWith(random, prior.pilers),
  down: 0,
  logScore: 0,
  joinedThen: new Float64Array(KEPT),
  weighedThen: new Float64Array(KEPT),
  numbers: new Float64Array(prior.slots).fill(NaN),
  passedMin: new Float64Array(prior.slots).fill(NaN),
  marks: new Float64Array(prior.rolls).fill(NaN),
  openThen: new Uint8Array(DAY_BINS),
  lineThen: new Float64Array(DAY_BINS),
});

/** Chance that all usual pilers open in the morning; else any number of them. Grade: chosen. */
const ALL_OPEN = 0.5;

const openedWith = (random: Random, pilers: number): number =>
  random() < ALL_OPEN ? pilers : 1 + Math.floor(random() * pilers);

const drawnHabit = (random: Random, shares: readonly number[]): number => {
  let left = random();
  const at = shares.findIndex((share) => (left -= share) < 0);
  return HABITS_MIN[at] ?? 1;
};

export const copyParticle = (from: Particle, to: Particle): void => {
  to.joined = from.joined;
  to.weighed = from.weighed;
  to.unloaded = from.unloaded;
  to.dayFactor = from.dayFactor;
  to.level = from.level;
  to.lateMin = from.lateMin;
  to.perPilerMin = from.perPilerMin;
  to.yardPerPiler = from.yardPerPiler;
  to.open = from.open;
  to.down = from.down;
  to.logScore = from.logScore;
  to.joinedThen.set(from.joinedThen);
  to.weighedThen.set(from.weighedThen);
  to.numbers.set(from.numbers);
  to.passedMin.set(from.passedMin);
  to.marks.set(from.marks);
  to.openThen.set(from.openThen);
  to.lineThen.set(from.lineThen);
};

/** Noise of mean 0 and deviation 1; two values are enough in short steps (weak Euler scheme, Kloeden & Platen 1992). */
const coin = (random: Random): number => (random() < 0.5 ? -1 : 1);

/**
 * Trucks that join beyond the mean: one of two values, with the mean, variance and skewness of Poisson arrivals, which
 * is enough in short steps and never takes trucks away.
 */
const skewedCoin = (random: Random, mean: number): number => {
  const half = Math.sqrt(mean + 0.25);
  return random() < 0.5 - 0.25 / half ? 0.5 + half : 0.5 - half;
};

export const stepParticle = (particle: Particle, step: SharedStep, random: Random): void => {
  particle.level = LEVEL_KEEP * particle.level + LEVEL_KICK * step.levelSd * coin(random);
  // A truck in the line cannot come back from the field.
  const kept = step.returning * (particle.joined - particle.weighed - step.usualLine);
  const level = Math.exp(
    particle.level -
      0.5 * step.levelSd * step.levelSd -
      Math.min(LEVEL_ANSWER.most, Math.max(LEVEL_ANSWER.least, kept)),
  );
  const mean = step.arrivals * particle.dayFactor * level;
  particle.joined += mean + step.scatter * skewedCoin(random, mean);
  turnPilers(particle, step, random);
  serve(particle, random);
};

/** Moves trucks over the scale and the pilers, as far as there are trucks in the line and room in the yard. */
export const serve = (particle: Particle, random: Random): void => {
  const mean = particle.perPilerMin * (particle.open - particle.down) * STEP_MIN;
  const done = mean > 0 ? mean + SERVICE_CV * Math.sqrt(mean) * coin(random) : 0;
  particle.unloaded = Math.min(particle.weighed, particle.unloaded + Math.max(0, done));
  const room = particle.unloaded + 1 + particle.yardPerPiler * particle.open;
  particle.weighed = Math.min(
    particle.joined,
    Math.max(particle.weighed, room),
    particle.weighed + SCALE_PER_STEP * particle.open,
  );
};

/** At most one of: a piler opens, closes, breaks, is repaired. */
export const turnPilers = (particle: Particle, step: SharedStep, random: Random): void => {
  const needed = step.perMinWanted / particle.perPilerMin;
  const wanted =
    (step.pilersOpen ?? needed) +
    needed * (particle.dayFactor - 1) +
    PULL_OF_LINE * Math.max(0, particle.joined - particle.weighed - PULL_BEYOND);
  const draw = (random() * TURN_MIN) / STEP_MIN;
  const opens = particle.open < step.mostOpen ? share(wanted - particle.open) : 0;
  if (draw < opens) {
    particle.open += 1;
    return;
  }
  const closes = opens + (particle.open > 1 ? 1 - share(wanted - particle.open + 1) : 0);
  if (draw < closes) {
    particle.open -= 1;
    particle.down = Math.min(particle.down, particle.open);
    return;
  }
  const breaks = closes + ((particle.open - particle.down) * TURN_MIN) / BREAKDOWN_EVERY_MIN;
  if (draw < breaks) {
    particle.down += 1;
    return;
  }
  if (draw < breaks + (particle.down * TURN_MIN) / BREAKDOWN_LASTS_MIN) particle.down -= 1;
};

const share = (wanted: number): number => Math.min(SHARE.most, Math.max(SHARE.least, wanted));
