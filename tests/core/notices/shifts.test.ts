import { describe, expect, it } from 'vitest';
import type { Fact, HaulStep } from '../../../src/core/book/facts.ts';
import { isOffShift } from '../../../src/core/notices/shifts.ts';
import { at, fact, given, step } from '../../support/given.ts';

const told = (clock: string, off: boolean | null, noticesWhenOff: boolean | null = null): Fact =>
  fact({ kind: 'shift-told', person: 'ben', off, noticesWhenOff }, clock);
const off = (facts: readonly Fact[], clock: string): boolean =>
  isOffShift(given(facts).harvest, 'ben', at(clock));
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
