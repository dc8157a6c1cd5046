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
  // 1 - Φ((55 - f) / σ), worked out apart from this code.
  it.each([
    [49, 24, 0.0228],
    [52, 24, 0.1587],
    [55, 24, 0.5],
    [58, 24, 0.8413],
    [49, 48, 0.057],
    [52, 48, 0.215],
    [52, 72, 0.243],
    [58, 72, 0.757],
    [49, 120, 0.138],
    [58, 120, 0.707],
    [52, 168, 0.332],
    [58, 168, 0.668],
  ])('by a forecast of %d °F %d h ahead is %d', (forecastF, lead, chance) => {
    expect(chanceAbove(55, forecastF, expectedError(lead, []))).toBeCloseTo(chance, 3);
  });

  it.each([
    [24, 57.5],
    [48, 58.2],
    [72, 58.6],
    [120, 59.6],
    [168, 60.8],
  ])('%d h ahead is four in five by a forecast of %d °F', (lead, forecastF) => {
    expect(chanceAbove(55, forecastF, expectedError(lead, []))).toBeCloseTo(0.8, 1);
  });

  it('with the error of Oklahoma City (Brooks & Doswell 1996, root mean square 3.80 °F) is 9, 21, 50, 79, 91 %', () => {
    const error = { biasF: 0, sdF: 3.8 };
    const percent = [-5, -3, 0, 3, 5].map((over) => Math.round(100 * chanceAbove(55, 55 + over, error)));
    expect(percent).toEqual([9, 21, 50, 79, 91]);
  });

  it('allows for the share within 3 °F at one day that was found: 68 % (forecastadvisor.com, 24 September 2006)', () => {
    const { sdF } = expectedError(24, []);
    expect(normalShareBelow(3 / sdF) - normalShareBelow(-3 / sdF)).toBeCloseTo(0.68, 2);
  });

  it('is never below 2 %, because misses of 10 °F are more frequent than the normal 0.09 %: 3 % (same source)', () => {
    const normal = 2 * normalShareBelow(-10 / expectedError(24, []).sdF);
    expect(normal).toBeLessThan(0.03);
    expect(chanceAbove(55, 44, expectedError(24, []))).toBe(0.02);
  });
});
