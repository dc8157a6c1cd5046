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
