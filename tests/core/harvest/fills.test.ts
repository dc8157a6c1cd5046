import { describe, expect, it } from 'vitest';
import type { Fact } from '../../../src/core/book/facts.ts';
import { at, given, step } from '../../support/given.ts';

const fills = (...facts: readonly Fact[]) => given(facts).harvest.filling.fills;
const loading = step('3', 'loading', '08:00');
const full = (clock: string) => step('3', 'left-field', clock);

describe('a truck that was filled', () => {
  it('counts from "loading" to "loaded"', () => {
    expect(fills(loading, full('08:11'))).toEqual([{ truck: '3', begunMs: at('08:00'), min: 11 }]);
  });

  it('counts from the first "loading", however often that is said', () => {
    expect(fills(loading, step('3', 'loading', '08:07'), full('08:11'))).toMatchObject([{ min: 11 }]);
  });

  it('is believed from 3 to 40 minutes: less was told late, more had a stop in it', () => {
    const counted = (clock: string) => fills(loading, full(clock)).length;
    expect(['08:02:59', '08:03', '08:40', '08:40:01'].map(counted)).toEqual([0, 1, 1, 0]);
  });

  it('does not count where nobody told when it began, or it did something else first', () => {
    expect(fills(full('08:11'))).toEqual([]);
    expect(fills(loading, step('3', 'parked', '08:11'), full('08:20'))).toEqual([]);
  });

  it('begins anew with the next round, and by itself', () => {
    const next = [step('3', 'loading', '09:00'), full('09:08')];
    const other = [step('2', 'loading', '08:05'), step('2', 'left-field', '08:14')];
    const minutes = fills(loading, full('08:11'), ...next, ...other).map(({ truck, min }) => [truck, min]);
    expect(minutes).toEqual([
      ['3', 11],
      ['2', 9],
      ['3', 8],
    ]);
  });
});
