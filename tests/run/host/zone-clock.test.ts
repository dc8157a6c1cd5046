import { Settings } from 'luxon';
import { afterEach, describe, expect, test } from 'vitest';
import { startOfDayMs, wallTimeOfDayMs } from '../../../src/core/zone-clock.ts';
import { isZone, zoneClock } from '../../../src/run/host/zone-clock.ts';

const HOUR_MS = 3_600_000;
const ms = (iso: string): number => Date.parse(iso);

const hoursOfDay = (zone: string, year: number, month: number, day: number): number => {
  const startOf = (d: number): number => zoneClock.instant(zone, { year, month, day: d, hour: 0, minute: 0 });
  return (startOf(day + 1) - startOf(day)) / HOUR_MS;
};

afterEach(() => {
  Settings.now = () => Date.now();
});

// Daylight saving time: second Sunday of March to first Sunday of November, at 2 a.m. (15 U.S.C. 260a). Arizona
// without the Navajo Nation does not observe it; Saskatchewan keeps central standard time (The Time Act, RSS 1978 c. T-14).
describe.each([
  ['July', '2026-07-10T12:00:00Z'],
  ['December', '2026-12-10T12:00:00Z'],
])('asked in %s', (_month, today) => {
  const asked = <T>(question: () => T): T => {
    Settings.now = () => ms(today);
    return question();
  };

  test.each([
    ['America/Boise', 25, 23],
    ['America/Chicago', 25, 23],
    ['America/Regina', 24, 24],
    ['America/Phoenix', 24, 24],
  ])('days of %s are as long as the law says', (zone, november, march) => {
    expect(asked(() => hoursOfDay(zone, 2026, 11, 1))).toBe(november);
    expect(asked(() => hoursOfDay(zone, 2027, 3, 14))).toBe(march);
    expect(asked(() => hoursOfDay(zone, 2026, 10, 20))).toBe(24);
  });

  test('a wall time that happens twice is its first occurrence', () => {
    const wall = { year: 2026, month: 11, day: 1, hour: 1, minute: 30 };
    expect(asked(() => zoneClock.instant('America/Boise', wall))).toBe(ms('2026-11-01T01:30:00-06:00'));
    expect(asked(() => zoneClock.instant('America/Chicago', wall))).toBe(ms('2026-11-01T01:30:00-05:00'));
  });

  test('a skipped wall time is as far after midnight as it would be', () => {
    const wall = { year: 2027, month: 3, day: 14, hour: 2, minute: 30 };
    const midnight = ms('2027-03-14T00:00:00-07:00');
    expect(asked(() => zoneClock.instant('America/Boise', wall))).toBe(midnight + 2.5 * HOUR_MS);
  });

  test('hours next to the change are not moved by it', () => {
    const at = (day: number, hour: number): number =>
      asked(() => zoneClock.instant('America/Boise', { year: 2026, month: 11, day, hour, minute: 0 }));
    expect(at(1, 0)).toBe(ms('2026-11-01T00:00:00-06:00'));
    expect(at(1, 2)).toBe(ms('2026-11-01T02:00:00-07:00'));
    expect(at(1, 12)).toBe(ms('2026-11-01T12:00:00-07:00'));
  });

  test('days run over into the months beside', () => {
    const at = (day: number): number =>
      asked(() => zoneClock.instant('America/Boise', { year: 2026, month: 10, day, hour: 6, minute: 0 }));
    expect(at(0)).toBe(ms('2026-09-30T06:00:00-06:00'));
    expect(at(32)).toBe(ms('2026-11-01T06:00:00-07:00'));
  });
});

test('wall time tells the zone, the weekday and which of the two hours it is', () => {
  const first = zoneClock.wall('America/Boise', ms('2026-11-01T07:15:00Z'));
  const second = zoneClock.wall('America/Boise', ms('2026-11-01T08:15:00Z'));
  const sunday = { year: 2026, month: 11, day: 1, hour: 1, minute: 15, weekday: 7 };
  expect(first).toEqual({ ...sunday, abbreviation: 'MDT' });
  expect(second).toEqual({ ...sunday, abbreviation: 'MST' });
  expect(zoneClock.wall('America/Regina', ms('2026-07-01T18:00:00Z'))).toMatchObject({
    hour: 12,
    abbreviation: 'CST',
  });
});

test('every instant of both change days comes back from its wall time, but for the second of two hours', () => {
  const from = ms('2026-11-01T06:00:00Z');
  for (let at = from; at < from + 25 * HOUR_MS; at += 15 * 60_000) {
    const wall = zoneClock.wall('America/Boise', at);
    const again = wall.hour === 1 && wall.abbreviation === 'MST' ? HOUR_MS : 0;
    expect(zoneClock.instant('America/Boise', wall)).toBe(at - again);
  }
});

test('a day that begins at 1 a.m., because midnight is skipped, begins there', () => {
  // Havana changes at midnight: https://www.iana.org/time-zones, file northamerica, rule Cuba.
  const noon = ms('2026-03-08T16:00:00Z');
  expect(startOfDayMs(zoneClock, 'America/Havana', noon)).toBe(ms('2026-03-08T05:00:00Z'));
});

test('the same wall time on the next calendar day is 25 hours away on the long day', () => {
  const at = (days: number): number =>
    wallTimeOfDayMs(zoneClock, 'America/Boise', ms('2026-10-31T18:00:00Z'), 12, 0, days);
  expect((at(1) - at(0)) / HOUR_MS).toBe(25);
});

test('an unknown zone is an error that names it', () => {
  expect(() => zoneClock.wall('America/Boisee', 0)).toThrow(/"America\/Boisee"/);
  expect(() => zoneClock.instant('local', { year: 2026, month: 1, day: 1, hour: 0, minute: 0 })).toThrow(
    /"local"/,
  );
  expect(['America/Boise', 'Boise', 'local', ''].map(isZone)).toEqual([true, false, false, false]);
});
