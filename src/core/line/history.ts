/** The operation's own past at a station, from which its usual day and the calibration of its intervals are learned. */
import type { StationId } from '../roster.ts';
import type { EpochMs } from '../units.ts';
import { calendarDay } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { DAYS_KEPT } from './assumptions.ts';
import { lineObservations } from './observations.ts';
import type { LineObservations, Visit } from './types.ts';
import { firstMs } from '../harvest/chapters.ts';
import type { Harvest } from '../harvest/harvest.ts';

export { DAYS_KEPT } from './assumptions.ts';

export interface LineHistory {
  station: StationId;
  usualPilers: number;
  /** Earlier days with trucks of ours at the station, oldest first. */
  past: readonly LineObservations[];
  today: LineObservations;
}

export const lineHistory = (
  harvest: Harvest,
  station: StationId,
  clock: ZoneClock,
  nowMs: EpochMs,
): LineHistory => {
  const at = (daysAgo: number): LineObservations =>
    lineObservations(harvest, station, calendarDay(clock, harvest.roster.zone, nowMs, -daysAgo));
  const today = at(0);
  const oldestMs = Math.min(nowMs, firstMs(harvest) ?? nowMs);
  const past = Array.from({ length: DAYS_KEPT }, (_, ago) => DAYS_KEPT - ago)
    .filter((daysAgo) => calendarDay(clock, harvest.roster.zone, nowMs, -daysAgo).toMs > oldestMs)
    .map(at)
    .filter(({ visits }) => visits.length > 0);
  return { station, usualPilers: today.usualPilers, past, today };
};

const signOf = ({ joinedMs, firstWeighedMs, secondWeighedMs, heardMs }: Visit): number =>
  (joinedMs ?? 1) + 3 * (firstWeighedMs ?? 1) + 5 * (secondWeighedMs ?? 1) + 7 * heardMs;

/** Equal for equal observations. */
export const signOfDay = ({ visits, headCounts, pilers, opening }: LineObservations): string => {
  const sum = visits.reduce((total, visit) => (total + signOf(visit)) % Number.MAX_SAFE_INTEGER, 0);
  return [opening ?? 0, visits.length, headCounts.length, pilers.length, sum].join(' ');
};

/** Equal for equal past days: what was learned from them is still valid. */
export const signOfPast = ({ station, usualPilers, past }: LineHistory): string =>
  [station, usualPilers, ...past.map(signOfDay)].join(';');

/** Equal as long as no further trip of ours has been finished, today included. */
export const signOfHistory = (history: LineHistory): string => {
  const done = history.today.visits.filter(
    ({ joinedMs, firstWeighedMs, secondWeighedMs }) =>
      joinedMs !== null && (firstWeighedMs ?? secondWeighedMs) !== null,
  );
  return `${signOfPast(history)}|${signOfDay({ ...history.today, visits: done })}`;
};
