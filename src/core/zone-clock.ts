import type { EpochMs, Span } from './units.ts';

/** Wall time in some zone. `month` 1-12, `hour` 0-23, `weekday` 1 = Monday ... 7 = Sunday. */
export interface WallTime {
  year: number;
  month: number;
  day: number;
  hour: number;
  minute: number;
  weekday: number;
  /** Such as "MDT"; needed when a clock hour happens twice. */
  abbreviation: string;
}

/**
 * Wall time and instants in an IANA zone, passed to the pure folders as a value.
 * Days can have 23 or 25 hours. A wall time that happens twice means its first occurrence; one that is skipped means
 * the instant that is as far after midnight.
 */
export interface ZoneClock {
  wall: (zone: string, atMs: EpochMs) => WallTime;
  instant: (
    zone: string,
    wall: { year: number; month: number; day: number; hour: number; minute: number },
  ) => EpochMs;
}

/** The first instant of the calendar day (in the zone) that contains `atMs`. */
export const startOfDayMs = (clock: ZoneClock, zone: string, atMs: EpochMs): EpochMs =>
  wallTimeOfDayMs(clock, zone, atMs, 0, 0);

/** `hour:minute` wall time on the calendar day (in the zone) that contains `atMs`, moved by whole calendar days. */
export const wallTimeOfDayMs = (
  clock: ZoneClock,
  zone: string,
  atMs: EpochMs,
  hour: number,
  minute: number,
  addDays = 0,
): EpochMs => {
  const { year, month, day } = clock.wall(zone, atMs);
  return clock.instant(zone, { year, month, day: day + addDays, hour, minute });
};

/** The calendar day (in the zone) that contains `atMs`, moved by whole days; `toMs` is the first instant of the next. */
export const calendarDay = (clock: ZoneClock, zone: string, atMs: EpochMs, addDays = 0): Span => ({
  fromMs: wallTimeOfDayMs(clock, zone, atMs, 0, 0, addDays),
  toMs: wallTimeOfDayMs(clock, zone, atMs, 0, 0, addDays + 1),
});
