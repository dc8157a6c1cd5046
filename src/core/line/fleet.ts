/**
 * Trucks against the digger: how many are needed, how long the digger will stand without one, and whether a loaded
 * truck had better wait at the field.
 */
import type { FieldId, StationId } from '../roster.ts';
import type { Minutes } from '../units.ts';
import { FILL_CV, LIKELY_STANDSTILL, SLACK_LINE, TRUCKS_OVER_MATCH } from './assumptions.ts';
import { COURSE_MIN, waitOnCourse } from './model/courses.ts';
import { normal, randomFrom, seedOf } from './model/random.ts';
import type { Random } from './model/random.ts';
import type { WaitCourse } from './types.ts';

interface HaulCycle {
  /** Minutes that the digger needs to fill a truck. */
  loadMin: Minutes;
  /** Everything else of the round trip: haul, forecast wait at the line, unloading, return. */
  awayMin: Minutes;
  /** Standard deviation of `awayMin` from round to round. */
  awaySdMin: Minutes;
}

/** The round with its wait apart, which changes as the line does. */
export interface FleetCycle extends HaulCycle {
  /** From the digger to the line. */
  haulMin: Minutes;
  /** Everything of the round trip but filling and the wait. */
  ownMin: Minutes;
  ownSdMin: Minutes;
}

/**
 * Share of calls that find all of `servers` busy at `offered` load (Erlang B, by its recursion).
 * Erlang, "Solution of some problems in the theory of probabilities", 1917; tables in any teletraffic handbook.
 */
export const erlangB = (servers: number, offered: number): number => {
  let blocked = 1;
  for (let n = 1; n <= servers; n += 1) blocked = (offered * blocked) / (n + offered * blocked);
  return blocked;
};

/**
 * Share of the time that the digger has no truck, for exponential loading times: the machine repairman with its
 * trucks as the machines, which is Erlang B with the trucks as servers. The cautious bound: real loading times scatter
 * less. Exact in the mean of `awayMin`, whatever its distribution.
 */
export const idleShareBound = (
  trucks: number,
  { loadMin, awayMin }: Pick<HaulCycle, 'loadMin' | 'awayMin'>,
): number => erlangB(trucks, awayMin / loadMin);

/** Trucks that keep the digger going. */
export const trucksNeeded = ({ loadMin, awayMin }: Pick<HaulCycle, 'loadMin' | 'awayMin'>): number =>
  Math.ceil((TRUCKS_OVER_MATCH * (loadMin + awayMin)) / loadMin - 1e-9);

/** How the rounds go with so many trucks. */
export interface FleetCourse {
  trucks: number;
  /** Share of the time (0-1) that the digger stands without a truck. */
  diggerIdle: number;
  /** The same by the cautious bound. */
  diggerIdleBound: number;
  /** Minutes of each round that a truck stands at the digger before it is filled. */
  truckWaitMin: Minutes;
}

/** The operation's trucks against its digger, with the wait as it is forecast now. */
export interface FleetMatch {
  station: StationId;
  field: FieldId | null;
  /** Trucks that haul now. */
  trucks: number;
  needed: number;
  loadMin: Minutes;
  /** The whole round, the wait included. */
  roundMin: Minutes;
  /** The wait in the scale line that it reckons with, and whether today's line is known. */
  waitMin: Minutes;
  waitKnown: boolean;
  /** Whether `courses` are those of the next hours, as the line may go; else of a wait that stays as it is. */
  onPaths: boolean;
  /** For one truck fewer, as many as now, one more, and as many as are needed. */
  courses: readonly FleetCourse[];
}

/** Never negative, with the long tail that travel times have. */
const lognormal = (random: Random, mean: number, sd: number): number => {
  const variance = Math.log(1 + (sd / mean) ** 2);
  return mean * Math.exp(Math.sqrt(variance) * normal(random) - variance / 2);
};

interface Filled {
  loads: number;
  /** Minutes that the digger stood, that trucks stood at it, and that all of it took. */
  idleMin: Minutes;
  waitedMin: Minutes;
  ranMin: Minutes;
}

/**
 * Fills trucks in the order in which they come back, and counts from `fromMin` to `toMin`. `back`: when each is there
 * first. `awayMin`: how long a truck that leaves then is away.
 */
const fillTrucks = (
  back: readonly Minutes[],
  loadMin: Minutes,
  awayMin: (leftMin: Minutes) => Minutes,
  { fromMin, toMin }: { fromMin: Minutes; toMin: Minutes },
  random: Random,
): Filled => {
  const due = [...back];
  const sums = { loads: 0, idleMin: 0, waitedMin: 0, begunMin: NaN };
  let freeMin = 0;
  while (freeMin < toMin) {
    const backMin = Math.min(...due);
    const startMin = Math.max(freeMin, backMin);
    if (freeMin >= fromMin) {
      if (sums.loads === 0) sums.begunMin = freeMin;
      sums.loads += 1;
      sums.idleMin += startMin - freeMin;
      sums.waitedMin += startMin - backMin;
    }
    freeMin = startMin + lognormal(random, loadMin, FILL_CV * loadMin);
    due[due.indexOf(backMin)] = freeMin + awayMin(freeMin);
  }
  return { ...sums, ranMin: freeMin - sums.begunMin };
};

