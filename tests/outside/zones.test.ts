/**
 * Days and zones of beet country by the tz database: daylight time ends on Sunday 1 November 2026 (15 U.S.C. 260a), in
 * the middle of the harvest.
 */
import { describe, expect, it } from 'vitest';
import { startOfDayMs, wallTimeOfDayMs } from '../../src/core/zone-clock.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';

const HOUR_MS = 3_600_000;
const hoursOf = (zone: string, date: string): number => {
  const noonMs = Date.parse(`${date}T18:00Z`);
  return (
    (wallTimeOfDayMs(zoneClock, zone, noonMs, 0, 0, 1) - startOfDayMs(zoneClock, zone, noonMs)) / HOUR_MS
  );
};

describe('the day that daylight time ends', () => {
  it.each(['America/Boise', 'America/Chicago', 'America/Denver', 'America/Detroit', 'America/Menominee'])(
    'has 25 hours in %s',
    (zone) => {
      expect(hoursOf(zone, '2026-11-01')).toBe(25);
      expect(hoursOf(zone, '2026-10-31')).toBe(24);
      expect(hoursOf(zone, '2027-11-07')).toBe(25);
    },
  );

  it.each(['America/Regina', 'America/Phoenix'])('has 24 hours in %s', (zone) => {
    expect(hoursOf(zone, '2026-11-01')).toBe(24);
  });

  it('has its noon 13 hours after its midnight', () => {
    const someMs = Date.parse('2026-11-01T18:00Z');
    const noonMs = wallTimeOfDayMs(zoneClock, 'America/Chicago', someMs, 12, 0);
    expect(noonMs - startOfDayMs(zoneClock, 'America/Chicago', someMs)).toBe(13 * HOUR_MS);
  });
});

describe('zones that cut beet country', () => {
  const offsetHours = (zone: string): number => {
    const atMs = Date.parse('2026-10-20T18:00Z');
    return (zoneClock.instant('UTC', zoneClock.wall(zone, atMs)) - atMs) / HOUR_MS;
  };

  it.each([
    ['Ontario and Nyssa, Oregon', 'America/Boise', -6],
    ['Burns, Oregon, the next county', 'America/Los_Angeles', -7],
    ['Sidney, Montana', 'America/Denver', -6],
    ['Beulah, North Dakota', 'America/North_Dakota/Beulah', -5],
    ['the Red River Valley', 'America/Chicago', -5],
    ['Bay City, Michigan', 'America/Detroit', -4],
    ['Menominee, Michigan', 'America/Menominee', -5],
  ])('%s: %s is %d h in October', (_, zone, hours) => {
    expect(offsetHours(zone)).toBe(hours);
  });
});
