/** The chance that a forecast maximum passes a limit, against the normal distribution and published verification. */
import { describe, expect, it } from 'vitest';
import { chanceAbove, expectedError } from '../../src/core/weather/forecast-error.ts';
import { normalShareBelow } from '../../src/core/statistics.ts';

describe('the normal distribution', () => {
  // Printed in any table of it.
  it.each([
    [0, 0.5],
    [1, 0.841345],
    [2, 0.97725],
    [-1.96, 0.0249979],
    [0.841621, 0.8],
  ])('below %d lies %d', (z, share) => {
    expect(normalShareBelow(z)).toBeCloseTo(share, 5);
  });

  it('is even, and sums to one', () => {
    for (const z of [0.1, 0.7, 1.3, 2.9, 5])
      expect(normalShareBelow(z) + normalShareBelow(-z)).toBeCloseTo(1, 12);
  });
});

describe('the chance of passing 55 °F', () => {
  // 1 - Φ((55 - f - b) / σ), worked out apart from this code, with b and σ as measured in beet country.
  it.each([
    [52, 9, 0.1894],
    [55, 9, 0.6255],
    [58, 9, 0.9357],
    [52, 21, 0.2184],
    [58, 33, 0.9032],
    [49, 45, 0.0725],
    [52, 45, 0.2743],
    [52, 72, 0.3126],
    [58, 72, 0.8178],
    [49, 120, 0.1769],
    [58, 120, 0.7609],
    [52, 168, 0.3804],
    [58, 168, 0.714],
  ])('by a forecast of %d °F %d h ahead is %d', (forecastF, lead, chance) => {
    expect(chanceAbove(55, forecastF, expectedError(lead, []))).toBeCloseTo(chance, 3);
  });

  it.each([
    [9, 56.3],
    [21, 56.4],
    [45, 57.0],
    [72, 57.7],
    [120, 58.7],
    [168, 59.9],
  ])('%d h ahead is four in five by a forecast of %d °F', (lead, forecastF) => {
    expect(chanceAbove(55, forecastF, expectedError(lead, []))).toBeCloseTo(0.8, 2);
  });

  it('with the error of Oklahoma City (Brooks & Doswell 1996, root mean square 3.80 °F) is 9, 21, 50, 79, 91 %', () => {
    const error = { biasF: 0, sdF: 3.8 };
    const percent = [-5, -3, 0, 3, 5].map((over) => Math.round(100 * chanceAbove(55, 55 + over, error)));
    expect(percent).toEqual([9, 21, 50, 79, 91]);
  });

  it('is near the share within 3 °F at one day that was found for the whole country: 68 % (forecastadvisor.com, 24 September 2006)', () => {
    const { sdF } = expectedError(24, []);
    const share = normalShareBelow(3 / sdF) - normalShareBelow(-3 / sdF);
    expect(Math.abs(share - 0.68)).toBeLessThan(0.05);
  });

  // National Weather Service forecasts and what came, 15 September to 15 November 2021, seven places of beet country
  // (github.com/speegled/weather_forecasts).
  it.each([
    [9, 0.8, 2.5],
    [21, 0.9, 2.7],
    [33, 0.9, 3],
    [45, 0.9, 3.5],
  ])('%d h ahead starts from a bias of %d °F and a spread of %d °F', (lead, biasF, sdF) => {
    expect(expectedError(lead, [])).toEqual({ biasF, sdF, learnedF: 0 });
  });

  it('is never below 2 %, because misses of 10 °F are more frequent than the normal 0.09 %: 3 % (same source)', () => {
    const normal = 2 * normalShareBelow(-10 / expectedError(24, []).sdF);
    expect(normal).toBeLessThan(0.03);
    expect(chanceAbove(55, 44, expectedError(24, []))).toBe(0.02);
  });
});
