import { describe, expect, it } from 'vitest';
import { tellsOf } from '../../../src/core/notices/tells.ts';
import type { Fact, NoticeStep } from '../../../src/core/book/facts.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, given, step } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';

/** What the newest of these facts is told as; but for the ringing the same to everybody. */
const tells = (...facts: readonly Fact[]) => {
  const newest = facts.at(-1);
  return newest ? tellsOf(newest, given(facts).harvest, zoneClock) : [];
};
const telling = (...facts: readonly Fact[]) => tells(...facts)[0]?.telling;
/** Whose phones ring. */
const ringing = (...facts: readonly Fact[]): string[] =>
  tells(...facts).flatMap(({ audience, telling: told }) => {
    if (told.tell !== 'notice') throw new Error('a notice is told');
    if (!told.rings) return [];
    return [audience.to === 'person' ? audience.person : audience.to];
  });
const ACTING = ['mateo', 'fritz', 'gus'];
const MANAGERS = ['ruth', 'mateo'];

describe('a new time', () => {
  it('is told with the old one of the same stop, not with that of another', () => {
    const mud = raised('09:00', { event: 'mud', notice: 'mud', stopAtMs: at('12:00') });
    const moved = raised('10:00', { number: 2, stage: 'update', stopAtMs: at('14:00') });
    expect(telling(mud, raised('09:30'), moved)).toMatchObject({ changed: { stopAtMs: at('13:10') } });
    expect(telling(mud, raised('09:30'))).toMatchObject({ changed: null });
  });

  it('is told with the one that was told last', () => {
    const moved = (number: number, clock: string, stop: string) =>
      raised(clock, { number, stage: 'update', stopAtMs: at(stop) });
    const told = telling(raised('09:30'), moved(2, '10:00', '14:00'), moved(3, '10:30', '14:40'));
    expect(told).toMatchObject({ changed: { number: 2, stopAtMs: at('14:00') } });
  });
});

describe('a phone rings', () => {
  const watch = raised('09:00', { stage: 'watch' });
  const clear = (clock: string) => raised(clock, { number: 2, stage: 'all-clear' });

  const soon = { stopToppingMs: at('10:30') };

  it('for an order, its new time and its end by day, but not for a watch or the end of one', () => {
    const sooner = { number: 2, stage: 'update', stopToppingMs: at('10:10') } as const;
    expect(ringing(raised('09:40', soon))).toEqual(ACTING);
    expect(ringing(raised('09:40', soon), raised('10:00', sooner))).toEqual(ACTING);
    expect(ringing(raised('09:40', soon), clear('10:00'))).toEqual(ACTING);
    expect(ringing(watch)).toEqual([]);
    expect(ringing(watch, clear('10:00'))).toEqual([]);
    expect(ringing(watch, raised('10:00', { ...soon, number: 2 }))).toEqual(ACTING);
  });

  it('for nobody when the stop comes later than was told', () => {
    const later = { number: 2, stage: 'update', stopToppingMs: at('10:50') } as const;
    expect(ringing(raised('09:40', soon), raised('10:00', later))).toEqual([]);
    expect(tells(raised('09:40', soon), raised('10:00', later))).toHaveLength(5);
    expect(ringing(raised('09:00'), raised('09:30', { ...later, stopToppingMs: at('14:00') }))).toEqual([]);
  });

  it('of foreman and grower alone for a stop that is hours ahead, and of nobody for its end', () => {
    expect(ringing(raised('09:00'))).toEqual(MANAGERS);
    expect(ringing(raised('09:00'), clear('10:00'))).toEqual([]);
  });

  const NIGHT = '23:00';
  const ordered = (stopTopping: string, more: Partial<NoticeStep> = {}) =>
    raised(NIGHT, { source: 'person', stopToppingMs: at(stopTopping), ...more });

  it('at night for an order that begins within two hours: somebody may be out', () => {
    expect(ringing(ordered('23:00'))).toEqual(ACTING);
    expect(ringing(ordered('2026-10-21 01:00'))).toEqual(ACTING);
    expect(ringing(ordered('23:00', { stopToppingMs: null }))).toEqual(ACTING);
    expect(ringing(ordered('2026-10-21 01:01'))).toEqual([]);
  });

  it('at night for nothing else, but for those whose machines run', () => {
    const allClear = ordered('23:00', { number: 2, stage: 'all-clear' });
    expect(ringing(raised(NIGHT, { stopToppingMs: at('23:30') }))).toEqual([]);
    expect(ringing(raised('20:00'), allClear)).toEqual([]);
    const load = step('2', 'left-field', '22:30');
    expect(ringing(load, raised(NIGHT, { stopToppingMs: at('23:30') }))).toEqual(['fritz', 'gus']);
    expect(ringing(load, raised('20:00'), allClear)).toEqual(['fritz', 'gus']);
    expect(ringing(load, raised(NIGHT, { stage: 'watch' }))).toEqual([]);
  });
});

describe('what goes ahead of everything else', () => {
  it('is a notice and an emergency, not a truck that is down or a stranger', () => {
    const urgent = (one: Fact): boolean[] => [...new Set(tells(one).map((tell) => tell.urgent))];
    expect(urgent(raised('09:00'))).toEqual([true]);
    expect(urgent(fact({ kind: 'emergency-called', words: 'fire', caller: 'Ana' }, '09:00'))).toEqual([true]);
    expect(urgent(step('3', 'down', '09:00'))).toEqual([false]);
    expect(urgent(fact({ kind: 'stranger-heard', platform: 'slack', user: 'U1' }, '09:00'))).toEqual([false]);
  });
});
