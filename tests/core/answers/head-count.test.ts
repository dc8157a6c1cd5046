import { describe, expect, it } from 'vitest';
import type { Fact } from '../../../src/core/book/facts.ts';
import { countHelps } from '../../../src/core/answers/head-count.ts';
import { lineObservations } from '../../../src/core/line/observations.ts';
import type { ForecastWait } from '../../../src/core/line/types.ts';
import type { Roster } from '../../../src/core/roster.ts';
import { at, fact, given, step } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const NORTH = 'north-station';
const evidence = { lastSerial: null, trucksAhead: null, ratePerHour: null, newestAgeMin: null };
const between =
  (lowMin: number, highMin: number): ForecastWait =>
  () => ({ known: true, medianMin: lowMin, lowMin, highMin, evidence });
const wide = between(10, 60);

/** Is the driver of truck 2, who wrote at `joined`, asked to count? */
const isAsked = (
  facts: readonly Fact[],
  more: { joined?: string; now?: string; wait?: ForecastWait; roster?: Roster } = {},
): boolean => {
  const { joined = '09:00', wait = wide, roster = sampleRoster } = more;
  const { harvest } = given(facts, roster);
  const seen = (station: string) =>
    lineObservations(harvest, station, { fromMs: at('00:00'), toMs: at('23:59') });
  return countHelps(harvest, '2', at(joined), seen, at(more.now ?? joined), wait);
};
const inLine = step('2', 'joined-line', '09:00');
const count = (clock: string): Fact =>
  fact({ kind: 'line-seen', station: NORTH, ahead: 8, truck: '3' }, clock);

describe('a driver who has just joined the line is asked to count', () => {
  it('where the forecast is more than twenty minutes wide, or nothing is known', () => {
    expect(isAsked([inLine])).toBe(true);
    expect(isAsked([inLine], { wait: between(10, 30) })).toBe(false);
    expect(isAsked([inLine], { wait: between(10, 31) })).toBe(true);
    const nothing: ForecastWait = () => ({ known: false, newestAgeMin: null, usual: null });
    expect(isAsked([inLine], { wait: nothing })).toBe(true);
  });

  it('by the forecast of one who arrives now', () => {
    const asked: unknown[] = [];
    isAsked([inLine], { now: '09:04', wait: (_, ask) => (asked.push(ask), wide(_, ask)) });
    expect(asked).toEqual([{ nowMs: at('09:04'), arriveInMin: 0 }]);
  });

  it('not within a quarter of an hour of the last count, but then again', () => {
    expect(isAsked([count('08:46'), inLine])).toBe(false);
    expect(isAsked([count('08:45'), inLine])).toBe(true);
    expect(isAsked([count('08:40'), inLine])).toBe(true);
    expect(isAsked([count('08:40'), count('08:55'), inLine])).toBe(false);
  });

  it('up to ten minutes after it joined: later it may have moved on', () => {
    expect(isAsked([inLine], { now: '09:10' })).toBe(true);
    expect(isAsked([inLine], { now: '09:11' })).toBe(false);
  });
});

describe('a driver is asked once a visit', () => {
  const again = step('2', 'joined-line', '09:20');

  it('and not when it says "in line" once more', () => {
    expect(isAsked([inLine, again], { joined: '09:20' })).toBe(false);
    expect(isAsked([inLine, again], { joined: '09:00', now: '09:05' })).toBe(false);
  });

  it('but is on the next visit', () => {
    const next = step('2', 'joined-line', '11:00');
    expect(isAsked([inLine, step('2', 'dumped', '09:50'), next], { joined: '11:00' })).toBe(true);
  });
});

describe('a driver is not asked to count', () => {
  it('once the truck is on the piler or down', () => {
    expect(isAsked([inLine, step('2', 'first-weighed', '09:03')], { now: '09:04' })).toBe(false);
    expect(isAsked([inLine, step('2', 'down', '09:03')], { now: '09:04' })).toBe(false);
  });

  it('where nothing was heard of the truck', () => {
    expect(isAsked([])).toBe(false);
  });

  it('where it is not known which station the line is of', () => {
    const roster = { ...sampleRoster, stations: [], fields: [] };
    expect(isAsked([inLine], { roster })).toBe(false);
  });
});
