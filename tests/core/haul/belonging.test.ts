import { describe, expect, it } from 'vitest';
import type { Fact } from '../../../src/core/book/facts.ts';
import { at, given, loadsOf, step, ticket, truckIn } from '../../support/given.ts';

const loads = (...facts: readonly Fact[]) => loadsOf(given(facts).harvest, '3');

describe('a word about the dump that comes late', () => {
  const full = step('3', 'left-field', '08:00');
  const weighedOut = ticket('3', '08:50', 50_520);
  const empty = step('3', 'returning', '08:52');

  it('is of the load that was just weighed out, also after the truck said that it is empty', () => {
    expect(loads(full, weighedOut, empty, step('3', 'dumped', '08:55'))).toHaveLength(1);
    expect(loads(full, weighedOut, step('3', 'dumped', '08:55'))).toHaveLength(1);
  });

  it('leaves the truck on its way back', () => {
    const { harvest } = given([full, weighedOut, empty, step('3', 'dumped', '08:55')]);
    expect(truckIn(harvest, '3')).toMatchObject({ phase: 'returning', sinceMs: at('08:50') });
  });

  it('is of the next load a whole round later', () => {
    expect(loads(full, weighedOut, empty, step('3', 'dumped', '09:05'))).toHaveLength(2);
    expect(loads(full, weighedOut, empty, step('3', 'dumped', '09:04'))).toHaveLength(1);
  });
});

describe('"loaded" after "in line"', () => {
  const inLine = step('3', 'joined-line', '08:00');

  it('is of the same load within a quarter of an hour: it was sent late', () => {
    expect(loads(inLine, step('3', 'left-field', '08:14'))).toHaveLength(1);
  });

  it('is the next load later on, although nobody told of the dump', () => {
    expect(loads(inLine, step('3', 'left-field', '08:15'))).toHaveLength(2);
    expect(loads(inLine, step('3', 'left-field', '09:10'))).toHaveLength(2);
  });
});

describe('a ticket on joining the line', () => {
  const before = [step('3', 'left-field', '07:00'), step('3', 'dumped', '07:50')];
  const closed = (clock: string) =>
    loads(...before, step('3', 'joined-line', '08:40'), ticket('3', clock, 50_520)).map(
      (load) => load.ticket !== null,
    );

  it('is of the load before for ten minutes: nobody is weighed out sooner', () => {
    expect(closed('08:49')).toEqual([true, false]);
    expect(closed('08:50')).toEqual([false, true]);
  });

  it('is of the load in the line where there is no other', () => {
    const only = loads(step('3', 'joined-line', '08:40'), ticket('3', '08:44', 50_520));
    expect(only.map((load) => load.ticket !== null)).toEqual([true]);
  });
});
