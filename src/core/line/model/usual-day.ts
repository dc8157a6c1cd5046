/** What is usual at a station: learned over past days, shrunk to the trade's figures while there are few. */
import type { Minutes } from '../../units.ts';

export const BIN_MIN = 30;
export const DAY_BINS = 48;

export interface UsualWait {
  medianMin: Minutes;
  lowMin: Minutes;
  highMin: Minutes;
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
  /** Pilers open, on average, by half hour since opening; empty = not learned. */
  pilersOpen: readonly number[];
  /** Trucks in the line, on average, by half hour since opening. */
  usualLine: readonly number[];
  /**
   * Share of the arrivals that is missing for each truck in the line beyond the usual: 0 where trucks come by
   * themselves, about 1 / trucks where the same trucks come back.
   */
  returning: number;
  /** From first to second weight, where a ticket tells only one of them. */
  yardMin: Minutes;
  /** By two hours since opening; null where too little was seen. */
  usual: readonly (UsualWait | null)[];
  /** Days learned from. */
  days: number;
}

/**
 * Minutes that one piler needs for one truck: about 250 tons per hour
 * (https://followthecougar.blogspot.com/2015/10/ten-days-of-work) in loads of about 20 tons
 * (https://rv.cjsquare.com/?p=5100).
 */
export const DEFAULT_MIN_PER_TRUCK = 4.8;

/** Share of the time that pilers work, where nothing is learned: common practice, no source. */
const DEFAULT_BUSY = 0.75;

/** Pilers working at the default rate, trucks coming evenly through the day. */
export const defaultProfile = (usualPilers: number): UsualDay => ({
  arrivalsPerMin: Array.from(
    { length: DAY_BINS },
    () => (DEFAULT_BUSY * Math.max(1, usualPilers)) / DEFAULT_MIN_PER_TRUCK,
  ),
  daySd: 0.4,
  levelSd: 0.25,
  dispersion: 1,
  minPerTruck: DEFAULT_MIN_PER_TRUCK,
  pilersOpen: [],
  usualLine: [],
  returning: 0,
  yardMin: 3 * DEFAULT_MIN_PER_TRUCK,
  usual: [],
  days: 0,
});

export const atBin = (bins: readonly number[], atMin: Minutes): number =>
  bins[Math.max(0, Math.floor(atMin / BIN_MIN))] ?? 0;

export const usualAt = (profile: UsualDay, atMin: Minutes): UsualWait | null =>
  profile.usual[Math.max(0, Math.floor(atMin / 120))] ?? null;
