import { describe, expect, it } from 'vitest';
import { confirmations } from '../../../src/core/notices/confirmations.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import type { Roster } from '../../../src/core/roster.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, given } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';
import { sampleRoster } from '../../support/roster.ts';

const due = (facts: readonly Fact[], clock: string, roster: Roster = sampleRoster) =>
  confirmations(given(facts, roster).harvest, zoneClock, at(clock));
/** Who is told, and what. */
const told = (facts: readonly Fact[], clock: string, roster: Roster = sampleRoster): string[] =>
  due(facts, clock, roster).tells.map(({ audience, telling }) =>
    audience.to === 'person' ? `${telling.tell} ${audience.person}` : audience.to,
  );
const gotIt = (person: string, clock: string): Fact => fact({ kind: 'notice-seen', person }, clock);
const offShift = (person: string, clock: string): Fact =>
  fact({ kind: 'shift-told', person, off: true, noticesWhenOff: null }, clock);
const reminders = (...people: readonly string[]): string[] => people.map((id) => `reminder ${id}`);
const without = (...people: readonly string[]): Roster => ({
  ...sampleRoster,
  people: sampleRoster.people.filter(({ id }) => !people.includes(id)),
});

/** Topping stops at 12:40. */
const stop = raised('09:00');
const seenByGus = [stop, gotIt('gus', '11:45')];
const BOTH = reminders('mateo', 'fritz');

describe('who must act and has not said "got it"', () => {
  it('is reminded 45 minutes before the topper must stop', () => {
    expect(due(seenByGus, '11:54')).toEqual({ tells: [], wakeAtMs: at('11:55') });
    expect(told(seenByGus, '11:55')).toEqual(BOTH);
    expect(due(seenByGus, '11:55').wakeAtMs).toBe(at('12:10'));
  });

  it('is named to the foreman 30 minutes before, and to the grower 10 minutes before', () => {
    expect(told(seenByGus, '12:09')).toEqual(BOTH);
    expect(told(seenByGus, '12:10')).toEqual([...BOTH, 'unseen mateo']);
    expect(due(seenByGus, '12:10').tells.at(-1)?.telling).toMatchObject({
      notice: { seen: ['gus'], unseen: ['mateo', 'fritz'] },
    });
    expect(due(seenByGus, '12:10').wakeAtMs).toBe(at('12:30'));
    expect(told(seenByGus, '12:30')).toEqual([...BOTH, 'unseen mateo', 'unseen ruth']);
    expect(due(seenByGus, '12:30').wakeAtMs).toBeNull();
  });

  it('is told ahead of everything else, and once: the same tell has the same key', () => {
    const { tells } = due(seenByGus, '12:30');
    expect(tells.every(({ urgent }) => urgent)).toBe(true);
    expect([...new Set(tells.map(({ key }) => key))]).toEqual([
      'reminder:heat-north-station:1',
      'not-confirmed:heat-north-station:1',
    ]);
    expect(due(seenByGus, '12:40').tells).toEqual(tells);
  });

  it('is not reminded off shift', () => {
    expect(told([offShift('fritz', '08:00'), ...seenByGus], '11:55')).toEqual(reminders('mateo'));
  });

  it('is nobody once all of them have said so: no driver is asked', () => {
    const all = ['mateo', 'fritz', 'gus'].map((id) => gotIt(id, '11:45'));
    expect(told([stop, ...all], '12:30')).toEqual([]);
  });
});

describe('where nobody on shift has that work', () => {
  it('the whole crew is asked: one of them drives the machines', () => {
    const small = without('fritz', 'gus', 'carla', 'dale', 'eli');
    expect(told([stop], '11:55', small)).toEqual(reminders('ruth', 'mateo', 'ana', 'ben'));
    expect(
      told([offShift('fritz', '08:00'), offShift('gus', '08:00'), stop], '11:55').length,
    ).toBeGreaterThan(3);
  });

  it('the grower takes the foreman’s place', () => {
    const alone = without('mateo');
    expect(told([stop], '11:55', alone)).toEqual(reminders('ruth', 'fritz', 'gus'));
    expect(told([stop], '12:10', alone)).toEqual([...reminders('ruth', 'fritz', 'gus'), 'unseen ruth']);
    expect(told([offShift('mateo', '08:00'), stop], '12:10').at(-1)).toBe('unseen ruth');
  });
});

