/** What is usual at a station: learned from past days, and close to the trade's figures while there are few. */
import type { Minutes } from '../../units.ts';
import { MIN_PER_TRUCK, PILERS_BUSY, YARD_MIN } from '../assumptions.ts';

import { HABITS_PRIOR } from './lateness.ts';

export const BIN_MIN = 30;
export const DAY_BINS = 48;

export interface UsualWait {
  medianMin: Minutes;
  lowMin: Minutes;
  highMin: Minutes;
}

/** How a crew reports its tickets. */
export interface TicketHabit {
  /** Share that is never reported, or hours later. */
  lostShare: number;
  /** Minutes from the second weight until the others are reported, on average. */
  toldAfterMin: number;
}

export interface UsualDay {
  /** Trucks per minute that join, by half hour since opening. */
  arrivalsPerMin: readonly number[];
  /** Log-noise of arrivals from day to day, and within the day. */
  daySd: number;
  levelSd: number;
  /** Variance over mean of the trucks that join in a short time; 1 = Poisson. */
  dispersion: number;
  /** Minutes that one piler needs for one truck. */
  minPerTruck: Minutes;
  /** Log-noise of that: how little is known of it, and how it differs from day to day. */
  paceSd: number;
  /** Pilers open, on average, by half hour since opening; empty = not learned. */
  pilersOpen: readonly number[];
  /** Trucks in the line, on average, by half hour since opening. */
  usualLine: readonly number[];
  /**
   * Share of the arrivals that is missing for each truck in the line beyond the usual: 0 if each truck comes once, about
   * 1 / trucks if the same trucks come back.
   */
  returning: number;
  tickets: TicketHabit;
  /** How likely each habit of telling "in line" late is (`HABITS_MIN`). */
  late: readonly number[];
  /** Minutes from first to second weight, for tickets that show only one of them. */
  yardMin: Minutes;
  /** By two hours since opening; null = too little was seen. */
  usual: readonly (UsualWait | null)[];
  /** Days learned from. */
  days: number;
}

/** Log-noise of arrivals from day to day, as long as nothing is learned. Grade: chosen, wide. */
const DAY_SD = 0.4;
/** The same within the day. Grade: chosen. */
export const LEVEL_SD = 0.25;
/** Log-noise of the pace of a piler before it is learned: 4 to 29 trucks an hour were seen. Grade: chosen. */
const PACE_SD = 0.2;
/** Until it is learned. Grade: chosen. */
export const TICKETS: TicketHabit = { lostShare: 0.07, toldAfterMin: 3 };
/** Usual waits are learned for stretches of this length. Grade: chosen. */
export const USUAL_BLOCK_MIN: Minutes = 120;

/** Pilers working at the usual rate, trucks coming evenly through the day. */
export const defaultProfile = (usualPilers: number): UsualDay => ({
  arrivalsPerMin: Array.from(
    { length: DAY_BINS },
    () => (PILERS_BUSY * Math.max(1, usualPilers)) / MIN_PER_TRUCK,
  ),
  daySd: DAY_SD,
  levelSd: LEVEL_SD,
  dispersion: 1,
  minPerTruck: MIN_PER_TRUCK,
  paceSd: PACE_SD,
  pilersOpen: [],
  usualLine: [],
  returning: 0,
  tickets: TICKETS,
  late: HABITS_PRIOR,
  yardMin: YARD_MIN,
  usual: [],
  days: 0,
});

export const atBin = (bins: readonly number[], atMin: Minutes): number =>
  bins[Math.max(0, Math.floor(atMin / BIN_MIN))] ?? 0;

export const usualAt = (profile: UsualDay, atMin: Minutes): UsualWait | null =>
  profile.usual[Math.max(0, Math.floor(atMin / USUAL_BLOCK_MIN))] ?? null;
