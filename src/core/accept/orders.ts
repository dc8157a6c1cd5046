import type { NoticeStep } from '../book/facts.ts';
import { mayManage } from '../roster.ts';
import { MS_PER_MINUTE } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { hasBegun, hasUnseen, newestStep, openNotices, unendedNotices } from '../notices/notices.ts';
import { hasUnseenWords } from '../notices/passed-words.ts';
import { TOPPING_LEAD_MIN } from '../weather/assumptions.ts';
import { refused, taken } from './speaking.ts';
import type { Accepted, IntentOf, Speaking } from './speaking.ts';
import type { NoticeEvent, Harvest } from '../harvest/harvest.ts';

const stopStep = (
  intent: IntentOf<'order-stop'>,
  current: NoticeEvent | undefined,
  speaking: Speaking,
): NoticeStep => {
  const nowMs: EpochMs = speaking.sentMs;
  const stopAtMs = Math.max(intent.stopAtMs ?? nowMs, nowMs);
  const { untilMs } = intent;
  const before = current ? newestStep(current).step : null;
  return {
    event: before?.event ?? `${intent.hold}-${speaking.cause}`,
    number: (before?.number ?? 0) + 1,
    // "Stop digging" without a reason moves a heat stop that is open.
    notice: before?.notice ?? intent.hold,
    stage: before === null || before.stage === 'watch' ? 'stop' : 'update',
    source: 'person',
    place: before?.place ?? null,
    stopToppingMs: Math.max(stopAtMs - TOPPING_LEAD_MIN * MS_PER_MINUTE, nowMs),
    stopAtMs,
    // An end before the beginning is a slip.
    resumeAtMs: untilMs !== undefined && untilMs > stopAtMs ? untilMs : null,
    peakF: null,
    peakMs: null,
    limitF: null,
    chance: null,
    words: intent.words,
  };
};

/** The dig is stopped already and the order changes nothing: sending everybody "NEW TIME, NOW" would only alarm them. */
const isStoppedAlready = (
  current: NoticeEvent | undefined,
  intent: IntentOf<'order-stop'>,
  nowMs: EpochMs,
): boolean => {
  if (!current || intent.stopAtMs !== null || intent.untilMs !== undefined) return false;
  const { stage, stopAtMs } = newestStep(current).step;
  return stage !== 'watch' && stopAtMs !== null && stopAtMs <= nowMs;
};

/** The order was heard late: somebody ended the stop after it was sent, and with it this order. */
const isEndedSince = (harvest: Harvest, sentMs: EpochMs): boolean =>
  harvest.notices.some((event) => {
    const { step, atMs } = newestStep(event);
    return step.stage === 'all-clear' && step.source === 'person' && atMs > sentMs;
  });

/** An order that was heard late is dated after the step that it changes, so that a stop is never lost. */
const after = (event: NoticeEvent | undefined, speaking: Speaking): Speaking =>
  event ? { ...speaking, sentMs: Math.max(speaking.sentMs, newestStep(event).atMs + 1) } : speaking;

/** Stops the dig: foreman and grower only. An open notice for the same reason is moved, not raised twice. */
export const acceptStop = (
  intent: IntentOf<'order-stop'>,
  harvest: Harvest,
  speaking: Speaking,
): Accepted => {
  if (!mayManage(speaking.speaker)) return refused({ refused: 'not-allowed', what: 'stop-dig' });
  if (isEndedSince(harvest, speaking.sentMs)) return refused({ refused: 'order-overtaken' });
  const open = openNotices(harvest).find((event) => {
    const { notice } = newestStep(event).step;
    return notice === intent.hold || intent.hold === 'other';
  });
  if (isStoppedAlready(open, intent, speaking.sentMs)) return refused({ refused: 'dig-stopped-already' });
  const ordering = after(open, speaking);
  return taken(ordering, null, [{ kind: 'notice-raised', step: stopStep(intent, open, ordering) }]);
};

/** The open notices that an order to dig ends: all, but not the coming night's frost if something else stops the dig. */
const toBeEnded = (open: readonly NoticeEvent[], nowMs: EpochMs): readonly NoticeEvent[] => {
  const isHolding = (event: NoticeEvent): boolean => hasBegun(newestStep(event).step, nowMs);
  return open.some(isHolding)
    ? open.filter((event) => newestStep(event).step.notice !== 'frost' || isHolding(event))
    : open;
};

/** Crowns may be frozen: only a check shows it; whoever resumes without one gives the reason. */
const needsCrownCheck = ({ step }: NoticeEvent['steps'][number], nowMs: EpochMs): boolean =>
  step.notice === 'frost' && step.stage !== 'all-clear' && hasBegun(step, nowMs);

/**
 * Resumes the dig: foreman and grower only, with the reason if one is given. Ends the open notices, also those from the
 * forecast, and brings forward an all-clear that was announced for later.
 */
export const acceptResume = (
  intent: IntentOf<'order-resume'>,
  harvest: Harvest,
  speaking: Speaking,
): Accepted => {
  const { sentMs } = speaking;
  if (!mayManage(speaking.speaker)) return refused({ refused: 'not-allowed', what: 'resume-dig' });
  const open = unendedNotices(harvest, sentMs);
  if (open.length === 0) return refused({ refused: 'dig-not-stopped' });
  const known = toBeEnded(open, sentMs)
    .map(newestStep)
    .filter(({ atMs }) => atMs <= sentMs);
  if (known.length === 0) return refused({ refused: 'order-overtaken' });
  if (intent.words === null && known.some((newest) => needsCrownCheck(newest, sentMs)))
    return refused({ refused: 'crowns-not-checked' });
  const resumeAtMs = Math.max(intent.atMs ?? sentMs, sentMs);
  const steps = known.map(({ step }): NoticeStep => ({
    ...step,
    number: step.number + 1,
    stage: 'all-clear',
    source: 'person',
    resumeAtMs,
    words: intent.words,
  }));
  return taken(
    speaking,
    null,
    steps.map((step) => ({ kind: 'notice-raised', step })),
  );
};

/** "Got it": this person has seen what was sent. */
export const acceptSeen = (harvest: Harvest, speaking: Speaking): Accepted => {
  const { id } = speaking.speaker;
  if (!hasUnseen(harvest, id) && !hasUnseenWords(harvest, id)) return refused({ refused: 'nothing-to-see' });
  return taken(speaking, null, [{ kind: 'notice-seen', person: speaking.speaker.id }]);
};
