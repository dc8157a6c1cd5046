/**
 * How well a path explains what the crew reported. Every term has a floor, and every report is taken to be wrong for a
 * share of the paths: a wrong message widens the interval, but does not spoil the answer.
 */
import { exponential, normal } from './random.ts';
import type { Random } from './random.ts';
import { lateMinOf } from './lateness.ts';
import { KEPT, STEP_MIN } from './particle.ts';
import type { Particle } from './particle.ts';
import type { LineEvent } from './timeline.ts';
import type { TicketHabit } from './usual-day.ts';

type JoinedEvent = Extract<LineEvent, { is: 'joined' }>;
type WeighedEvent = Extract<LineEvent, { is: 'weighed' }>;
type CountedEvent = Extract<LineEvent, { is: 'counted' }>;

/** Each path speaks for its neighbourhood: a standard deviation of this many trucks. Grade: chosen. */
const SLACK = 2;
/** Chance that a path is further off, and by how many trucks then, on average. Grade: chosen. */
const TAIL_SHARE = 0.15;
const TAIL = 8;
/** How far a report is believed if it contradicts the path. */
interface Trust {
  /** Share of the paths that take the report to be wrong. */
  wrongShare: number;
  /** Chance that the path itself is far off: the line did what no path predicted. */
  surpriseShare: number;
}
/** Grade: chosen. */
const JOIN_TRUST: Trust = { wrongShare: 0.05, surpriseShare: 0 };
/** Somebody who is there is believed before anything that was reckoned. Grade: chosen. */
const COUNT_TRUST: Trust = { wrongShare: 0.02, surpriseShare: 0.3 };
/** What any value is worth then, a truck: as likely as any other of a line of 60. Grade: chosen. */
const ANY_VALUE = 1 / 60;
/** A head count errs by a truck and this share. Grade: chosen. */
const COUNT_ERROR = 0.13;
/** Trucks by which a weighing may be off the path's own count. Grade: chosen. */
const WEIGHED_ERROR = 0.5;
/** The least that a serial is worth, so that one misread ticket does not end a path. Grade: chosen. */
const LEAST_SERIAL = 0.005;

/** Any crew forgets once in a while. Grade: chosen. */
const LEAST_LATE = 0.05;

const density = (x: number, sd: number): number => Math.exp(-0.5 * (x / sd) ** 2) / sd / 2.5066;
const tail = (x: number): number => Math.exp(-Math.abs(x) / TAIL) / (2 * TAIL);

/**
 * The path's line is `excess` trucks longer than reported. Either the report is wrong, or the path is moved towards the
 * neighbour that fits: by a share of the error, as in a Kalman update with the path's slack as its deviation. A path
 * that is far off is moved all the way.
 */
const correct = (particle: Particle, excess: number, noiseSd: number, trust: Trust, random: Random): void => {
  if (random() < trust.wrongShare) {
    particle.logScore += Math.log(ANY_VALUE);
    return;
  }
  const variance = SLACK * SLACK + noiseSd * noiseSd;
  const near = density(excess, Math.sqrt(variance));
  const foreseen = (1 - trust.surpriseShare) * ((1 - TAIL_SHARE) * near + TAIL_SHARE * tail(excess));
  const surprise = trust.surpriseShare * ANY_VALUE;
  particle.logScore += Math.log(foreseen + surprise);
  const isSurprised = surprise > 0 && random() * (foreseen + surprise) < surprise;
  const gain = isSurprised ? 1 : 1 - (noiseSd * noiseSd) / variance;
  shift(particle, gain * excess + Math.sqrt(gain) * noiseSd * normal(random));
};

const shift = (particle: Particle, trucks: number): void => {
  const moved = Math.min(trucks, particle.joined - particle.weighed);
  particle.weighed += moved;
  particle.unloaded += moved;
  if (moved < 0 && particle.joined - particle.weighed > 0.5) fillYard(particle);
};

/** Trucks wait only if there is no room behind the scale; else the line would be gone at once. */
const fillYard = (particle: Particle): void => {
  particle.unloaded = Math.max(
    0,
    Math.min(particle.unloaded, particle.weighed - particle.yardPerPiler * particle.open),
  );
};

