/**
 * The crossings of hourly normals that others published (see tests/support/seattle-hours.ts). The expected hours were
 * worked out apart from this code.
 */
import { describe, expect, it } from 'vitest';
import { fahrenheitFromCelsius } from '../../src/core/units.ts';
import { crossings } from '../../src/core/weather/crossing.ts';
import type { Crossings } from '../../src/core/weather/crossing.ts';
import { seattleHours } from '../support/seattle-hours.ts';

const HOUR_MS = 3_600_000;
const LIMIT_F = 55;
const hours = seattleHours().map(({ startMs, celsius }) => ({
  startMs,
  temperatureF: fahrenheitFromCelsius(celsius),
}));

const crossingsOf = (date: string): Crossings & { midnightMs: number } => {
  const midnightMs = Date.parse(`${date}T00:00Z`);
  const window = { fromMs: midnightMs + 12 * HOUR_MS, toMs: midnightMs + 18 * HOUR_MS };
  return { midnightMs, ...crossings(hours, LIMIT_F, window) };
};

describe('hourly normals of Seattle against 55 °F', () => {
  it('are read whole', () => {
    expect(hours).toHaveLength(8759);
  });

  it.each([
    ['2010-10-01', 17.6, 8.798, 22.2444],
    ['2010-10-10', 15.3, 10.4778, 18.3704],
    ['2010-10-15', 14.6, 11.3472, 17.4747],
    ['2010-10-20', 13.6, 12.2963, 16.5222],
  ])('%s: highest %d °C, above from hour %d to %d', (date, maxC, upHour, downHour) => {
    const { midnightMs, peakF, upMs, downMs } = crossingsOf(date);
    expect(peakF).toBeCloseTo(maxC * 1.8 + 32, 6);
    expect(((upMs ?? NaN) - midnightMs) / HOUR_MS).toBeCloseTo(upHour, 3);
    expect(((downMs ?? NaN) - midnightMs) / HOUR_MS).toBeCloseTo(downHour, 3);
  });

  it('pass it for the last time on 24 October', () => {
    expect(crossingsOf('2010-10-24').upMs).not.toBeNull();
    expect(crossingsOf('2010-10-25')).toMatchObject({ upMs: null, downMs: null });
  });
});
