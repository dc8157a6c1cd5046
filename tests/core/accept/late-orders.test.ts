import { describe, expect, it } from 'vitest';
import type { NoticeStep } from '../../../src/core/book/facts.ts';
import { openNotices } from '../../../src/core/notices/notices.ts';
import { at, given } from '../../support/given.ts';
import type { Given } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';

const stop = { do: 'order-stop', hold: 'mud', stopAtMs: null, words: null } as const;
const resume = (words: string | null = null) => ({ do: 'order-resume', atMs: null, words }) as const;
const stepsOf = ({ added }: Given): NoticeStep[] =>
  added.flatMap((one) => (one.kind === 'notice-raised' ? [one.step] : []));

describe('an order that is heard late', () => {
  const overtaken = { refused: 'order-overtaken' };
  const ended = (source: 'person' | 'forecast') =>
    given([raised('09:00'), raised('10:00', { number: 2, stage: 'all-clear', source })]);

  it('to stop is refused where foreman or grower has ended the stop since it was sent', () => {
    expect(ended('person').when(stop, 'ruth', '09:50', { heardMs: at('10:30') }).refusal).toEqual(overtaken);
    expect(ended('person').when(stop, 'ruth', '10:01').refusal).toBeNull();
  });

  it('to stop counts where only the forecast has ended a stop since: a stop is never lost', () => {
    const late = ended('forecast').when(stop, 'ruth', '09:50', { heardMs: at('10:30') });
    expect(stepsOf(late)).toMatchObject([{ notice: 'mud', stage: 'stop' }]);
  });

  it('to stop comes after the step that it changes', () => {
    const told = given([raised('09:00')]);
    const late = told.when({ ...stop, hold: 'heat' }, 'ruth', '08:50', { heardMs: at('09:10') });
    expect(stepsOf(late)).toMatchObject([{ number: 2, source: 'person', stage: 'update' }]);
    expect(late.added[0]?.atMs).toBe(at('09:00') + 1);
  });

  it('to dig again does not end a stop that was ordered after it was sent', () => {
    const stopped = given().when(stop, 'mateo', '10:00');
    expect(stopped.when(resume(), 'ruth', '09:59', { heardMs: at('10:30') }).refusal).toEqual(overtaken);
    expect(openNotices(stopped.when(resume(), 'ruth', '10:00').harvest)).toEqual([]);
  });
});

describe('an order that moves a stop', () => {
  it('leaves it with its station', () => {
    const moved = given([raised('09:00')]).when({ ...stop, hold: 'other' }, 'ruth', '10:00');
    expect(stepsOf(moved)).toMatchObject([{ place: 'north-station', notice: 'heat' }]);
    expect(stepsOf(given().when(stop, 'ruth', '10:00'))).toMatchObject([{ place: null }]);
  });
});

describe('a frost hold that has begun', () => {
  const frost = raised('01:00', { event: 'frost', notice: 'frost', stopAtMs: at('04:00') });

  it('is not ended by "dig again" alone: frozen crowns rot in the pile', () => {
    expect(given([frost]).when(resume(), 'ruth', '08:00').refusal).toEqual({ refused: 'crowns-not-checked' });
    expect(given([frost]).when(resume(), 'ruth', '04:00').refusal).toEqual({ refused: 'crowns-not-checked' });
  });

  it('is ended by foreman or grower who says why', () => {
    const after = given([frost]).when(resume('cut ten crowns, all white'), 'ruth', '08:00');
    expect(stepsOf(after)).toMatchObject([{ stage: 'all-clear', words: 'cut ten crowns, all white' }]);
  });

  it('may be called off without a check before it begins: nothing is frozen yet', () => {
    expect(given([frost]).when(resume(), 'ruth', '03:59').refusal).toBeNull();
  });
});

describe('"dig again" in the afternoon', () => {
  const mud = raised('09:00', { event: 'mud', notice: 'mud', stopAtMs: at('09:00') });
  const tonight = raised('16:00', { event: 'frost', notice: 'frost', stopAtMs: at('2026-10-21 04:00') });
  const ends = (after: Given): string[] => stepsOf(after).map(({ notice }) => notice);

  it('ends the mud hold and leaves the frost hold of the coming night', () => {
    expect(ends(given([mud, tonight]).when(resume(), 'ruth', '17:00'))).toEqual(['mud']);
  });

  it('calls the frost hold of the coming night off where nothing else stops the dig', () => {
    expect(ends(given([tonight]).when(resume(), 'ruth', '17:00'))).toEqual(['frost']);
  });
});
