import { describe, expect, it } from 'vitest';
import { answer } from '../../../src/core/answers/answer.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import type { Telling } from '../../../src/core/telling.ts';
import { personById } from '../../../src/core/roster.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, given } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';
import { sampleRoster } from '../../support/roster.ts';

const asker = personById(sampleRoster, 'ben');
const told = (...facts: readonly Fact[]): Telling => {
  if (asker === undefined) throw new Error('Ben is on the list');
  const asking = { asker, nowMs: at('10:00'), clock: zoneClock };
  return answer({ about: 'where-to' }, given(facts).harvest, asking);
};

describe('where an empty truck goes', () => {
  it('is the field that is dug by the last word, and the station of its loads', () => {
    const moved = fact({ kind: 'field-dug', field: 'south-80' }, '09:00');
    expect(told(fact({ kind: 'field-dug', field: 'north-40' }, '07:00'), moved)).toMatchObject({
      tell: 'where-to',
      field: 'south-80',
      station: 'north-station',
    });
  });

  it('is not known where nobody has said it', () => {
    expect(told()).toMatchObject({ tell: 'where-to', field: null });
  });

  it('comes with the stop that holds', () => {
    const mud = raised('09:00', { event: 'mud', notice: 'mud', source: 'person', stopAtMs: at('09:00') });
    expect(told(mud)).toMatchObject({ dig: { holds: [{ notice: 'mud' }] } });
  });
});
