import type { NoticeStep } from '../core/facts.ts';
import type { PersonId } from '../core/roster.ts';
import type { Telling, UnseenNotice } from '../core/telling.ts';
import type { EpochMs } from '../core/units.ts';
import { personName, phrase, stationName, temperature, time } from './voice.ts';
import type { Voice } from './voice.ts';

type Notice = Extract<Telling, { tell: 'notice' }>;

/** "NOW" for a time that has come, else "at 1:10 PM". */
const when = (atMs: EpochMs | null, voice: Voice): string =>
  atMs === null || atMs <= voice.nowMs
    ? phrase(voice, 'notice.now')
    : phrase(voice, 'notice.at', { time: time(voice, atMs) });

const headline = (step: NoticeStep, voice: Voice): string =>
  phrase(voice, `notice.${step.stage === 'all-clear' ? 'stop' : step.stage}`, {
    title: phrase(voice, `notice.title.${step.notice}`),
    topping: when(step.stopToppingMs, voice),
    digging: when(step.stopAtMs, voice),
  });

const orderedBy = (by: PersonId | null, voice: Voice): string[] =>
  by === null ? [] : [phrase(voice, 'notice.why-person', { person: personName(voice, by) })];

const reasons = (step: NoticeStep, by: PersonId | null, voice: Voice): string[] => {
  const { peakF, peakMs, limitF, place, words } = step;
  const lines: string[] = [];
  if (peakF !== null && peakMs !== null && limitF !== null && place !== null)
    lines.push(
      phrase(voice, 'notice.why-forecast', {
        peak: temperature(voice, peakF),
        time: time(voice, peakMs),
        place: stationName(voice, place),
        limit: temperature(voice, limitF),
      }),
    );
  if (words !== null) lines.push(phrase(voice, 'notice.why-words', { words }));
  return [...lines, ...orderedBy(by, voice)];
};

const restart = (step: NoticeStep, voice: Voice): string =>
  step.resumeAtMs === null
    ? phrase(voice, 'notice.resume-unknown')
    : phrase(voice, 'notice.resume', {
        time: phrase(voice, 'notice.at', { time: time(voice, step.resumeAtMs) }),
      });

const allClearHead = (step: NoticeStep, changed: NoticeStep | null, voice: Voice): string => {
  const plannedMs = changed?.stopAtMs ?? null;
  if (plannedMs !== null && plannedMs > voice.nowMs)
    return phrase(voice, 'notice.called-off', { time: time(voice, plannedMs) });
  if (step.resumeAtMs !== null && step.resumeAtMs > voice.nowMs)
    return phrase(voice, 'notice.all-clear', { time: time(voice, step.resumeAtMs) });
  return phrase(voice, 'notice.all-clear-now');
};

/** What stops and when, topping before digging; why; what loaded trucks do; when the dig goes on; how to confirm. */
export const noticeText = (notice: Notice, voice: Voice): string => {
  const { step, by, changed } = notice;
  if (step.stage === 'all-clear')
    return [allClearHead(step, changed, voice), ...orderedBy(by, voice)].join('\n');
  const before = step.stage === 'update' && changed?.stopAtMs != null ? changed.stopAtMs : null;
  return [
    headline(step, voice),
    ...(before === null ? [] : [phrase(voice, 'notice.was', { time: time(voice, before) })]),
    ...reasons(step, by, voice),
    phrase(voice, 'notice.loaded'),
    restart(step, voice),
    phrase(voice, 'notice.reply'),
  ].join('\n');
};

/** The first line of a notice and why, for "can we dig". */
export const noticeShort = (step: NoticeStep, voice: Voice): string =>
  [headline(step, voice), ...reasons(step, null, voice), restart(step, voice)].join(' ');

export const unseenText = ({ step, seen, unseen }: UnseenNotice, voice: Voice): string => {
  if (!step) return phrase(voice, 'unseen.none');
  if (unseen.length === 0) return phrase(voice, 'unseen.all');
  const names = unseen.map((person) => personName(voice, person)).join(', ');
  return phrase(voice, 'unseen.some', { names, seen: seen.length, all: seen.length + unseen.length });
};
