import { describe, expect, it } from 'vitest';
import { defaultProfile } from '../../../src/core/line/model/usual-day.ts';
import { timelineOf } from '../../../src/core/line/model/timeline.ts';
import type { Visit } from '../../../src/core/line/types.ts';
import { ms, scene, visit } from './scene.ts';

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
