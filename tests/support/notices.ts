import type { Fact, NoticeStep } from '../../src/core/book/facts.ts';
import { at, fact } from './given.ts';

/** A stop from the forecast of a warm afternoon: topping ends at 12:40, digging at 1:10 p.m. */
export const heatStep = (more: Partial<NoticeStep> = {}): NoticeStep => ({
  event: 'heat-north-station',
  number: 1,
  notice: 'heat',
  stage: 'stop',
  source: 'forecast',
  place: 'north-station',
  stopToppingMs: at('12:40'),
  stopAtMs: at('13:10'),
  resumeAtMs: at('19:30'),
  peakF: 65,
  peakMs: at('15:00'),
  limitF: 60,
  chance: 0.9,
  words: null,
  ...more,
});
/** Raised by the bot itself, not by a person. */
export const raised = (clock: string, more: Partial<NoticeStep> = {}): Fact =>
  fact({ kind: 'notice-raised', step: heatStep(more) }, clock, { by: null });
