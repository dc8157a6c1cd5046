import { describe, expect, it } from 'vitest';
import { chanceAbove, expectedError } from '../../../src/core/weather/forecast-error.ts';
import type { ForecastPair } from '../../../src/core/weather/forecast-error.ts';
import { stretchToHighs } from '../../../src/core/weather/highs.ts';
import { stopTimes } from '../../../src/core/weather/ladder.ts';
import { at, clock, day, hours } from './forecasts.ts';

const pairs = (count: number, errors: readonly number[], leadHours = 10): ForecastPair[] =>
  Array.from({ length: count }, (_, i) => ({
    leadHours,
    forecastF: 60,
    observedF: 60 + (errors[i % errors.length] ?? 0),
  }));

describe('the error to expect of a forecast', () => {
  it('grows with the lead, and is never less than 2.5 °F', () => {
    const sdAt = (lead: number): number => expectedError(lead, []).sdF;
    expect([0, 9, 21, 45, 168, 500].map(sdAt)).toEqual([2.5, 2.5, 2.7, 3.5, 6.9, 6.9]);
    expect(sdAt(39)).toBeCloseTo(3.25, 10);
  });

  it('is the usual one until there are 30 pairs of about that lead', () => {
    const usual = expectedError(10, []);
    expect(expectedError(10, pairs(29, [4]))).toEqual(usual);
    expect(expectedError(10, pairs(90, [4], 48))).toEqual(usual);
    expect(expectedError(10, pairs(30, [4]))).not.toEqual(usual);
  });

  it('is drawn half to what was seen by 30 pairs, and three quarters by 90', () => {
    const usualF = 0.8 + 0.1 / 12;
    expect(expectedError(10, pairs(30, [4])).biasF).toBeCloseTo(2 + usualF / 2, 10);
    expect(expectedError(10, pairs(90, [4])).biasF).toBeCloseTo(3 + usualF / 4, 10);
    expect(expectedError(10, pairs(90, [4])).learnedF).toBeCloseTo(3, 10);
    // ±5 has the variance 25*90/89; the usual one is 2.5167² at 10 h.
    const expected = Math.sqrt(0.75 * ((25 * 90) / 89) + 0.25 * (2.5 + 0.2 / 12) ** 2);
    expect(expectedError(10, pairs(90, [5, -5])).sdF).toBeCloseTo(expected, 10);
  });
});

describe('the chance of passing a limit', () => {
  it('is even at the limit, and never nought or certain', () => {
    const error = { biasF: 0, sdF: 3 };
    expect(chanceAbove(55, 55, error)).toBeCloseTo(0.5, 7);
    expect(chanceAbove(55, 20, error)).toBe(0.02);
    expect(chanceAbove(55, 90, error)).toBe(0.98);
  });

  it('counts the bias', () => {
    expect(chanceAbove(55, 53, { biasF: 2, sdF: 3 })).toBeCloseTo(0.5, 7);
  });
});

describe('the stated high of a period', () => {
  const corners = [
    [0, 40],
    [6, 40],
    [15, 55],
    [23, 41],
  ] as const;
  const high = (temperatureF: number): { fromMs: number; toMs: number; temperatureF: number }[] => [
    { fromMs: clock('06:00'), toMs: clock('20:00'), temperatureF },
  ];

  it('above the hourly highest lifts the hours of its period, most where it is warmest', () => {
    const lifted = stretchToHighs(day(corners), high(58));
    const at15 = lifted[15]?.temperatureF;
    expect(at15).toBe(58);
    expect(lifted[6]?.temperatureF).toBe(40);
    // 50 at noon is two thirds of the way from 40 to 55.
    expect(lifted[12]?.temperatureF).toBeCloseTo(52, 10);
    expect(lifted[21]).toEqual(day(corners)[21]);
  });

  it('below the hourly highest, or of a flat period, changes nothing', () => {
    expect(stretchToHighs(day(corners), high(54))).toEqual(day(corners));
    const flat = hours('2026-10-20T06:00-06:00', [50, 50, 50]);
    expect(stretchToHighs(flat, high(54))).toEqual(flat);
  });

  it('does not lift the evening once the warmest hours are past', () => {
    const evening = day(corners).filter((hour) => hour.startMs >= clock('17:00'));
    expect(stretchToHighs(evening, high(58))).toEqual(evening);
  });
});

describe('the times worked back from the crossing', () => {
  const haul = { fillMin: 12, haulMin: 25, lineWaitMin: 30, unloadMin: 10, marginMin: 15 };

  it('leave room for the wait, the haul, the fill and the topper', () => {
    expect(stopTimes(clock('13:30'), haul, 30, clock('05:00'))).toEqual({
      lastTruckMs: clock('12:10'),
      stopAtMs: clock('11:55'),
      stopToppingMs: clock('11:25'),
    });
  });

  it('are now where they would be past', () => {
    const nowMs = at('2026-10-20T18:03:10Z');
    expect(stopTimes(clock('13:30'), haul, 30, nowMs)).toEqual({
      lastTruckMs: clock('12:10'),
      stopAtMs: nowMs,
      stopToppingMs: nowMs,
    });
  });
});
