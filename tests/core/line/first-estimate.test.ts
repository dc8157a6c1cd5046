import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MIN_PER_TRUCK } from '../../../src/core/line/assumptions.ts';
import { firstEstimate } from '../../../src/core/line/first-estimate.ts';
import type { LineObservations, Visit } from '../../../src/core/line/types.ts';

const MIN = 60_000;
const nine = 9 * 60 * MIN;

const visit = (joinedMin: number | null, weighedMin: number | null, serial: string | null = null): Visit => ({
  truck: '3',
  joinedMs: joinedMin === null ? null : nine + joinedMin * MIN,
  joinedStated: true,
  firstWeighedMs: weighedMin === null ? null : nine + weighedMin * MIN,
  dumpedMs: null,
  secondWeighedMs: null,
  serial,
  heardMs: nine + (weighedMin ?? joinedMin ?? 0) * MIN,
});

const observations = (change: Partial<LineObservations>): LineObservations => ({
  station: 'north',
  visits: [],
  headCounts: [],
  pilers: [],
  opening: nine - 120 * MIN,
  usualPilers: 1,
  ...change,
});

const ask = (nowMin: number, arriveInMin = 0) => ({ nowMs: nine + nowMin * MIN, arriveInMin });

const known = (seen: LineObservations, nowMin: number, arriveInMin = 0) => {
  const forecast = firstEstimate(seen, ask(nowMin, arriveInMin));
  if (!forecast.known) throw new Error('expected a known wait');
  return forecast;
};

describe('first estimate of the wait', () => {
  it('knows nothing without observations', () => {
    expect(firstEstimate(observations({}), ask(0))).toEqual({
      known: false,
      newestAgeMin: null,
      usual: null,
    });
  });

  it('multiplies a head count by the minutes per truck and divides by the pilers open', () => {
    const headCounts = [{ atMs: nine, ahead: 10, truck: null }];
    expect(known(observations({ headCounts }), 0).medianMin).toBeCloseTo(10 * MIN_PER_TRUCK, 9);
    const pilers = [{ atMs: nine, open: 2, down: null }];
    expect(known(observations({ headCounts, pilers }), 0).medianMin).toBeCloseTo(5 * MIN_PER_TRUCK, 9);
    const oneDown = [{ atMs: nine, open: 2, down: 1 }];
    expect(known(observations({ headCounts, pilers: oneDown }), 0).medianMin).toBeCloseTo(48, 9);
  });

  it('blends the last observed wait with the mean of the hour', () => {
    const forecast = known(observations({ visits: [visit(0, 10), visit(10, 40, '4711')] }), 41);
    expect(forecast.medianMin).toBeCloseTo((30 + 20) / 2, 9);
    expect(forecast.evidence.lastSerial).toEqual({ serial: '4711', atMs: nine + 40 * MIN });
    expect(forecast.evidence.newestAgeMin).toBeCloseTo(1, 9);
  });

  it('waits at least as long as a truck of ours already does', () => {
    expect(known(observations({ visits: [visit(0, 5), visit(6, null)] }), 66).medianMin).toBeCloseTo(60, 9);
  });

  it('does not use what is heard or happens after the asked-for instant', () => {
    expect(firstEstimate(observations({ visits: [visit(0, 10)] }), ask(5)).known).toBe(false);
    const early = { ...visit(6, null), heardMs: nine + 4 * MIN };
    expect(firstEstimate(observations({ visits: [early] }), ask(5)).known).toBe(false);
    expect(
      firstEstimate(observations({ headCounts: [{ atMs: nine + MIN, ahead: 9, truck: null }] }), ask(0))
        .known,
    ).toBe(false);
  });

  it('lets observations older than two hours go, but tells their age', () => {
    expect(firstEstimate(observations({ visits: [visit(0, 10)] }), ask(140))).toEqual({
      known: false,
      newestAgeMin: 130,
      usual: null,
    });
  });

  it('widens with age and with lead, and keeps its order', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 0, max: 100 }),
        fc.integer({ min: 0, max: 60 }),
        (waitMin, ageMin, lead) => {
          const seen = observations({ visits: [visit(0, waitMin)] });
          const now = known(seen, waitMin + ageMin, lead);
          const later = known(seen, waitMin + ageMin + 10, lead);
          const farther = known(seen, waitMin + ageMin, lead + 10);
          expect(now.lowMin).toBeGreaterThanOrEqual(0);
          expect(now.lowMin).toBeLessThanOrEqual(now.medianMin);
          expect(now.highMin).toBeGreaterThan(now.medianMin);
          expect(later.highMin).toBeGreaterThan(now.highMin);
          expect(farther.highMin).toBeGreaterThan(now.highMin);
        },
      ),
    );
  });
});
