/** The operation's own past at a station: what its profile and the honesty of its intervals are learned from. */
import type { StationId } from '../roster.ts';
import type { EpochMs } from '../units.ts';
import { calendarDay } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { lineObservations } from './observations.ts';
import type { LineObservations, Visit } from './types.ts';
import { firstMs } from '../harvest/chapters.ts';
import type { Harvest } from '../harvest/harvest.ts';

/** A harvest lasts about a month; older days tell of other roads and crews. */
export const DAYS_KEPT = 30;

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

const signOfDay = ({ visits, headCounts, pilers, opening }: LineObservations): string => {
  const sum = visits.reduce((total, visit) => (total + signOf(visit)) % Number.MAX_SAFE_INTEGER, 0);
  return [opening ?? 0, visits.length, headCounts.length, pilers.length, sum].join(' ');
};

/** The same for the same past days: what was learned from them still holds. */
export const signOfPast = ({ station, usualPilers, past }: LineHistory): string =>
  [station, usualPilers, ...past.map(signOfDay)].join(';');

/** The same while no trip of ours has been finished since, today included. */
export const signOfHistory = (history: LineHistory): string => {
  const done = history.today.visits.filter(
    ({ joinedMs, firstWeighedMs, secondWeighedMs }) =>
      joinedMs !== null && (firstWeighedMs ?? secondWeighedMs) !== null,
  );
  return `${signOfPast(history)}|${signOfDay({ ...history.today, visits: done })}`;
};
