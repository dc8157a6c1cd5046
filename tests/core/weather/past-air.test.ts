import { expect, test } from 'vitest';
import { airWithPast } from '../../../src/core/weather/past-air.ts';
import { HOUR_MS, clock } from './forecasts.ts';

const DAY_MS = 24 * HOUR_MS;
const NOW_MS = clock('05:00');
const hoursAt = (fromMs: number, count: number, temperatureF: number) =>
  Array.from({ length: count }, (_, i) => ({ startMs: fromMs + i * HOUR_MS, temperatureF }));
const issued = (issuedMs: number, temperatureF: number) => ({
  issuedMs,
  hours: hoursAt(issuedMs, 48, temperatureF),
});
const newest = issued(NOW_MS, 60);

test('the past is as it was last forecast', () => {
  const air = airWithPast(
    newest,
    [issued(NOW_MS - 2 * DAY_MS, 40), issued(NOW_MS - DAY_MS, 50), newest],
    [],
    NOW_MS,
  );
  const at = (ms: number) => air.find(({ startMs }) => startMs === ms)?.temperatureF;
  expect([at(NOW_MS - 30 * HOUR_MS), at(NOW_MS - HOUR_MS), at(NOW_MS)]).toEqual([40, 50, 60]);
});

test('what was measured takes the place of the forecast of that hour', () => {
  const measured = [{ atMs: NOW_MS - 5 * HOUR_MS - 7 * 60_000, temperatureF: 33 }];
  const air = airWithPast(newest, [issued(NOW_MS - DAY_MS, 50)], measured, NOW_MS);
  const near = air.filter(({ startMs }) => Math.abs(startMs - (NOW_MS - 5 * HOUR_MS)) < HOUR_MS);
  expect(near.map(({ temperatureF }) => temperatureF)).toEqual([33]);
});

test('nothing older than a week, and nothing from later, counts', () => {
  const old = issued(NOW_MS - 8 * DAY_MS, 40);
  const later = issued(NOW_MS + HOUR_MS, 80);
  const measured = [NOW_MS - 8 * DAY_MS, NOW_MS + HOUR_MS].map((atMs) => ({ atMs, temperatureF: 90 }));
  expect(airWithPast(newest, [old, later], measured, NOW_MS)).toEqual(newest.hours);
});
