/** The end of a stop: which one, at which station, and what still stops the dig. */
import type { NoticeStep } from '../../core/book/facts.ts';
import { hasBegun } from '../../core/notices/notices.ts';
import { phrase } from '../voice.ts';
import type { Voice } from '../voice.ts';
import { placeOf, standingHeadline, timeAt, titleOf } from './headline.ts';

/** Whether `other` stops the dig where `step` has ended; null = every station. */
const isSamePlace = (step: NoticeStep, other: NoticeStep): boolean =>
  step.place === null || other.place === null || step.place === other.place;

export const allClearHead = (
  step: NoticeStep,
  changed: NoticeStep | null,
  still: readonly NoticeStep[],
  voice: Voice,
): string => {
  if (step.source === 'drill') return phrase(voice, 'notice.drill-over');
  const values = {
    place: placeOf(step, voice),
    what: phrase(voice, `notice.name.${step.notice}`),
  };
  const plannedMs = changed?.stopAtMs ?? null;
  if (plannedMs !== null && plannedMs > voice.nowMs)
    return phrase(voice, changed?.stage === 'watch' ? 'notice.watch-off' : 'notice.called-off', {
      ...values,
      time: timeAt(plannedMs, step, voice),
    });
  if (still.some((other) => hasBegun(other, voice.nowMs) && isSamePlace(step, other)))
    return phrase(voice, 'notice.over-but-held', { title: titleOf(step, voice) });
  if (step.resumeAtMs !== null && step.resumeAtMs > voice.nowMs)
    return phrase(voice, 'notice.all-clear', { ...values, time: timeAt(step.resumeAtMs, step, voice) });
  return phrase(voice, 'notice.all-clear-now', values);
};

/** Other stops that hold, or are told for later: an all-clear must not be taken for theirs. */
export const stillLines = (still: readonly NoticeStep[], voice: Voice): string[] =>
  still.map((step) => phrase(voice, 'notice.still', { notice: standingHeadline(step, voice) }));
