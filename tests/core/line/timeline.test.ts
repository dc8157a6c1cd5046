import { describe, expect, it } from 'vitest';
import { defaultProfile } from '../../../src/core/line/model/usual-day.ts';
import { timelineOf } from '../../../src/core/line/model/timeline.ts';
import type { Visit } from '../../../src/core/line/types.ts';
import { counted, ms, scene, visit } from './scene.ts';

const timeline = (visits: readonly Visit[], nowMin: number) =>
  timelineOf(scene(visits), defaultProfile(1), ms(nowMin));
const joins = (visits: readonly Visit[], nowMin: number) =>
  timeline(visits, nowMin).events.flatMap((event) =>
    event.is === 'joined' ? [{ atMin: event.atMin, pending: event.pending }] : [],
  );

describe('a truck whose ticket was never told', () => {
  const forgotten = visit('2', 60);

  it('waits in the line as far as anybody knows', () => {
    expect(timeline([forgotten], 100)).toMatchObject({ pendingTrucks: 1, slots: 1 });
  });

  it('waits there no more once it has joined again: only its newest visit counts', () => {
    expect(joins([forgotten, visit('2', 150)], 160)).toEqual([{ atMin: 150, pending: true }]);
    expect(joins([visit('2', 150), forgotten], 160)).toEqual([{ atMin: 150, pending: true }]);
    expect(timeline([forgotten, visit('2', 150, 170, 48_001)], 200).pendingTrucks).toBe(0);
  });

  it('waits on while other trucks join, and while its next visit has not been heard of', () => {
    expect(timeline([forgotten, visit('3', 150)], 160).pendingTrucks).toBe(2);
    expect(joins([forgotten, visit('2', 150)], 149)).toEqual([{ atMin: 60, pending: true }]);
  });

  it('does not take its earlier visits with it, which were weighed', () => {
    const weighed = visit('2', 10, 25, 48_000);
    expect(joins([weighed, forgotten, visit('2', 150)], 160)).toEqual([
      { atMin: 10, pending: false },
      { atMin: 150, pending: true },
    ]);
  });
});

describe('a weighing out of turn', () => {
  const trips = [visit('2', 60, 200, 48_030), visit('3', 100, 115, 48_010)];

  it('is of a later visit, whose "in line" nobody told: first come, first served', () => {
    expect(joins(trips, 300)).toEqual([{ atMin: 100, pending: false }]);
    const weighed = timeline(trips, 300).events.filter((event) => event.is === 'weighed');
    expect(weighed.map(({ atMin }) => atMin)).toEqual([115, 200]);
  });

  it('is believed where times are rough, or all waited as long', () => {
    expect(joins([visit('2', 60, 120, 48_030), visit('3', 100, 115, 48_029)], 300)).toHaveLength(2);
    expect(joins([visit('2', 60, 200, 48_030), visit('3', 100, 210, 48_032)], 300)).toHaveLength(2);
  });
});

describe('a count of the trucks ahead', () => {
  const trips = [visit('2', 60, 90, 48_000), visit('3', 70)];
  const slotAt = (atMin: number, truck: string | null) =>
    timelineOf(scene(trips, [counted(atMin, 5, truck)]), defaultProfile(1), ms(200)).events.flatMap(
      (event) => (event.is === 'counted' ? [event.slot] : []),
    );

  it('is of the place of the truck that counts, while it stands in the line', () => {
    expect(slotAt(75, '2')).toEqual([0]);
    expect(slotAt(75, '3')).toEqual([1]);
    expect(slotAt(89, '2')).toEqual([0]);
  });

  it('is of the whole line before the truck has joined and once it is weighed', () => {
    expect(slotAt(50, '2')).toEqual([null]);
    expect(slotAt(90, '2')).toEqual([null]);
    expect(slotAt(120, '2')).toEqual([null]);
    expect(slotAt(75, null)).toEqual([null]);
  });
});
