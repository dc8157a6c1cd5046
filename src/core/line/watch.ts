/** What the crew should be told of the line without asking: that it stands still, that it passes the set limit. */
import { minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import type { TruckId } from '../roster.ts';
import type { LineObservations, WaitForecast } from './types.ts';

/** Trucks of ours wait, and none was weighed for `silentMin`. */
export interface StoppedLine {
  waiting: readonly TruckId[];
  /** Since the last first weight of ours, or since the first of the waiting trucks joined, whichever is later. */
  silentMin: Minutes;
}

const isWaiting = (
  { joinedMs, firstWeighedMs, dumpedMs, secondWeighedMs }: LineObservations['visits'][number],
  nowMs: EpochMs,
): boolean =>
  joinedMs !== null &&
  joinedMs <= nowMs &&
  firstWeighedMs === null &&
  dumpedMs === null &&
  secondWeighedMs === null;

/** Nobody's ticket is told for this long after a first weight, even in a moving line; common practice, no source. */
const TELLING_MIN = 20;

/**
 * Null = the line moves, as far as can be told. It is taken to stand when our trucks have waited well beyond the top of
 * the interval that was forecast for them (`highMin`, as forecast when the first of them joined).
 */
export const stoppedLine = (
  { visits }: LineObservations,
  highMin: Minutes,
  nowMs: EpochMs,
): StoppedLine | null => {
  const heard = visits.filter((visit) => visit.heardMs <= nowMs);
  const waiting = heard.filter((visit) => isWaiting(visit, nowMs));
  const firstJoinedMs = Math.min(...waiting.map((visit) => visit.joinedMs ?? nowMs));
  const lastServedMs = Math.max(...heard.map((visit) => visit.firstWeighedMs ?? visit.secondWeighedMs ?? 0));
  if (waiting.length === 0) return null;
  const silentMin = minutesBetween(Math.max(firstJoinedMs, lastServedMs), nowMs);
  return silentMin > highMin + TELLING_MIN
    ? { waiting: waiting.map((visit) => visit.truck), silentMin }
    : null;
};

/** Whether the forecast passes the limit, with a gap so that a wait that hovers there is not told again and again. */
export type LimitCrossing = 'above' | 'below' | 'unchanged';

const GAP_SHARE = 0.25;

export const limitCrossing = (
  wasAbove: boolean,
  forecast: WaitForecast,
  limitMin: Minutes | null,
): LimitCrossing => {
  if (limitMin === null || !forecast.known) return 'unchanged';
  if (!wasAbove && forecast.medianMin > limitMin) return 'above';
  if (wasAbove && forecast.medianMin < (1 - GAP_SHARE) * limitMin) return 'below';
  return 'unchanged';
};
