import { describe, expect, it } from 'vitest';
import type { Fact, HaulStep } from '../../../src/core/book/facts.ts';
import { isOffShift } from '../../../src/core/notices/shifts.ts';
import type { Roster } from '../../../src/core/roster.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, given, step } from '../../support/given.ts';
import { memberOf, sampleRoster } from '../../support/roster.ts';

const told = (clock: string, off: boolean | null, noticesWhenOff: boolean | null = null): Fact =>
  fact({ kind: 'shift-told', person: 'ben', off, noticesWhenOff }, clock);
const off = (facts: readonly Fact[], clock: string): boolean =>
  isOffShift(
    { harvest: given(facts).harvest, clock: zoneClock, nowMs: at(clock) },
    memberOf(sampleRoster, 'ben'),
  );
/** By the list Ben works from six in the evening to six in the morning. */
const nights: Roster = {
  ...sampleRoster,
  people: sampleRoster.people.map((one) => (one.id === 'ben' ? { ...one, shiftHours: [18, 6] } : one)),
};
const offAtNights = (facts: readonly Fact[], clock: string): boolean =>
  isOffShift(
    { harvest: given(facts, nights).harvest, clock: zoneClock, nowMs: at(clock) },
    memberOf(nights, 'ben'),
  );
const says = (said: HaulStep, by: string | null = 'ben'): Fact =>
  step('2', said, '10:00', { header: { by } });

describe('a person who is off shift', () => {
  it('is so for ten hours: who forgets to say "on shift" must not miss the next stop', () => {
    expect(off([], '08:00')).toBe(false);
    expect(off([told('08:00', true)], '17:59')).toBe(true);
    expect(off([told('08:00', true)], '18:00')).toBe(false);
  });

  it('is on shift again by saying so', () => {
    expect(off([told('08:00', true), told('09:00', false)], '09:00')).toBe(false);
  });

  it('counts as on shift where notices are wanted all the same, in whichever order it is said', () => {
    expect(off([told('07:00', null, true), told('08:00', true)], '09:00')).toBe(false);
    expect(off([told('08:00', true), told('08:01', null, true)], '09:00')).toBe(false);
    expect(off([told('08:00', true, true), told('08:01', null, false)], '09:00')).toBe(true);
  });

  it.each(['at-field', 'loading', 'left-field', 'joined-line', 'dumped', 'returning', 'down', 'up'] as const)(
    'is on shift again by the next "%s": who drives must hear of a stop',
    (said) => {
      expect(off([told('08:00', true), says(said)], '10:01')).toBe(false);
    },
  );

  it('stays off shift by "parked", and by what others report', () => {
    expect(off([told('08:00', true), says('parked')], '10:01')).toBe(true);
    expect(off([told('08:00', true), says('left-field', 'ana')], '10:01')).toBe(true);
    expect(off([told('08:00', true), says('left-field', null)], '10:01')).toBe(true);
  });
});

describe('a shift in the list', () => {
  it.each([
    ['17:59', true],
    ['18:00', false],
    ['23:30', false],
    ['2026-10-21 05:59', false],
    ['2026-10-21 06:00', true],
    ['12:00', true],
  ])('from six to six, at %s: off is %s', (clock, isOff) => {
    expect(offAtNights([], clock)).toBe(isOff);
  });

  it('is not the last word: who reports is at work, for two hours after the last word of it', () => {
    expect(offAtNights([says('left-field')], '11:59')).toBe(false);
    expect(offAtNights([says('left-field')], '12:00')).toBe(true);
    expect(offAtNights([says('left-field', 'ana')], '11:00')).toBe(true);
  });

  it('yields to "on shift" for ten hours, to "off shift" and to "notices when off"', () => {
    expect(offAtNights([told('08:00', false)], '17:00')).toBe(false);
    expect(offAtNights([told('19:00', true)], '20:00')).toBe(true);
    expect(offAtNights([told('08:00', null, true)], '12:00')).toBe(false);
  });

  it('begins though "off shift" was said before it', () => {
    expect(offAtNights([told('17:00', true)], '17:59')).toBe(true);
    expect(offAtNights([told('17:00', true)], '18:00')).toBe(false);
  });
});
