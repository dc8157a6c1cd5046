import type { Harvest } from '../../../src/core/harvest/harvest.ts';
import { describe, expect, it } from 'vitest';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import { tellsOf } from '../../../src/core/notices/tells.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import { holds, newestStep, openNotices, unseenNotice } from '../../../src/core/notices/notices.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, step } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';
import { sampleRoster } from '../../support/roster.ts';

const dayOf = (facts: readonly Fact[]) => foldHarvest(sampleRoster, facts);

const unseenAt = (harvest: Harvest, clock: string) =>
  unseenNotice({ harvest, clock: zoneClock, nowMs: at(clock) });

describe('what holds the dig', () => {
  it('a stop that is told for later comes, and then holds', () => {
    const harvest = dayOf([raised('09:00')]);
    expect(holds(harvest, at('13:09'))).toMatchObject({ now: null, coming: { stopAtMs: at('13:10') } });
    expect(holds(harvest, at('13:10'))).toMatchObject({ now: { stopAtMs: at('13:10') }, coming: null });
  });

  it('a watch never holds by itself', () => {
    expect(holds(dayOf([raised('09:00', { stage: 'watch' })]), at('14:00')).now).toBeNull();
  });

  it('an all-clear ends it', () => {
    const clear = raised('18:00', { number: 2, stage: 'all-clear', resumeAtMs: at('18:00') });
    const harvest = dayOf([raised('09:00'), clear]);
    expect(holds(harvest, at('18:00'))).toEqual({ now: null, coming: null });
    expect(openNotices(harvest)).toEqual([]);
  });

  it('another stop still holds when one ends', () => {
    const harvest = dayOf([
      raised('09:00'),
      raised('09:30', { event: 'mud', notice: 'mud', place: null, stopAtMs: at('09:30') }),
      raised('18:00', { number: 2, stage: 'all-clear', resumeAtMs: at('18:00') }),
    ]);
    expect(holds(harvest, at('18:30')).now).toMatchObject({ notice: 'mud' });
  });

  it('the newest of two stops in force is the one that is shown', () => {
    const frost = raised('13:30', { event: 'frost', notice: 'frost', stopAtMs: at('13:30') });
    expect(holds(dayOf([raised('09:00'), frost]), at('14:00')).now).toMatchObject({ notice: 'frost' });
  });

  it('the newest of two stops that are told for later is the one that is shown', () => {
    const mud = raised('09:30', { event: 'mud', notice: 'mud', stopAtMs: at('15:00') });
    expect(holds(dayOf([raised('09:00'), mud]), at('10:00')).coming).toMatchObject({ notice: 'mud' });
  });

  it('steps heard out of order stand in the order in which they were raised', () => {
    const steps = [raised('09:00'), raised('10:00', { number: 2, stage: 'update' })];
    const [event] = dayOf(steps.toReversed()).notices;
    expect(event && newestStep(event).step.number).toBe(2);
  });
});

describe('who has seen it', () => {
  const ordered = fact({ kind: 'notice-raised', step: { ...stopByRuth() } }, '09:00', { by: 'ruth' });

  it('nobody, where nothing was raised', () => {
    expect(unseenAt(dayOf([]), '10:00')).toEqual({ step: null, seen: [], unseen: [] });
  });

  it('who ordered it and who said so; of the others those who must act have not', () => {
    const told = unseenAt(dayOf([ordered, fact({ kind: 'notice-seen', person: 'ben' }, '09:02')]), '10:00');
    expect(told.seen).toEqual(['ruth', 'ben']);
    expect(told.unseen).toEqual(['mateo', 'fritz', 'gus']);
  });

  it('is asked of the notice with the newest step', () => {
    const harvest = dayOf([
      raised('09:00'),
      raised('09:30', { event: 'mud', notice: 'mud' }),
      raised('10:00', { number: 2, stage: 'update', stopToppingMs: at('10:30') }),
    ]);
    expect(unseenAt(harvest, '10:00').step).toMatchObject({ notice: 'heat', number: 2 });
  });

  it('an all-clear asks nobody to confirm anew', () => {
    const facts = [
      raised('09:00'),
      fact({ kind: 'notice-seen', person: 'ana' }, '09:02'),
      raised('18:00', { number: 2, stage: 'all-clear' }),
    ];
    expect(unseenAt(dayOf(facts), '19:00').seen).toEqual(['ana']);
  });
});

function stopByRuth() {
  const made = raised('09:00', { source: 'person', notice: 'mud', event: 'mud-1' });
  if (made.kind !== 'notice-raised') throw new Error('raised makes a notice');
  return made.step;
}

describe('whom a fact concerns', () => {
  const told = (one: Fact) =>
    tellsOf(one, dayOf([one]), zoneClock).map(({ audience }) =>
      audience.to === 'person' ? audience.person : audience.to,
    );

  it('an order goes to the room, to those who must act and to the grower, urgently, once each', () => {
    const one = raised('09:00', { stopToppingMs: at('09:40') });
    const tells = tellsOf(one, dayOf([one]), zoneClock);
    expect(told(one)).toEqual(['room', 'ruth', 'mateo', 'fritz', 'gus']);
    expect(tells.every(({ urgent, key }) => urgent && key === 'notice:heat-north-station:1')).toBe(true);
  });

  it('one that is hours ahead goes to the room, and to foreman and grower alone', () => {
    expect(told(raised('09:00'))).toEqual(['room', 'ruth', 'mateo']);
  });

  it('a new time is told with the old one', () => {
    const later = raised('10:00', { number: 2, stage: 'update', stopAtMs: at('14:00') });
    const [tell] = tellsOf(later, dayOf([raised('09:00'), later]), zoneClock);
    expect(tell?.telling).toMatchObject({ tell: 'notice', changed: { stopAtMs: at('13:10') } });
  });

  it('an emergency goes to grower and foreman, urgently', () => {
    const one = fact({ kind: 'emergency-called', words: 'fire', caller: 'Ana' }, '09:00');
    expect(told(one)).toEqual(['ruth', 'mateo']);
    expect(tellsOf(one, dayOf([one]), zoneClock)).toMatchObject([
      { urgent: true, telling: { name: 'Ana', truck: '1' } },
      { urgent: true },
    ]);
  });

  it('a truck that is down goes to the managers but not to the one who said so', () => {
    expect(told(step('3', 'down', '09:00', { header: { by: 'ruth' } }))).toEqual(['mateo']);
    expect(told(step('3', 'up', '09:00'))).toEqual([]);
  });

  it('a stranger goes to the managers', () => {
    expect(
      told(fact({ kind: 'stranger-heard', platform: 'slack', user: 'U1' }, '09:00', { by: null })),
    ).toEqual(['ruth', 'mateo']);
  });
});
