import { MS_PER_MINUTE } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { ROUNDED_TO_MIN } from './assumptions.ts';

/** The times between digger and pile for the last load. Zero = not known or not counted. */
export interface Haul {
  /** To fill one truck. */
  fillMin: Minutes;
  haulMin: Minutes;
  /** Wait in the scale line, as forecast. */
  lineWaitMin: Minutes;
  unloadMin: Minutes;
  marginMin: Minutes;
}

export const NO_HAUL: Haul = { fillMin: 0, haulMin: 0, lineWaitMin: 0, unloadMin: 0, marginMin: 0 };

interface StopTimes {
  stopToppingMs: EpochMs;
  stopAtMs: EpochMs;
  /** When the last truck must leave the field. */
  lastTruckMs: EpochMs;
}

const FIVE_MINUTES_MS = ROUNDED_TO_MIN * MS_PER_MINUTE;
export const earlier5 = (ms: EpochMs): EpochMs => Math.floor(ms / FIVE_MINUTES_MS) * FIVE_MINUTES_MS;
export const later5 = (ms: EpochMs): EpochMs => Math.ceil(ms / FIVE_MINUTES_MS) * FIVE_MINUTES_MS;

/**
 * Works back from the time by which the last load must be on the pile. Times that would be past become now.
 *
 * @param toppingLeadMin how far the topper is ahead of the digger
 */
export const stopTimes = (
  onPileByMs: EpochMs,
  haul: Haul,
  toppingLeadMin: Minutes,
  nowMs: EpochMs,
): StopTimes => {
  const awayMin = haul.haulMin + haul.lineWaitMin + haul.unloadMin + haul.marginMin;
  const lastTruckMs = onPileByMs - awayMin * MS_PER_MINUTE;
  const stopAtMs = Math.max(earlier5(lastTruckMs - haul.fillMin * MS_PER_MINUTE), nowMs);
  return {
    stopToppingMs: Math.max(stopAtMs - toppingLeadMin * MS_PER_MINUTE, nowMs),
    stopAtMs,
    lastTruckMs: Math.max(lastTruckMs, nowMs),
  };
};
