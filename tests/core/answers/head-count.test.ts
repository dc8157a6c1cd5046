import { describe, expect, it } from 'vitest';
import type { Fact } from '../../../src/core/book/facts.ts';
import { countHelps } from '../../../src/core/answers/head-count.ts';
import { lineObservations } from '../../../src/core/line/observations.ts';
import type { Roster } from '../../../src/core/roster.ts';
import { at, fact, given, step } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const NORTH = 'north-station';

/** Is the driver of truck 2, who wrote at `joined`, asked to count? */
const isAsked = (
  facts: readonly Fact[],
  more: { joined?: string; now?: string; roster?: Roster } = {},
): boolean => {
  const { joined = '09:00', roster = sampleRoster } = more;
  const { harvest } = given(facts, roster);
  const seen = (station: string) =>
    lineObservations(harvest, station, { fromMs: at('00:00'), toMs: at('23:59') });
  return countHelps(harvest, '2', at(joined), seen, at(more.now ?? joined));
};
const inLine = step('2', 'joined-line', '09:00');
/** Another truck of ours, which was weighed. */
const visit = (joined: string, weighed: string): Fact[] => [
  step('3', 'joined-line', joined),
  step('3', 'first-weighed', weighed),
];
const count = (clock: string): Fact =>
  fact({ kind: 'line-seen', station: NORTH, ahead: 8, truck: '3' }, clock);

describe('a driver who has just joined the line is asked to count', () => {
  it('where nothing is known', () => {
    expect(isAsked([inLine])).toBe(true);
  });

  // The estimate scatters by sqrt(6² + (0.3 wait)²) min, and four out of five waits are within 1.28 of that either way:
  // 19.7 min from end to end after a wait of 16 min, 20.2 min after one of 17.
  it('where the estimate is more than twenty minutes wide', () => {
    expect(isAsked([...visit('08:39', '08:55'), inLine])).toBe(false);
    expect(isAsked([...visit('08:38', '08:55'), inLine])).toBe(true);
  });

  it('by the estimate for one who arrives now, and not later', () => {
    expect(isAsked([...visit('08:39', '08:55'), inLine], { now: '09:04' })).toBe(false);
  });

  it('of a line in which none of ours was weighed for half an hour', () => {
    expect(isAsked([...visit('08:26', '08:31'), inLine])).toBe(false);
    expect(isAsked([...visit('08:25', '08:30'), inLine])).toBe(true);
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
