import { describe, expect, it } from 'vitest';
import { FRESH_CALIBRATION, calibrated, learnedFrom } from '../../../../src/core/line/model/calibration.ts';
import type { Calibration } from '../../../../src/core/line/model/calibration.ts';

const RAW = { lowMin: 10, medianMin: 20, highMin: 40 };
const fed = (waitMin: number, times: number, leadMin = 0): Calibration =>
  Array.from({ length: times }).reduce<Calibration>(
    (before) => learnedFrom(before, leadMin, RAW, waitMin),
    FRESH_CALIBRATION,
  );
const widthAfter = (calibration: Calibration, leadMin = 0): number => {
  const { lowMin, highMin } = calibrated(calibration, leadMin, RAW);
  return highMin - lowMin;
};

describe('the calibration of the interval', () => {
  it('leaves the forecast as it is until thirty tickets have come in', () => {
    expect(calibrated(fed(100, 29), 0, RAW)).toEqual(RAW);
    expect(calibrated(fed(100, 30), 0, RAW)).not.toEqual(RAW);
  });

  it('widens after misses and narrows after near hits, and never goes below no wait', () => {
    expect(widthAfter(fed(100, 40))).toBeGreaterThan(30);
    expect(widthAfter(fed(21, 40))).toBeLessThan(30);
    expect(calibrated(fed(300, 60), 0, RAW).lowMin).toBe(0);
  });

  it('keeps each lead to itself', () => {
    expect(widthAfter(fed(100, 40, 0), 30)).toBe(30);
    expect(widthAfter(fed(100, 40, 30), 30)).toBeGreaterThan(30);
  });

  it('never moves the median', () => {
    expect(calibrated(fed(100, 60), 0, RAW).medianMin).toBe(RAW.medianMin);
  });
});
