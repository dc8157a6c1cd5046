import { describe, expect, it } from 'vitest';
import { crossings } from '../../../src/core/weather/crossing.ts';
import { wallTimeOfDayMs } from '../../../src/core/zone-clock.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, day, hours as hourly } from './forecasts.ts';

const afternoon = { fromMs: at('2026-10-20T18:00Z'), toMs: at('2026-10-21T00:00Z') };

describe('crossings of a limit', () => {
  it('lie on the straight line between two hours: 11:00 54, 12:00 57 crosses 55 at 11:20', () => {
    const hours = hourly('2026-10-20T17:00Z', [54, 57, 57, 57, 57, 57, 57, 57, 57, 54]);
    const { upMs, downMs } = crossings(hours, 55, afternoon);
    expect(upMs).toBe(at('2026-10-20T17:20Z'));
    expect(downMs).toBe(at('2026-10-21T01:40Z'));
  });

  it('are none where the forecast only touches the limit, or lies flat on it', () => {
    for (const temperatures of [
      [54, 55, 54],
      [55, 55, 55],
      [54, 55, 55],
    ]) {
      const { peakF, upMs, downMs } = crossings(hourly('2026-10-20T20:00Z', temperatures), 55, afternoon);
      expect({ peakF, upMs, downMs }).toEqual({ peakF: 55, upMs: null, downMs: null });
    }
  });

  it('start before the window where the warmth does', () => {
    const hours = day([
      [0, 50],
      [8, 50],
      [10, 60],
      [20, 60],
      [22, 50],
    ]);
    const { upMs, downMs, peakMs } = crossings(hours, 55, afternoon);
    expect(upMs).toBe(at('2026-10-20T15:00Z'));
    expect(downMs).toBe(at('2026-10-21T03:00Z'));
    expect(peakMs).toBe(afternoon.fromMs);
  });

  it('start with the forecast where it is warm from its first hour on', () => {
    const hours = hourly('2026-10-20T16:30Z', [60, 60, 60, 60]);
    expect(crossings(hours, 55, afternoon).upMs).toBe(at('2026-10-20T16:30Z'));
  });

  it('leave out warmth that is over before the window, as on a day whose high is at midnight', () => {
    const hours = day([
      [0, 64],
      [6, 58],
      [11, 45],
      [23, 38],
    ]);
    expect(crossings(hours, 55, afternoon)).toMatchObject({ upMs: null, downMs: null });
  });

  it('span a dip below the limit within the window', () => {
    const hours = hourly('2026-10-20T18:00Z', [54, 56, 54, 56, 54, 54, 54]);
    const { upMs, downMs } = crossings(hours, 55, afternoon);
    expect(upMs).toBe(at('2026-10-20T18:30Z'));
    expect(downMs).toBe(at('2026-10-20T21:30Z'));
  });

  it('have no end where the forecast ends warm', () => {
    expect(crossings(hourly('2026-10-20T18:00Z', [54, 60, 60]), 55, afternoon).downMs).toBeNull();
  });

  it('do not depend on the order of hours, and take the later entry of an hour given twice', () => {
    const hours = hourly('2026-10-20T17:00Z', [54, 57, 60, 57, 54]);
    const doubled = [{ startMs: at('2026-10-20T19:00Z'), temperatureF: 99 }, ...hours.toReversed()];
    expect(crossings(doubled, 55, afternoon)).toEqual(crossings(hours, 55, afternoon));
    expect(crossings(hours, 55, afternoon).peakF).toBe(60);
  });

  it('are unknown without hours in the window', () => {
    const unknown = { peakF: null, peakMs: null, upMs: null, downMs: null };
    expect(crossings([], 55, afternoon)).toEqual(unknown);
    expect(crossings(hourly('2026-10-22T17:00Z', [70, 70]), 55, afternoon)).toEqual(unknown);
  });
});

describe('the afternoon window around the end of daylight time', () => {
  it.each([
    ['America/Chicago', '2026-10-31', '17:00', '23:00'],
    ['America/Chicago', '2026-11-01', '18:00', '24:00'],
    ['America/Chicago', '2026-11-02', '18:00', '24:00'],
    ['America/Boise', '2026-10-31', '18:00', '24:00'],
    ['America/Boise', '2026-11-01', '19:00', '25:00'],
    ['America/Boise', '2026-11-02', '19:00', '25:00'],
  ])('in %s on %s is %s-%s UTC', (zone, date, from, to) => {
    const utc = (clock: string): number => at(`${date}T00:00Z`) + Number(clock.slice(0, 2)) * 3_600_000;
    const someTime = at(`${date}T13:00Z`);
    expect(wallTimeOfDayMs(zoneClock, zone, someTime, 12, 0)).toBe(utc(from));
    expect(wallTimeOfDayMs(zoneClock, zone, someTime, 18, 0)).toBe(utc(to));
  });
});
