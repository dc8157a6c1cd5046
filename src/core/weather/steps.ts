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

/**
 * Must the step be confirmed by those who have confirmed the one before it (null = it is the first)? A stop that comes
 * later than was told, and its end, leave nobody at work who should have stopped.
 */
export const asksAnew = (step: NoticeStep, before: NoticeStep | null): boolean => {
  if (step.stage === 'all-clear') return false;
  if (step.stage === 'watch' || before === null) return true;
  if (before.stage === 'watch' || before.stage === 'all-clear') return true;
  const [toldMs, nowMs] = [before.stopToppingMs, step.stopToppingMs];
  return toldMs === null ? nowMs !== null : nowMs === null || nowMs < toldMs;
};
