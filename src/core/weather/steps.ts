import type { NoticeBasis, NoticeStep } from '../book/facts.ts';
import type { EpochMs } from '../units.ts';

/** The step that ends an event now; everything else is as in the current step. */
export const allClear = (
  current: NoticeStep,
  nowMs: EpochMs,
  source: NoticeStep['source'],
  basis: NoticeBasis | null = null,
): NoticeStep => ({
  ...current,
  number: current.number + 1,
  stage: 'all-clear',
  source,
  resumeAtMs: nowMs,
  words: null,
  ...(basis === null ? {} : { basis }),
});
