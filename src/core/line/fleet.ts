/**
 * Trucks against the digger: how many are needed, how long the digger will be without one, and whether a loaded truck
 * should wait at the field.
 */
import type { FieldId, StationId } from '../roster.ts';
import type { EpochMs, Minutes } from '../units.ts';
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

/** The round trip with its wait kept apart, because the wait changes with the line. */
export interface FleetCycle extends HaulCycle {
  /** From the digger to the line. */
  haulMin: Minutes;
  /** The round trip without filling and without the wait. */
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
 * Share of the time that the digger has no truck, for exponential loading times: the machine repairman model with the
 * trucks as machines, which is Erlang B with the trucks as servers. A cautious bound, because real loading times scatter
 * less. It depends on `awayMin` only by its mean, whatever its distribution.
 */
export const idleShareBound = (
  trucks: number,
  { loadMin, awayMin }: Pick<HaulCycle, 'loadMin' | 'awayMin'>,
): number => erlangB(trucks, awayMin / loadMin);

/** Trucks that keep the digger going. */
export const trucksNeeded = ({ loadMin, awayMin }: Pick<HaulCycle, 'loadMin' | 'awayMin'>): number =>
  Math.ceil((TRUCKS_OVER_MATCH * (loadMin + awayMin)) / loadMin - 1e-9);

/** How the round trips go with this many trucks. */
export interface FleetCourse {
  trucks: number;
  /** Share of the time (0-1) that the digger waits for a truck. */
  diggerIdle: number;
  /** The same by the cautious bound. */
  diggerIdleBound: number;
  /** How long a truck waits at the digger before it is filled, each round trip. */
  truckWaitMin: Minutes;
}

/** The operation's trucks against its digger, with the wait as forecast now. */
export interface FleetMatch {
  station: StationId;
  field: FieldId | null;
  /** Trucks hauling now. */
  trucks: number;
  needed: number;
  loadMin: Minutes;
  /** The whole round trip, including the wait. */
  roundMin: Minutes;
  /** The wait in the scale line that it assumes, and whether today's line is known. */
  waitMin: Minutes;
  waitKnown: boolean;
  /** Whether `courses` follow the line over the next hours; otherwise they assume a constant wait. */
  onPaths: boolean;
  /** For one truck fewer than now, as many, one more, and as many as needed. */
  courses: readonly FleetCourse[];
}

/** Never negative, and with a long tail, like travel times. */
const lognormal = (random: Random, mean: number, sd: number): number => {
  const variance = Math.log(1 + (sd / mean) ** 2);
  return mean * Math.exp(Math.sqrt(variance) * normal(random) - variance / 2);
};

interface Filled {
  loads: number;
  /** Minutes that the digger waited, that trucks waited at it, and that the whole run took. */
  idleMin: Minutes;
  waitedMin: Minutes;
  ranMin: Minutes;
}

/**
 * Fills trucks in the order in which they come back, and counts from `fromMin` to `toMin`. `back`: when each truck is
 * first there. `awayMin`: how long a truck is away, by when it leaves.
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

/** This many trucks, round trip after round trip, with a constant wait. */
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
 * This many trucks over the next hours, on each course that the line may take. On a course all trucks meet the same
 * line, so that a long one holds all of them. They start spread evenly over the round trip.
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
  /** Chance (0-1) that the line does not move before the truck could be served: station shut, piler down. */
  standstillChance: number;
  /** Trucks that join the line for each one that it serves, during the hold. */
  joinedPerServed: number;
  /** Digging stops before this truck could be filled again. */
  fieldStops: boolean;
}

export type HoldAdvice =
  /** Each minute of hold makes unloading `laterPerMin` minutes later and saves the rest of it in the line. */
  | { hold: true; because: 'standstill' | 'short-line' | 'field-stops'; laterPerMin: number }
  /** The station is closed when the truck would get there, and opens then. */
  | { hold: true; because: 'closed'; untilMs: EpochMs }
  | { hold: false; because: 'needed-next' | 'busy-line'; laterPerMin: number };

/**
 * In a first come, first served line, leaving later never gets a load in earlier: of each minute held, about
 * `joinedPerServed` minutes are lost at the scale. So hold only if little is lost.
 */
export const adviseHold = (ask: HoldAsk): HoldAdvice => {
  const laterPerMin = Math.min(1, Math.max(0, ask.joinedPerServed));
  if (ask.neededNext) return { hold: false, because: 'needed-next', laterPerMin };
  if (ask.standstillChance >= LIKELY_STANDSTILL) return { hold: true, because: 'standstill', laterPerMin };
  if (ask.fieldStops) return { hold: true, because: 'field-stops', laterPerMin };
  if (ask.joinedPerServed < SLACK_LINE) return { hold: true, because: 'short-line', laterPerMin };
  return { hold: false, because: 'busy-line', laterPerMin };
};
