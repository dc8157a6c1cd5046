import type { Harvest } from '../../../src/core/harvest/harvest.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { describe, expect, it } from 'vitest';
import type { NoticeStep } from '../../../src/core/book/facts.ts';
import type { Intent } from '../../../src/core/intent.ts';
import { holds, unseenNotice } from '../../../src/core/notices/notices.ts';
import { at, fact, given } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';

const stop = (
  more: Partial<Extract<Intent, { do: 'order-stop' }>> = {},
): Extract<Intent, { do: 'order-stop' }> => ({
  do: 'order-stop',
  hold: 'mud',
  stopAtMs: null,
  words: null,
  ...more,
});
const resume = (
  atMs: number | null = null,
  words: string | null = null,
): Intent & { do: 'order-resume' } => ({ do: 'order-resume', atMs, words });
const gotIt = { do: 'acknowledge' } as const;

const stepsOf = (added: ReturnType<typeof given>['added']): NoticeStep[] =>
  added.flatMap((one) => (one.kind === 'notice-raised' ? [one.step] : []));

const unseenAt = (harvest: Harvest, clock: string) =>
  unseenNotice({ harvest, clock: zoneClock, nowMs: at(clock) });

describe('stop the dig', () => {
  it.each(['ana', 'fritz', 'gus'])('is not for %s', (person) => {
    expect(given().when(stop(), person, '10:00')).toMatchObject({
      refusal: { refused: 'not-allowed', what: 'stop-dig' },
      facts: [],
    });
  });

  it.each(['ruth', 'mateo'])('by %s stops at once, topping and digging', (person) => {
    expect(stepsOf(given().when(stop(), person, '10:00').added)).toMatchObject([
      { stage: 'stop', source: 'person', notice: 'mud', stopToppingMs: at('10:00'), stopAtMs: at('10:00') },
    ]);
  });

  // Topping ends less than 30 min ahead of the digger (Dean, "Protecting Roots", sugarproducer.com/2012/08).
  it('at a time stops topping half an hour before, but never in the past', () => {
    const [late] = stepsOf(given().when(stop({ stopAtMs: at('13:00') }), 'ruth', '10:00').added);
    expect(late).toMatchObject({ stopToppingMs: at('12:30'), stopAtMs: at('13:00') });
    const [soon] = stepsOf(given().when(stop({ stopAtMs: at('10:10') }), 'ruth', '10:00').added);
    expect(soon).toMatchObject({ stopToppingMs: at('10:00'), stopAtMs: at('10:10') });
    const [past] = stepsOf(given().when(stop({ stopAtMs: at('09:00') }), 'ruth', '10:00').added);
    expect(past).toMatchObject({ stopToppingMs: at('10:00'), stopAtMs: at('10:00') });
  });

  it('without a reason moves an open heat stop, which stays a heat stop', () => {
    const [step] = stepsOf(given([raised('09:00')]).when(stop({ hold: 'other' }), 'ruth', '10:00').added);
    expect(step).toMatchObject({ event: 'heat-north-station', number: 2, notice: 'heat', stage: 'update' });
  });

  it('makes a stop of a watch', () => {
    const watched = given([raised('09:00', { stage: 'watch' })]);
    const [step] = stepsOf(watched.when(stop({ hold: 'heat' }), 'ruth', '10:00').added);
    expect(step).toMatchObject({ event: 'heat-north-station', number: 2, stage: 'stop' });
  });

  it('while the dig is stopped is refused, unless it names a time', () => {
    const stopped = given().when(stop(), 'ruth', '10:00').added;
    expect(given(stopped).when(stop(), 'mateo', '10:30').refusal).toEqual({ refused: 'dig-stopped-already' });
    const [later] = stepsOf(given(stopped).when(stop({ stopAtMs: at('13:00') }), 'mateo', '10:30').added);
    expect(later).toMatchObject({ number: 2, stage: 'update', stopAtMs: at('13:00') });
  });

  it('for another reason is a notice of its own', () => {
    const after = given([raised('09:00')]).when(stop(), 'ruth', '10:00');
    expect(after.harvest.notices).toHaveLength(2);
  });
});

