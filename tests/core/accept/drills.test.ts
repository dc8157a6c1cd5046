import { describe, expect, it } from 'vitest';
import { endDrills } from '../../../src/core/notices/drills.ts';
import { hasUnseen, holds, openNotices } from '../../../src/core/notices/notices.ts';
import { at, given } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';

const drill = (ends: boolean) => ({ do: 'drill', ends }) as const;
const gotIt = { do: 'acknowledge' } as const;
const called = given().when(drill(false), 'ruth', '09:00');

describe('a drill', () => {
  it.each(['ana', 'fritz', 'gus'])('is not for %s to call or to end', (person) => {
    const refusal = { refused: 'not-allowed', what: 'drill' };
    expect(given().when(drill(false), person, '09:00').refusal).toEqual(refusal);
    expect(called.when(drill(true), person, '09:05').refusal).toEqual(refusal);
  });

  it('is told as a stop at once that lasts half an hour', () => {
    expect(called.added).toMatchObject([
      { step: { source: 'drill', stage: 'stop', stopAtMs: at('09:00'), resumeAtMs: at('09:30') } },
    ]);
  });

  it('holds nothing, and no "dig again" is needed', () => {
    expect(holds(called.harvest, at('09:05'))).toEqual({ now: null, coming: null });
    expect(openNotices(called.harvest)).toEqual([]);
  });

  it('is confirmed like a real stop, once', () => {
    expect(hasUnseen(called.harvest, 'ana')).toBe(true);
    const seen = called.when(gotIt, 'ana', '09:02');
    expect(seen.refusal).toBeNull();
    expect(hasUnseen(seen.harvest, 'ana')).toBe(false);
    expect(seen.when(gotIt, 'ana', '09:03').refusal).toEqual({ refused: 'nothing-to-see' });
  });

  it('is confirmed also where a real notice was told after it', () => {
    const stopped = called.when(
      { do: 'order-stop', hold: 'mud', stopAtMs: null, words: null },
      'ruth',
      '09:10',
    );
    const ended = stopped.when({ do: 'order-resume', atMs: null, words: null }, 'ruth', '09:12');
    expect(hasUnseen(ended.when(gotIt, 'ana', '09:15').harvest, 'ana')).toBe(false);
    expect(ended.harvest.notices.map(({ seen }) => seen.has('ana'))).toEqual([false, false]);
    expect(hasUnseen(ended.harvest, 'ana')).toBe(true);
  });

  it('is called once at a time, and not while a real stop holds the dig', () => {
    expect(called.when(drill(false), 'mateo', '09:05').refusal).toEqual({ refused: 'drill-on-already' });
    const stopped = given([raised('08:00', { stopAtMs: at('09:00') })]);
    expect(stopped.when(drill(false), 'ruth', '09:00').refusal).toEqual({ refused: 'dig-stopped-already' });
    expect(stopped.when(drill(false), 'ruth', '08:59').refusal).toBeNull();
  });

  it('ends on the word of foreman or grower, and may then be called again', () => {
    const ended = called.when(drill(true), 'mateo', '09:10');
    expect(ended.added).toMatchObject([{ step: { source: 'drill', stage: 'all-clear', number: 2 } }]);
    expect(ended.when(drill(true), 'mateo', '09:11').refusal).toEqual({ refused: 'no-drill' });
    expect(ended.when(drill(false), 'mateo', '09:11').refusal).toBeNull();
    expect(given().when(drill(true), 'ruth', '09:00').refusal).toEqual({ refused: 'no-drill' });
  });

  it('ends by itself after half an hour', () => {
    expect(endDrills(called.harvest, at('09:29'))).toEqual({ facts: [], wakeAtMs: at('09:30') });
    const { facts, wakeAtMs } = endDrills(called.harvest, at('09:30'));
    expect(facts).toMatchObject([{ by: null, step: { source: 'drill', stage: 'all-clear' } }]);
    expect(wakeAtMs).toBeNull();
    expect(endDrills(given([...called.facts, ...facts]).harvest, at('09:31'))).toEqual({
      facts: [],
      wakeAtMs: null,
    });
  });
});