/** Value of a ring buffer `backMin` before the end of step `step`. */
const then = (ring: Float64Array, step: number, backMin: number): number => {
  const back = Math.min(KEPT - 2, Math.max(0, backMin / STEP_MIN));
  const whole = Math.floor(back);
  const late = ring[(step - whole) & (KEPT - 1)] ?? 0;
  const early = ring[(step - whole - 1) & (KEPT - 1)] ?? 0;
  return late + (early - late) * (back - whole);
};

/** One of our trucks joined: its number in the path is how many had joined by then. */
export const scoreJoin = (particle: Particle, event: JoinedEvent, step: number, random: Random): void => {
  const sinceMin = step * STEP_MIN - event.atMin;
  const lateMin = lateMinOf(event.telling, particle.lateMin);
  // Told after the weighing: late by at least so much, and by as much again as ever before that.
  if (event.toldAfterMin > 0)
    particle.logScore += Math.log(Math.exp((-1 * event.toldAfterMin) / lateMin) + LEAST_LATE);
  const backMin = Math.max(0, sinceMin) + exponential(random, lateMin);
  const number = Math.max(then(particle.joinedThen, step, backMin), 0);
  particle.numbers[event.slot] = number;
  particle.passedMin[event.slot] = NaN;
  if (event.ahead === null) return;
  const line = number - then(particle.weighedThen, step, backMin);
  correct(particle, line - event.ahead, 1 + COUNT_ERROR * event.ahead, COUNT_TRUST, random);
};

export const scoreCount = (particle: Particle, event: CountedEvent, random: Random): void => {
  const last = event.slot === null ? particle.joined : (particle.numbers[event.slot] ?? particle.joined);
  correct(
    particle,
    last - particle.weighed - event.ahead,
    1 + COUNT_ERROR * event.ahead,
    COUNT_TRUST,
    random,
  );
};

/**
 * One of our trucks is on the scale, so `weighed` is its number. The serial shows how many joined between this truck and
 * the one with the ticket before it: first come, first served.
 */
export const scoreWeighing = (particle: Particle, event: WeighedEvent, random: Random): void => {
  const { ticket, slot } = event;
  const number = slot === null ? NaN : (particle.numbers[slot] ?? NaN);
  const isKnown = !Number.isNaN(number);
  const place = isKnown ? number : particle.weighed;
  if (ticket !== null && ticket.served !== null) scoreSerial(particle, place, ticket.roll, ticket.served);
  if (isKnown) {
    const noiseSd = WEIGHED_ERROR + event.sdMin * particle.perPilerMin * particle.open;
    correct(particle, number - particle.weighed, noiseSd, JOIN_TRUST, random);
  }
  if (ticket !== null) particle.marks[ticket.roll] = isKnown ? number : particle.weighed;
};

const scoreSerial = (
  particle: Particle,
  place: number,
  roll: number,
  served: { count: number; sd: number },
): void => {
  const since = place - (particle.marks[roll] ?? NaN);
  if (Number.isNaN(since)) return;
  particle.logScore += Math.log(Math.exp(-0.5 * ((since - served.count) / served.sd) ** 2) + LEAST_SERIAL);
};

/** From unloading to the second weight. Grade: chosen. */
const WEIGHED_OUT_MIN = 3;

/** One of our trucks has joined, and nothing was heard since: most likely it still waits. */
export const scorePending = (
  particle: Particle,
  slot: number,
  nowMin: number,
  { lostShare, toldAfterMin }: TicketHabit,
): void => {
  const silentMin = nowMin - (particle.passedMin[slot] ?? NaN) - WEIGHED_OUT_MIN;
  if (!(silentMin > 0)) return;
  const stillToCome = Math.exp(-silentMin / toldAfterMin);
  particle.logScore += Math.log(lostShare + (1 - lostShare) * stillToCome);
};

/** Share of the paths that do not believe a report of pilers. Grade: chosen. */
const PILERS_WRONG_SHARE = 0.1;

/** Pilers as reported, believed by most paths. */
export const hearPilers = (
  particle: Particle,
  open: number | null,
  down: number | null,
  random: Random,
): void => {
  if (random() < PILERS_WRONG_SHARE) return;
  if (open !== null) particle.open = Math.max(1, open);
  particle.down = Math.min(particle.open, down ?? (open === null ? particle.down : 0));
};
