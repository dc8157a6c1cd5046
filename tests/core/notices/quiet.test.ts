import { describe, expect, it } from 'vitest';
import type { Fact, Happening } from '../../../src/core/book/facts.ts';
import { awakeMs, isAsleep, isNight, isQuiet, personAwakeMs } from '../../../src/core/notices/quiet.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, given, step, ticket } from '../../support/given.ts';
import type { Roster } from '../../../src/core/roster.ts';
import { raised } from '../../support/notices.ts';
import { memberOf, sampleRoster } from '../../support/roster.ts';

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

describe('the night of one person', () => {
  const NIGHT = '2026-10-21 01:20';
  const withShift = (id: string, shiftHours: readonly [number, number]): Roster => ({
    ...sampleRoster,
    people: sampleRoster.people.map((one) => (one.id === id ? { ...one, shiftHours } : one)),
  });
  const asleep = (id: string, facts: readonly Fact[], clock = NIGHT, roster = sampleRoster): boolean =>
    isAsleep(
      { harvest: given(facts, roster).harvest, clock: zoneClock, nowMs: at(clock) },
      memberOf(roster, id),
    );
  const dumped = step('1', 'dumped', '2026-10-21 00:30', { header: { by: 'ana' } });
  const loaded = step('1', 'left-field', '2026-10-21 00:30', { header: { by: 'ana' } });

  it('ends with the own report, and with nobody else’s', () => {
    expect(asleep('ana', [dumped])).toBe(false);
    for (const id of ['ruth', 'mateo', 'ben', 'carla', 'fritz', 'gus'])
      expect(asleep(id, [dumped])).toBe(true);
    expect(asleep('ana', [dumped], '2026-10-21 02:30')).toBe(true);
    expect(asleep('ana', [], '12:00')).toBe(false);
  });

  it('is no night for who said "on shift", and by a shift in the list', () => {
    const on = fact({ kind: 'shift-told', person: 'ben', off: false, noticesWhenOff: null }, '21:00');
    expect(asleep('ben', [on])).toBe(false);
    expect(asleep('ben', [], NIGHT, withShift('ben', [18, 6]))).toBe(false);
    expect(asleep('ben', [], NIGHT, withShift('ben', [6, 18]))).toBe(true);
  });

  it('somebody loads: of the operators, who seldom report, none is known to sleep', () => {
    expect(['fritz', 'gus', 'mateo', 'ben'].map((id) => asleep(id, [loaded]))).toEqual([
      false,
      false,
      true,
      true,
    ]);
    // By the list Fritz works by day, and another by night.
    expect(asleep('fritz', [loaded], NIGHT, withShift('fritz', [6, 18]))).toBe(true);
  });

  it('ends at five, or when the shift begins', () => {
    const wakes = (roster: Roster): number =>
      personAwakeMs(
        { harvest: given([], roster).harvest, clock: zoneClock, nowMs: at(NIGHT) },
        memberOf(roster, 'gus'),
      );
    expect(wakes(sampleRoster)).toBe(at('2026-10-21 05:00'));
    expect(wakes(withShift('gus', [3, 15]))).toBe(at('2026-10-21 03:00'));
    expect(wakes(withShift('gus', [6, 18]))).toBe(at('2026-10-21 05:00'));
  });
});
