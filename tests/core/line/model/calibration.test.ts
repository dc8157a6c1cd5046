import { describe, expect, it } from 'vitest';
import { FRESH_CALIBRATION, calibrated, learnedFrom } from '../../../../src/core/line/model/calibration.ts';
import type { Calibration, WaitInterval } from '../../../../src/core/line/model/calibration.ts';
import { exponential, normal, randomFrom } from '../../../../src/core/line/model/random.ts';

const RAW = { lowMin: 10, medianMin: 20, highMin: 40 };
const fed = (waitMin: number, times: number, leadMin = 0): Calibration =>
  Array.from({ length: times }).reduce<Calibration>(
    (before) => learnedFrom(before, leadMin, RAW, waitMin),
    FRESH_CALIBRATION,
  );
const widthOf = ({ lowMin, highMin }: WaitInterval): number => highMin - lowMin;
const widthAfter = (calibration: Calibration, leadMin = 0): number =>
  widthOf(calibrated(calibration, leadMin, RAW));

describe('the calibration of the interval', () => {
  it('leaves the forecast as it is until thirty tickets have come in', () => {
    expect(calibrated(fed(100, 29), 0, RAW)).toEqual(RAW);
    expect(calibrated(fed(100, 30), 0, RAW)).not.toEqual(RAW);
  });

  it('moves to where the waits were, and narrows after near hits, and never goes below no wait', () => {
    const after = calibrated(fed(100, 40), 0, RAW);
    expect(after.highMin).toBeGreaterThanOrEqual(90);
    expect(after.medianMin).toBeGreaterThan(RAW.highMin);
    expect(widthAfter(fed(21, 40))).toBeLessThan(30);
    expect(calibrated(fed(0, 60), 0, RAW).lowMin).toBeLessThan(1);
    expect(calibrated(fed(0, 60), 0, { ...RAW, lowMin: 0, medianMin: 2 }).lowMin).toBe(0);
  });

  it('keeps each lead to itself', () => {
    expect(widthAfter(fed(21, 40, 0), 30)).toBe(30);
    expect(widthAfter(fed(21, 40, 30), 30)).toBeLessThan(30);
  });

  it('does not turn bias into width: forecasts 20 min too long come out shorter, no wider', () => {
    const random = randomFrom(3);
    const biased = Array.from({ length: 100 }).reduce<Calibration>(
      (before) =>
        learnedFrom(
          before,
          0,
          { lowMin: 25, medianMin: 40, highMin: 60 },
          Math.max(0, 20 + 8 * normal(random)),
        ),
      FRESH_CALIBRATION,
    );
    const after = calibrated(biased, 0, { lowMin: 25, medianMin: 40, highMin: 60 });
    expect(after.medianMin).toBeLessThan(25);
    expect(widthOf(after)).toBeLessThan(30);
  });

  it('tells short forecasts from long ones', () => {
    const random = randomFrom(4);
    let calibration = FRESH_CALIBRATION;
    for (let trip = 0; trip < 150; trip += 1) {
      // Short forecasts are right; long ones are half as long again.
      const medianMin = trip % 2 === 0 ? 5 : 60;
      const raw = { lowMin: 0.6 * medianMin, medianMin, highMin: 1.4 * medianMin };
      const truth = (trip % 2 === 0 ? 5 : 90) + normal(random);
      calibration = learnedFrom(calibration, 0, raw, truth);
    }
    const short = calibrated(calibration, 0, { lowMin: 3, medianMin: 5, highMin: 7 });
    const long = calibrated(calibration, 0, { lowMin: 36, medianMin: 60, highMin: 84 });
    expect(Math.abs(short.medianMin - 5)).toBeLessThan(2);
    expect(long.medianMin).toBeGreaterThan(75);
  });

  it('holds eight times in ten, with one time in ten beyond each end, whatever the forecast was', () => {
    const random = randomFrom(5);
    let calibration = FRESH_CALIBRATION;
    const missed = { low: 0, high: 0, all: 0 };
    for (let trip = 0; trip < 900; trip += 1) {
      const medianMin = 10 + 50 * random();
      const raw = { lowMin: medianMin - 3, medianMin, highMin: medianMin + 3 };
      const waitMin = 0.7 * medianMin + exponential(random, 12);
      const told = calibrated(calibration, 0, raw);
      if (trip >= 100) {
        missed.low += waitMin < told.lowMin ? 1 : 0;
        missed.high += waitMin > told.highMin ? 1 : 0;
        missed.all += 1;
      }
      calibration = learnedFrom(calibration, 0, raw, waitMin);
    }
    expect(Math.abs(missed.low / missed.all - 0.1)).toBeLessThan(0.05);
    expect(Math.abs(missed.high / missed.all - 0.1)).toBeLessThan(0.05);
  });
});
