import type { Day, NoticeEvent } from '../day.ts';
import type { NoticeStep } from '../facts.ts';
import { mayManage } from '../roster.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { hasUnseen, newestStep, openNotices, unendedNotices } from '../notices.ts';
import { refused, taken } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';

/** The digger stays less than 30 min behind the topper (Dean, "Protecting Roots", Sugar Producer, August 2012). */
const TOPPING_LEAD_MIN = 30;

const stopStep = (
  intent: IntentOf<'order-stop'>,
  current: NoticeEvent | undefined,
  speaking: Speaking,
): NoticeStep => {
  const nowMs: EpochMs = speaking.sentMs;
  const stopAtMs = Math.max(intent.stopAtMs ?? nowMs, nowMs);
  const before = current ? newestStep(current).step : null;
  return {
    event: before?.event ?? `${intent.hold}-${speaking.cause}`,
    number: (before?.number ?? 0) + 1,
    // "Stop digging" without a reason, while a heat stop is open, moves the heat stop.
    notice: before?.notice ?? intent.hold,
    stage: before === null || before.stage === 'watch' ? 'stop' : 'update',
    source: 'person',
    place: before?.place ?? null,
    stopToppingMs: Math.max(addMinutes(stopAtMs, -TOPPING_LEAD_MIN), nowMs),
    stopAtMs,
    resumeAtMs: null,
    peakF: null,
    peakMs: null,
    limitF: null,
    chance: null,
    words: intent.words,
  };
};

/** The dig is stopped already and the order changes nothing: to tell everybody "NEW TIME, NOW" would only alarm. */
const isStoppedAlready = (
  current: NoticeEvent | undefined,
  intent: IntentOf<'order-stop'>,
  nowMs: EpochMs,
): boolean => {
  if (!current || intent.stopAtMs !== null) return false;
  const { stage, stopAtMs } = newestStep(current).step;
  return stage !== 'watch' && stopAtMs !== null && stopAtMs <= nowMs;
};

/** Stop the dig: by foreman or grower only. While a notice of the same sort is open, it is moved, not doubled. */
export const acceptStop = (intent: IntentOf<'order-stop'>, day: Day, speaking: Speaking): Accepted => {
  if (!mayManage(speaking.speaker)) return refused({ refused: 'not-allowed', what: 'stop-dig' });
  const open = openNotices(day).find((event) => {
    const { notice } = newestStep(event).step;
    return notice === intent.hold || intent.hold === 'other';
  });
  if (isStoppedAlready(open, intent, speaking.sentMs)) return refused({ refused: 'dig-stopped-already' });
  return taken(speaking, null, [{ kind: 'notice-raised', step: stopStep(intent, open, speaking) }]);
};

/**
 * Dig again: by foreman or grower only. Ends every open notice, those from the forecast as well, and brings an all-clear
 * forward that was told for later.
 */
export const acceptResume = (intent: IntentOf<'order-resume'>, day: Day, speaking: Speaking): Accepted => {
  if (!mayManage(speaking.speaker)) return refused({ refused: 'not-allowed', what: 'resume-dig' });
  const open = unendedNotices(day, speaking.sentMs);
  if (open.length === 0) return refused({ refused: 'dig-not-stopped' });
  const steps = open.map((event): NoticeStep => {
    const { step } = newestStep(event);
    const resumeAtMs = Math.max(intent.atMs ?? speaking.sentMs, speaking.sentMs);
    return {
      ...step,
      number: step.number + 1,
      stage: 'all-clear',
      source: 'person',
      resumeAtMs,
      words: null,
    };
  });
  return taken(
    speaking,
    null,
    steps.map((step) => ({ kind: 'notice-raised', step })),
  );
};

/** "Got it": what has been told has been seen by this person. */
export const acceptSeen = (day: Day, speaking: Speaking): Accepted => {
  if (!hasUnseen(day, speaking.speaker.id)) return refused({ refused: 'nothing-to-see' });
  return taken(speaking, null, [{ kind: 'notice-seen', person: speaking.speaker.id }]);
};