describe('a foreman', () => {
  it('is not told that he alone is missing: the grower is, in his place', () => {
    const facts = [stop, gotIt('gus', '11:45'), gotIt('fritz', '11:45')];
    expect(told(facts, '12:10')).toEqual([...reminders('mateo'), 'unseen ruth']);
    expect(told(facts, '12:30')).toEqual([...reminders('mateo'), 'unseen ruth']);
  });
});

describe('with less than an hour left', () => {
  it('it goes faster: five minutes after the order, ten and twenty', () => {
    const now = raised('09:00', { stopToppingMs: at('09:00') });
    expect(due([now], '09:04')).toEqual({ tells: [], wakeAtMs: at('09:05') });
    expect(told([now], '09:05')).toEqual(reminders('mateo', 'fritz', 'gus'));
    expect(told([now], '09:10').at(-1)).toBe('unseen mateo');
    expect(told([now], '09:19').at(-1)).toBe('unseen mateo');
    expect(told([now], '09:20').at(-1)).toBe('unseen ruth');
  });

  it('but no faster than with an hour: 55 minutes are reminded of at 45', () => {
    const soon = raised('09:00', { stopToppingMs: at('09:55') });
    expect(due([soon], '09:00').wakeAtMs).toBe(at('09:10'));
    expect(due([soon], '09:10').wakeAtMs).toBe(at('09:25'));
  });
});

describe('after the time', () => {
  it('nobody is asked for longer than an hour: not by a bot that starts again', () => {
    expect(told([stop], '12:55')).not.toEqual([]);
    expect(told([stop], '13:31')).toEqual([]);
    expect(due([stop], '2026-10-21 09:00')).toEqual({ tells: [], wakeAtMs: null });
  });
});

describe('a time that moves', () => {
  const moved = (clock: string, stopTopping: string) =>
    raised(clock, { number: 2, stage: 'update', stopToppingMs: at(stopTopping) });

  it('to an earlier one is asked about anew', () => {
    const facts = [...seenByGus, moved('11:50', '12:20')];
    expect(told(facts, '11:54')).toEqual([]);
    expect(told(facts, '11:55')).toEqual(reminders('mateo', 'fritz', 'gus'));
    expect(due(facts, '11:55').tells[0]?.key).toBe('reminder:heat-north-station:2');
  });

  it('to a later one is asked of nobody who has confirmed, and of the others no second time', () => {
    const facts = [...seenByGus, moved('12:00', '14:00')];
    expect(told(facts, '13:14')).toEqual([]);
    expect(told(facts, '13:15')).toEqual(BOTH);
    expect(due(facts, '13:15').tells[0]?.key).toBe('reminder:heat-north-station:1');
  });
});

describe('a stop that is hours ahead', () => {
  it('is asked of nobody until it is an order', () => {
    expect(due([stop], '10:00')).toEqual({ tells: [], wakeAtMs: at('11:55') });
    expect(told([stop], '11:54')).toEqual([]);
  });
});

describe('what needs no answer', () => {
  it.each(['watch', 'all-clear'] as const)('%s', (stage) => {
    expect(due([raised('09:00', { stage })], '12:30')).toEqual({ tells: [], wakeAtMs: null });
  });

  it('a stop that has ended meanwhile', () => {
    expect(due([stop, raised('11:50', { number: 2, stage: 'all-clear' })], '12:30').tells).toEqual([]);
  });
});

describe('at night', () => {
  it('those who sleep are reminded, and named, at five', () => {
    const late = raised('22:30', { stopToppingMs: at('23:00') });
    expect(due([late], '23:30')).toEqual({ tells: [], wakeAtMs: at('2026-10-21 05:00') });
    const morning = [...reminders('mateo', 'fritz', 'gus'), 'unseen mateo', 'unseen ruth'];
    expect(told([late], '2026-10-21 05:00')).toEqual(morning);
    expect(told([late], '2026-10-21 06:00')).toEqual(morning);
    expect(told([late], '2026-10-21 06:01')).toEqual([]);
  });
});

describe('two stops', () => {
  const mud = raised('09:00', { stopToppingMs: at('12:44'), event: 'mud-1', notice: 'mud' });

  it('are each asked about at their own time', () => {
    expect(due([stop, mud], '11:50').wakeAtMs).toBe(at('11:55'));
    expect(due([stop, mud], '11:55').wakeAtMs).toBe(at('11:59'));
    expect(due([stop, mud], '11:59').tells.map(({ key }) => key.split(':')[1])).toEqual([
      ...Array<string>(3).fill('heat-north-station'),
      ...Array<string>(3).fill('mud-1'),
    ]);
  });
});
