import { describe, expect, test } from 'vitest';
import { keptForecast, saysNothingNew } from '../../../src/core/weather/kept-forecast.ts';
import { rainWithin } from '../../../src/core/weather/rain.ts';

const HOUR_MS = 3_600_000;
const hours = (temperatures: readonly number[], fromHour = 0) =>
  temperatures.map((temperatureF, hour) => ({ startMs: (fromHour + hour) * HOUR_MS, temperatureF }));
const long = Array.from({ length: 156 }, (_, hour) => 40 + (hour % 24));

describe('what is kept of a forecast', () => {
  test('is 60 h of temperatures, stretched to the high that is stated, to a hundredth', () => {
    const highs = [{ fromMs: 0, toMs: 3 * HOUR_MS, temperatureF: 53 }];
    const { hours: kept } = keptForecast({ hours: hours([40, 50, 43]), highs, rain: [] }, 0);
    // 43 °F is 3/10 of the way up, so it gains 3/10 of the 3 °F.
    expect(kept.map(({ temperatureF }) => temperatureF)).toEqual([40, 53, 43.9]);
    expect(keptForecast({ hours: hours(long), highs: [], rain: [] }, HOUR_MS / 2).hours).toHaveLength(61);
  });

  test('is as much rain as fell in it, with dry spans as one', () => {
    const rain = [0, 0, 0.1, 0, 0, 0].map((inches, nth) => ({
      fromMs: nth * 6 * HOUR_MS,
      toMs: (nth + 1) * 6 * HOUR_MS,
      inches,
    }));
    const { rain: kept } = keptForecast({ hours: [], highs: [], rain }, 0);
    expect(kept.map(({ inches }) => inches)).toEqual([0, 0.1, 0]);
    const span = { fromMs: 3 * HOUR_MS, toMs: 30 * HOUR_MS };
    expect(rainWithin(kept, span)).toBeCloseTo(rainWithin(rain, span), 10);
  });
});

describe('a newer issue says nothing new', () => {
  const issue = (hour: number, change: Partial<Parameters<typeof saysNothingNew>[0]> = {}) => ({
    issuedMs: hour * HOUR_MS,
    hours: hours(long.slice(hour, hour + 60), hour),
    rain: [{ fromMs: 20 * HOUR_MS, toMs: 26 * HOUR_MS, inches: 0.1 }],
    freezeAlerts: [],
    ...change,
  });
  const isNew = (next: ReturnType<typeof issue>, ...before: ReturnType<typeof issue>[]): boolean =>
    !saysNothingNew(next, before, next.issuedMs);

  test('where the two before it said the same of the hours that they share', () => {
    expect(isNew(issue(2), issue(0), issue(1))).toBe(false);
  });

  test('but the second of a kind does, since a restart waits until two agree', () => {
    expect(isNew(issue(1), issue(0))).toBe(true);
    const warmer = { hours: hours([90, 90]) };
    expect(isNew(issue(2), issue(0, warmer), issue(1))).toBe(true);
  });

  test('nor is it passed over where an hour, the rain or an alert has changed, or after three hours', () => {
    const alert = { id: 'a', event: 'Freeze Warning', onsetMs: null, endsMs: null };
    const alerted: Partial<Parameters<typeof saysNothingNew>[0]> = { freezeAlerts: [alert] };
    expect(isNew(issue(2, { hours: hours(long.map((f) => f + 0.01)) }), issue(0), issue(1))).toBe(true);
    expect(isNew(issue(2, { rain: [] }), issue(0), issue(1))).toBe(true);
    expect(isNew({ ...issue(2), ...alerted }, issue(0), issue(1))).toBe(true);
    expect(isNew(issue(4), issue(0), issue(1))).toBe(true);
  });
});