const courseFrom = (trucks: number, runs: readonly Filled[], bound: number): FleetCourse => {
  const sum = (of: (run: Filled) => number): number => runs.reduce((total, run) => total + of(run), 0);
  return {
    trucks,
    diggerIdle: sum(({ idleMin }) => idleMin) / sum(({ ranMin }) => ranMin),
    diggerIdleBound: bound,
    truckWaitMin: sum(({ waitedMin }) => waitedMin) / sum(({ loads }) => loads),
  };
};

const chanceOf = (trucks: number, { loadMin, awayMin }: HaulCycle): Random =>
  randomFrom(seedOf(trucks, Math.round(10 * loadMin), Math.round(10 * awayMin)));

/** In loading times: by the first the trucks have mixed, by the second enough has been seen. Grade: chosen. */
const STEADY = { from: 600, to: 6_000 };

/** So many trucks, round after round, with a wait that stays as it is. */
export const runFleet = (trucks: number, cycle: HaulCycle): FleetCourse => {
  const { loadMin, awayMin, awaySdMin } = cycle;
  const random = chanceOf(trucks, cycle);
  const back = Array.from({ length: trucks }, (_, number) => number * loadMin);
  const away = (): Minutes => lognormal(random, awayMin, awaySdMin);
  const span = { fromMin: STEADY.from * loadMin, toMin: STEADY.to * loadMin };
  const run = fillTrucks(back, loadMin, away, span, random);
  return courseFrom(trucks, [run], idleShareBound(trucks, cycle));
};

/** How often each course of the line is run through. Grade: chosen. */
const REPEATS = 5;

/**
 * So many trucks over the next hours, on each of the ways in which the line may go: all of them meet the same line, so
 * that a long one holds them all. They begin spread evenly over the round.
 */
export const runFleetOn = (
  trucks: number,
  cycle: FleetCycle,
  courses: readonly WaitCourse[],
): FleetCourse => {
  const { loadMin, haulMin, ownMin, ownSdMin } = cycle;
  const random = chanceOf(trucks, cycle);
  const waits = courses.flat();
  const awayMin = ownMin + waits.reduce((sum, wait) => sum + wait, 0) / waits.length;
  const apartMin = (loadMin + awayMin) / trucks;
  const back = Array.from({ length: trucks }, (_, number) => number * apartMin);
  const runs = courses.flatMap((course) => {
    const away = (leftMin: Minutes): Minutes =>
      lognormal(random, ownMin, ownSdMin) + waitOnCourse(course, leftMin + haulMin);
    const run = (): Filled => fillTrucks(back, loadMin, away, { fromMin: 0, toMin: COURSE_MIN }, random);
    return Array.from({ length: REPEATS }, run);
  });
  return courseFrom(trucks, runs, idleShareBound(trucks, { loadMin, awayMin }));
};

interface HoldAsk {
  /** The truck is the next one the digger needs back. */
  neededNext: boolean;
  /** Chance (0-1) that the line does not move before it could be served: station shut, piler down. */
  standstillChance: number;
  /** Trucks joining the line per truck that it serves, over the time of the hold. */
  joinedPerServed: number;
  /** Digging stops before this truck could be loaded again. */
  fieldStops: boolean;
}

export type HoldAdvice =
  /** Leaving later costs `laterPerMin` minutes of unloading for each minute held, and saves the rest of standing. */
  | { hold: true; because: 'standstill' | 'short-line' | 'field-stops'; laterPerMin: number }
  | { hold: false; because: 'needed-next' | 'busy-line'; laterPerMin: number };

/**
 * In a line that is first come, first served, leaving later never gets a load in earlier: of each minute held, about
 * `joinedPerServed` minutes are lost at the other end. So hold only if little is lost.
 */
export const adviseHold = (ask: HoldAsk): HoldAdvice => {
  const laterPerMin = Math.min(1, Math.max(0, ask.joinedPerServed));
  if (ask.neededNext) return { hold: false, because: 'needed-next', laterPerMin };
  if (ask.standstillChance >= LIKELY_STANDSTILL) return { hold: true, because: 'standstill', laterPerMin };
  if (ask.fieldStops) return { hold: true, because: 'field-stops', laterPerMin };
  if (ask.joinedPerServed < SLACK_LINE) return { hold: true, because: 'short-line', laterPerMin };
  return { hold: false, because: 'busy-line', laterPerMin };
};
