import { describe, expect, it } from 'vitest';
import { confirmations } from '../../../src/core/notices/confirmations.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, given } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';
import { sampleRoster } from '../../support/roster.ts';

const due = (facts: readonly Fact[], clock: string) =>
  confirmations(given(facts).harvest, zoneClock, at(clock));
/** Who is told, and what. */
const told = (facts: readonly Fact[], clock: string): string[] =>
  due(facts, clock).tells.map(({ audience, telling }) =>
    audience.to === 'person' ? `${telling.tell} ${audience.person}` : audience.to,
  );
const gotIt = (person: string, clock: string): Fact => fact({ kind: 'notice-seen', person }, clock);
const allBut = (...names: string[]): string[] =>
  sampleRoster.people.map(({ id }) => id).filter((id) => !names.includes(id));
const reminders = (people: readonly string[]): string[] => people.map((id) => `reminder ${id}`);
const NAMES = ['unseen ruth', 'unseen mateo'];

/** Topping stops within the hour, so that it is an order at once. */
const SOON = { stopToppingMs: at('09:40') };
const stop = raised('09:00', SOON);
const seenByAna = [stop, gotIt('ana', '09:03')];

describe('who has not said "got it"', () => {
  it('is reminded ten minutes after the stop', () => {
    expect(due(seenByAna, '09:09')).toEqual({ tells: [], wakeAtMs: at('09:10') });
    expect(told(seenByAna, '09:10')).toEqual(reminders(allBut('ana')));
    expect(due(seenByAna, '09:10').wakeAtMs).toBe(at('09:20'));
  });

  it('is named to foreman and grower ten minutes later', () => {
    expect(told(seenByAna, '09:19')).toEqual(reminders(allBut('ana')));
    expect(told(seenByAna, '09:20')).toEqual([...reminders(allBut('ana')), ...NAMES]);
    expect(due(seenByAna, '09:20').tells.at(-1)?.telling).toMatchObject({
      notice: { seen: ['ana'], unseen: allBut('ana') },
    });
    expect(due(seenByAna, '09:20').wakeAtMs).toBeNull();
  });

  it('is told ahead of everything else, and once: the same tell has the same key', () => {
    const { tells } = due(seenByAna, '09:20');
    expect(tells.every(({ urgent }) => urgent)).toBe(true);
    expect([...new Set(tells.map(({ key }) => key))]).toEqual([
      'reminder:heat-north-station:1',
      'not-confirmed:heat-north-station:1',
    ]);
    expect(due(seenByAna, '11:00').tells).toEqual(tells);
  });

  it('is not reminded off shift', () => {
    const off = fact({ kind: 'shift-told', person: 'ben', off: true, noticesWhenOff: null }, '08:00');
    expect(told([off, stop], '09:10')).toEqual(reminders(allBut('ben')));
  });

  it('is nobody once all have said so', () => {
    const all = sampleRoster.people.map(({ id }) => gotIt(id, '09:05'));
    expect(told([stop, ...all], '09:20')).toEqual([]);
  });
});

describe('an old stop', () => {
  it('is asked about for six hours after the names are due, and then no more: not by a bot that starts again', () => {
    expect(told([stop], '15:20')).toEqual([...reminders(allBut()), ...NAMES]);
    expect(due([stop], '15:21')).toEqual({ tells: [], wakeAtMs: null });
    expect(due([stop], '2026-10-21 09:00')).toEqual({ tells: [], wakeAtMs: null });
  });

  it('is asked about again from when its times move', () => {
    const moved = raised('14:00', { number: 2, stage: 'update', stopAtMs: at('16:00') });
    expect(told([...seenByAna, moved], '14:09')).toEqual([]);
    expect(told([...seenByAna, moved], '14:10')).toEqual(reminders(allBut()));
  });
});

describe('a stop that is hours ahead', () => {
  it('is asked about from an hour before the topper must stop', () => {
    const ahead = raised('09:00', { stopToppingMs: at('12:40') });
    expect(due([ahead], '11:49')).toEqual({ tells: [], wakeAtMs: at('11:50') });
    expect(told([ahead], '11:50')).toEqual(reminders(allBut()));
    expect(told([ahead], '12:00')).toEqual([...reminders(allBut()), ...NAMES]);
  });
});

describe('what needs no answer', () => {
  it.each(['watch', 'all-clear'] as const)('%s', (stage) => {
    expect(due([raised('09:00', { stage })], '09:30')).toEqual({ tells: [], wakeAtMs: null });
  });

  it('a stop that has ended meanwhile', () => {
    expect(due([stop, raised('09:05', { number: 2, stage: 'all-clear' })], '09:30').tells).toEqual([]);
  });
});

describe('at night', () => {
  it('those who sleep are reminded, and named, at five', () => {
    const late = raised('22:30');
    expect(due([late], '23:30')).toEqual({ tells: [], wakeAtMs: at('2026-10-21 05:00') });
    expect(told([late], '2026-10-21 05:00')).toEqual([...reminders(allBut()), ...NAMES]);
    // Six hours from then on.
    expect(told([late], '2026-10-21 11:00')).not.toEqual([]);
    expect(told([late], '2026-10-21 11:01')).toEqual([]);
  });
});

describe('two stops', () => {
  const mud = raised('09:04', { ...SOON, event: 'mud-1', notice: 'mud' });

  it('are each asked about at their own time', () => {
    expect(due([stop, mud], '09:00').wakeAtMs).toBe(at('09:10'));
    expect(due([stop, mud], '09:10').wakeAtMs).toBe(at('09:14'));
    expect(due([stop, mud], '09:14').tells.map(({ key }) => key.split(':')[1])).toEqual([
      ...allBut().map(() => 'heat-north-station'),
      ...allBut().map(() => 'mud-1'),
    ]);
  });
});
