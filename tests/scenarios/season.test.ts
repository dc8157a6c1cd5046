/** A scripted season of 60 days, with forecasts that are revised as real ones are (figures and sources: tests/backtest-weather). */
import { expect, test } from 'vitest';
import { forecastsOf } from '../backtest-weather/revisions.ts';
import { harvestDays, randomOf } from '../backtest-weather/season.ts';
import { seasonOf } from '../backtest-weather/seasons.ts';

// National Weather Service, seven places in or near beet country, 15 September to 15 November 2021: revisions of the
// high within 12 hours have a standard deviation of 1.3 °F, and 6 in 100 are of 3 °F or more.
test('forecasts are revised as real ones are', () => {
  const days = harvestDays().slice(0, 60);
  const all = Array.from({ length: 40 }, (_, seed) => forecastsOf(days, randomOf(seed)).revisionsF).flat();
  const sd = Math.sqrt(all.reduce((sum, f) => sum + f * f, 0) / all.length);
  expect(sd).toBeCloseTo(1.3, 0);
  expect(all.filter((f) => Math.abs(f) >= 3).length / all.length).toBeCloseTo(0.06, 1);
});

test('in 60 days at most one stop is taken back and ordered anew, and no clearly warm day comes unannounced', () => {
  const { score } = seasonOf(2013);
  expect(score).toMatchObject({ days: 60, warmDays: 22, clearlyMissed: 0 });
  expect(score.flipFlops).toBeLessThanOrEqual(1);
  expect(score.perDay.driver).toBeLessThan(1);
}, 120_000);
