import { describe, expect, it } from 'vitest';
import type { Fact, Happening } from '../../../src/core/book/facts.ts';
import { awakeMs, isNight, isQuiet } from '../../../src/core/notices/quiet.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, given, step, ticket } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';

const quiet = (facts: readonly Fact[], clock: string): boolean =>
  isQuiet(given(facts).harvest, zoneClock, at(clock));
const awake = (facts: readonly Fact[], clock: string): number =>
  awakeMs(given(facts).harvest, zoneClock, at(clock));

describe('night', () => {
  it.each([
    ['21:59', false],
    ['22:00', true],
    ['23:30', true],
    ['00:00', true],
    ['04:59', true],
    ['05:00', false],
    ['13:00', false],
  ])('at %s: %s', (clock, night) => {
    expect(isNight(zoneClock, 'America/Boise', at(clock))).toBe(night);
    expect(quiet([], clock)).toBe(night);
  });

  it('is that of the operation, wherever the bot runs', () => {
    // 22:30 in Boise is half past midnight in New York.
    expect(isNight(zoneClock, 'America/New_York', at('21:30'))).toBe(true);
    expect(quiet([], '21:30')).toBe(false);
  });
});

describe('a crew that digs at night', () => {
  const NORTH = 'north-station';
  const line: Happening = { kind: 'line-seen', station: NORTH, ahead: 3, truck: null };
  const probe: Happening = { kind: 'root-measured', field: null, station: NORTH, temperatureF: 50 };

  it.each([
    ['a truck was heard from', step('2', 'left-field', '22:30')],
    ['a ticket came', ticket('2', '22:30', 50_000)],
    ['the line was counted', fact(line, '22:30')],
    ['roots were measured', fact(probe, '22:30')],
    ['the digger moved to a field', fact({ kind: 'field-dug', field: 'north-40' }, '22:30')],
  ])('is at work: %s', (_, work) => {
    expect(quiet([work], '23:00')).toBe(false);
    expect(awake([work], '23:00')).toBe(at('23:00'));
  });

  it('is at work for two hours after the last word of it', () => {
    const load = step('2', 'left-field', '22:30');
    expect(quiet([load], '2026-10-21 00:29')).toBe(false);
    expect(quiet([load], '2026-10-21 00:30')).toBe(true);
  });

  it('is not at work yet by what is told of later', () => {
    const load = step('2', 'left-field', '23:30');
    expect(quiet([load], '23:29')).toBe(true);
    expect(quiet([load], '23:30')).toBe(false);
  });

  it('is not at work because somebody confirms a notice, or one is raised', () => {
    const seen = fact({ kind: 'notice-seen', person: 'ana' }, '22:40');
    expect(quiet([raised('22:30'), seen], '23:00')).toBe(true);
  });
});

describe('what can wait for the morning', () => {
  it('waits until five: of the next day in the evening, of the same day after midnight', () => {
    expect(awake([], '22:00')).toBe(at('2026-10-21 05:00'));
    expect(awake([], '2026-10-21 00:00')).toBe(at('2026-10-21 05:00'));
    expect(awake([], '2026-10-21 04:59')).toBe(at('2026-10-21 05:00'));
  });

  it('is told at once by day', () => {
    expect(awake([], '05:00')).toBe(at('05:00'));
    expect(awake([], '21:59')).toBe(at('21:59'));
  });
});
