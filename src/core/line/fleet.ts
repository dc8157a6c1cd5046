/**
 * Trucks against the digger: how many are needed, how long the digger will stand without one, and whether a loaded
 * truck had better wait at the field.
 */
import type { Minutes } from '../units.ts';

export interface HaulCycle {
  /** Minutes that the digger needs to fill a truck. */
  loadMin: Minutes;
  /** Everything else of the round trip: haul, forecast wait at the line, unloading, return. */
  awayMin: Minutes;
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
export const idleShareBound = (trucks: number, { loadMin, awayMin }: HaulCycle): number =>
  erlangB(trucks, awayMin / loadMin);

/**
 * Trucks that keep the digger going. A match factor of 1 (Burt & Caccetta, Int. J. Mining, Reclamation & Env. 21(4),
 * 2007) leaves it idle for 10-20 % of the time, because trucks bunch; 15 % more trucks leave a few percent.
 */
export const trucksNeeded = ({ loadMin, awayMin }: HaulCycle): number =>
  Math.ceil((SPARE * (loadMin + awayMin)) / loadMin - 1e-9);

const SPARE = 1.15;

/** Minutes that the digger stands, if trucks come back after `returnsMin` (in any order; from now) and it is free then. */
const idleMin = (
  returnsMin: readonly Minutes[],
  loadMin: Minutes,
  freeInMin: Minutes,
  untilMin: Minutes,
): Minutes => {
  let free = freeInMin;
  let idle = 0;
  for (const back of [...returnsMin].sort((a, b) => a - b)) {
    if (free >= untilMin) break;
    idle += Math.max(0, Math.min(back, untilMin) - free);
    free = Math.max(back, free) + loadMin;
  }
  return idle + Math.max(0, untilMin - free);
};

export interface IdleForecast {
  meanMin: Minutes;
  /** 80 of 100 cases. */
  lowMin: Minutes;
  highMin: Minutes;
}

/**
 * Digger idle within the next `untilMin` minutes, over possible courses of the haul: `returns` holds, for each course,
 * the minutes until each truck is back at the field. Trucks that are not back within `untilMin` count as absent, and
 * a truck counts once.
 */
export const forecastIdle = (
  returns: readonly (readonly Minutes[])[],
  loadMin: Minutes,
  freeInMin: Minutes,
  untilMin: Minutes,
): IdleForecast | null => {
  if (returns.length === 0) return null;
  const idle = returns.map((course) => idleMin(course, loadMin, freeInMin, untilMin)).sort((a, b) => a - b);
  const at = (share: number): Minutes => idle[Math.round(share * (idle.length - 1))] ?? 0;
  return {
    meanMin: idle.reduce((sum, min) => sum + min, 0) / idle.length,
    lowMin: at(0.1),
    highMin: at(0.9),
  };
};

export interface HoldAsk {
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

const LIKELY_STANDSTILL = 0.6;
const SLACK_LINE = 0.5;

/**
 * In a line that is first come, first served, leaving later never gets a load in earlier: of each minute held, about
 * `joinedPerServed` minutes are lost at the other end. So hold only where little is lost. Derived from first come,
 * first served; the limits are common practice, no source.
 */
export const adviseHold = (ask: HoldAsk): HoldAdvice => {
  const laterPerMin = Math.min(1, Math.max(0, ask.joinedPerServed));
  if (ask.neededNext) return { hold: false, because: 'needed-next', laterPerMin };
  if (ask.standstillChance >= LIKELY_STANDSTILL) return { hold: true, because: 'standstill', laterPerMin };
  if (ask.fieldStops) return { hold: true, because: 'field-stops', laterPerMin };
  if (ask.joinedPerServed < SLACK_LINE) return { hold: true, because: 'short-line', laterPerMin };
  return { hold: false, because: 'busy-line', laterPerMin };
};