describe('dig again', () => {
  it.each(['ana', 'fritz'])('is not for %s', (person) => {
    expect(given([raised('09:00')]).when(resume(), person, '10:00').refusal).toEqual({
      refused: 'not-allowed',
      what: 'resume-dig',
    });
  });

  it('where nothing is stopped says so', () => {
    expect(given().when(resume(), 'ruth', '10:00').refusal).toEqual({ refused: 'dig-not-stopped' });
  });

  it('ends every open notice, each in its own event', () => {
    const after = given([raised('09:00')])
      .when(stop(), 'ruth', '10:00')
      .when(resume(), 'mateo', '11:00');
    expect(stepsOf(after.added).map(({ event, number, stage }) => [event, number, stage])).toEqual([
      ['heat-north-station', 2, 'all-clear'],
      [expect.stringContaining('mud-'), 2, 'all-clear'],
    ]);
    expect(holds(after.harvest, at('14:00'))).toEqual({ now: null, coming: null });
  });

  it('for later holds until then, and can be brought forward', () => {
    const after = given()
      .when(stop(), 'ruth', '10:00')
      .when(resume(at('2026-10-21 06:00')), 'ruth', '20:00');
    expect(holds(after.harvest, at('21:00')).now).toMatchObject({ stage: 'all-clear' });
    expect(holds(after.harvest, at('2026-10-21 06:00')).now).toBeNull();
    const sooner = after.when(resume(), 'ruth', '22:00');
    expect(sooner.refusal).toBeNull();
    expect(holds(sooner.harvest, at('22:00')).now).toBeNull();
  });
});

/** So soon that the crew must confirm it: what is hours away is advice. */
const SOON = { stopToppingMs: at('10:30'), stopAtMs: at('11:00') };

describe('"got it"', () => {
  it('counts once', () => {
    const seen = given([raised('09:00')]).when(gotIt, 'ana', '09:05');
    expect(seen.refusal).toBeNull();
    expect(seen.when(gotIt, 'ana', '09:06').refusal).toEqual({ refused: 'nothing-to-see' });
  });

  it('without a notice is refused', () => {
    expect(given().when(gotIt, 'ana', '09:05').refusal).toEqual({ refused: 'nothing-to-see' });
  });

  it('to a watch is none to the stop, nor to a new time', () => {
    for (const stage of ['stop', 'update'] as const) {
      const facts = [
        raised('09:00', { stage: 'watch' }),
        fact({ kind: 'notice-seen', person: 'gus' }, '09:05'),
        raised('10:00', { stage, number: 2, ...SOON }),
      ];
      expect(unseenAt(given(facts).harvest, '10:05').unseen).toContain('gus');
      expect(given(facts).when(gotIt, 'gus', '10:05').refusal).toBeNull();
    }
  });

  it('is for all that has been told: two stations may stop at once', () => {
    const facts = [raised('09:00'), raised('09:00', { event: 'heat-west', place: 'west' })];
    const { harvest } = given(facts).when(gotIt, 'ana', '09:05');
    expect(harvest.notices.map(({ seen }) => seen.has('ana'))).toEqual([true, true]);
  });

  const moved = (stopToppingMs: number) => {
    const late = fact({ kind: 'notice-seen', person: 'gus' }, '09:05', { heardMs: at('10:30') });
    const update = raised('10:00', { stage: 'update', number: 2, stopToppingMs });
    return unseenAt(given([raised('09:00', SOON), update, late]).harvest, '10:30').unseen;
  };

  it('that was sent before an earlier time does not confirm it, whenever it is heard', () => {
    expect(moved(SOON.stopToppingMs - 1)).toContain('gus');
  });

  it('stands where the stop comes later, or at the same time', () => {
    expect(moved(SOON.stopToppingMs + 1)).not.toContain('gus');
    expect(moved(SOON.stopToppingMs)).not.toContain('gus');
  });
});

describe('a stop that says until when', () => {
  it('tells it as the likely restart, and holds on without the all-clear', () => {
    const after = given().when(stop({ untilMs: at('14:00') }), 'ruth', '10:00');
    expect(stepsOf(after.added)).toMatchObject([{ stopAtMs: at('10:00'), resumeAtMs: at('14:00') }]);
    expect(holds(after.harvest, at('15:00')).now).not.toBeNull();
  });

  it('may be given a new end', () => {
    const after = given().when(stop({ untilMs: at('14:00') }), 'ruth', '10:00');
    expect(stepsOf(after.when(stop({ untilMs: at('15:00') }), 'ruth', '10:30').added)).toMatchObject([
      { stage: 'update', resumeAtMs: at('15:00') },
    ]);
  });
});
