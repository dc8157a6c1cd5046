import { describe, expect, it } from 'vitest';
import { FRESH_MIXTURE, RULES, mixed, mixtureFrom } from '../../../../src/core/line/model/mixture.ts';
import type { Forecasts, Mixture } from '../../../../src/core/line/model/mixture.ts';
import { normal, randomFrom } from '../../../../src/core/line/model/random.ts';
import { pinball } from '../../../backtest/scoring.ts';

const around = (medianMin: number) => ({
  lowMin: Math.max(0, medianMin - 10),
  medianMin,
  highMin: medianMin + 10,
});
/** Trips whose wait is near `truth`; the filter is off by noise of `filterSd`, the last wait by `lastSd`. */
const season = (trips: number, filterSd: number, lastSd: number) => {
  const random = randomFrom(9);
  return Array.from({ length: trips }, () => {
    const waitMin = 10 + 50 * random();
    const off = (sd: number) => around(Math.max(0, waitMin + sd * normal(random)));
    const forecasts: Forecasts = {
      filter: off(filterSd),
      'last-wait': off(lastSd),
      'usual-wait': around(35),
    };
    return { waitMin, forecasts };
  });
};
const lossOf = (told: { lowMin: number; medianMin: number; highMin: number }, waitMin: number): number =>
  pinball(0.1, told.lowMin, waitMin) +
  pinball(0.5, told.medianMin, waitMin) +
  pinball(0.9, told.highMin, waitMin);

const lossesOn = (trips: ReturnType<typeof season>) => {
  let mixture: Mixture = FRESH_MIXTURE;
  const sum = { blend: 0, best: Object.fromEntries(RULES.map((rule) => [rule, 0])) };
  for (const { waitMin, forecasts } of trips) {
    const told = mixed(mixture, 0, forecasts);
    if (told !== null) sum.blend += lossOf(told, waitMin);
    for (const rule of RULES) {
      const alone = forecasts[rule];
      if (alone) sum.best[rule] = (sum.best[rule] ?? 0) + lossOf(alone, waitMin);
    }
    mixture = mixtureFrom(mixture, 0, forecasts, waitMin);
  }
  const { filter = NaN, 'last-wait': last = NaN } = sum.best;
  return { blend: sum.blend, filter, last };
};

describe('the blend of rules', () => {
  it('comes to follow the better one, whichever it is', () => {
    const bad = lossesOn(season(300, 30, 4));
    expect(bad.blend).toBeLessThan(1.1 * bad.last);
    expect(bad.blend).toBeLessThan(0.5 * bad.filter);
    const good = lossesOn(season(300, 4, 30));
    expect(good.blend).toBeLessThan(1.1 * good.filter);
  });

  it('turns to the other when the better one goes bad', () => {
    const trips = [...season(150, 4, 30), ...season(150, 30, 4)];
    const { blend, filter, last } = lossesOn(trips);
    expect(blend).toBeLessThan(0.6 * filter);
    expect(blend).toBeLessThan(0.6 * last);
  });

  it('is the forecast of whoever says anything, and nothing if nobody does', () => {
    expect(mixed(FRESH_MIXTURE, 0, {})).toBeNull();
    expect(mixed(FRESH_MIXTURE, 0, { filter: around(20) })).toEqual(around(20));
    const both = mixed(FRESH_MIXTURE, 0, { filter: around(20), 'last-wait': around(50) });
    expect(both?.medianMin).toBeGreaterThan(20);
    expect(both?.medianMin).toBeLessThan(50);
  });
});
