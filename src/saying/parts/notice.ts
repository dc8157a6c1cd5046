import type { NoticeStep } from '../../core/book/facts.ts';
import { stationById } from '../../core/roster.ts';
import type { PersonId } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import { isoOrNull } from './figures.ts';
import type { Data, Iso, TellingOf } from '../telling-kind.ts';
import { differs, inches, personName, phrase, stationName, temperature, time } from '../voice.ts';
import type { Voice } from '../voice.ts';
import type { RainAround } from '../../core/notices/notices.ts';

/** A clock time; where the station goes by another clock, by that one too. */
const timeAt = (atMs: EpochMs, { place }: NoticeStep, voice: Voice): string => {
  const zone = (place === null ? undefined : stationById(voice.roster, place))?.zone ?? voice.zone;
  const own = time(voice, atMs);
  return differs(voice, zone, atMs) ? `${own} (${time({ ...voice, zone }, atMs)})` : own;
};

/** "NOW" for a time that has come, else "at 1:10 PM". */
const when = (atMs: EpochMs | null, step: NoticeStep, voice: Voice): string =>
  atMs === null || atMs <= voice.nowMs
    ? phrase(voice, 'notice.now')
    : phrase(voice, 'notice.at', { time: timeAt(atMs, step, voice) });

/** What it is, and when topping and digging stop. */
export const headline = (step: NoticeStep, voice: Voice): string => {
  const times = {
    topping: when(step.stopToppingMs, step, voice),
    digging: when(step.stopAtMs, step, voice),
  };
  if (step.source === 'drill') return phrase(voice, 'notice.drill', times);
  if (step.stage === 'watch' && step.notice === 'frost')
    return phrase(voice, 'notice.watch-frost', {
      time: timeAt(step.stopToppingMs ?? voice.nowMs, step, voice),
    });
  const title = phrase(voice, `notice.title.${step.notice}`);
  return phrase(voice, `notice.${step.stage === 'all-clear' ? 'stop' : step.stage}`, { title, ...times });
};

const orderedBy = (by: PersonId | null, voice: Voice): string[] =>
  by === null ? [] : [phrase(voice, 'notice.why-person', { person: personName(voice, by) })];

const ownWords = ({ words }: NoticeStep, voice: Voice): string[] =>
  words === null ? [] : [phrase(voice, 'notice.why-words', { words })];

/** Why the weather asks for it; nothing where a person did. */
const weather = (step: NoticeStep, voice: Voice): string[] => {
  const { peakF, peakMs, limitF, place, notice, chance } = step;
  if (step.source !== 'forecast' || place === null) return [];
  const station = stationName(voice, place);
  if (peakF === null || peakMs === null || limitF === null)
    return notice === 'frost' ? [phrase(voice, 'notice.why-alert', { place: station })] : [];
  const values = {
    peak: temperature(voice, peakF),
    time: time(voice, peakMs),
    place: station,
    limit: temperature(voice, limitF),
  };
  if (notice === 'frost') return [phrase(voice, 'notice.why-frost', values)];
  return [phrase(voice, chance === 1 ? 'notice.why-root' : 'notice.why-forecast', values)];
};

const rainLine = (rain: RainAround | null, voice: Voice): string[] =>
  rain === null
    ? []
    : [
        phrase(voice, 'notice.rain', {
          before: inches(voice, rain.beforeIn),
          next: inches(voice, rain.nextIn),
        }),
      ];

const reasons = (step: NoticeStep, by: PersonId | null, rain: RainAround | null, voice: Voice): string[] => [
  ...weather(step, voice),
  ...ownWords(step, voice),
  ...rainLine(rain, voice),
  ...orderedBy(by, voice),
];

const restart = (step: NoticeStep, voice: Voice): string => {
  if (step.notice === 'frost')
    return phrase(voice, 'notice.resume-frost', { field: voice.roster.fields[0]?.name ?? 'north 40' });
  return step.resumeAtMs === null
    ? phrase(voice, 'notice.resume-unknown')
    : phrase(voice, 'notice.resume', {
        time: phrase(voice, 'notice.at', { time: timeAt(step.resumeAtMs, step, voice) }),
      });
};

const allClearHead = (step: NoticeStep, changed: NoticeStep | null, voice: Voice): string => {
  if (step.source === 'drill') return phrase(voice, 'notice.drill-over');
  const plannedMs = changed?.stopAtMs ?? null;
  if (plannedMs !== null && plannedMs > voice.nowMs)
    return phrase(voice, changed?.stage === 'watch' ? 'notice.watch-off' : 'notice.called-off', {
      time: timeAt(plannedMs, step, voice),
    });
  if (step.resumeAtMs !== null && step.resumeAtMs > voice.nowMs)
    return phrase(voice, 'notice.all-clear', { time: timeAt(step.resumeAtMs, step, voice) });
  return phrase(voice, 'notice.all-clear-now');
};

/** What a notice says: what and when, topping before digging; why; what to do. */
export interface NoticeParts {
  headline: string;
  why: readonly string[];
  todo: readonly string[];
}

export const noticeParts = ({ step, by, changed, rain }: TellingOf<'notice'>, voice: Voice): NoticeParts => {
  if (step.stage === 'all-clear')
    return {
      headline: allClearHead(step, changed, voice),
      why: [...ownWords(step, voice), ...orderedBy(by, voice)],
      todo: [],
    };
  if (step.source === 'drill')
    return {
      headline: headline(step, voice),
      why: orderedBy(by, voice),
      todo: [phrase(voice, 'notice.reply')],
    };
  const why = reasons(step, by, rain, voice);
  if (step.stage === 'watch') {
    const chance = step.chance === null ? null : Math.round(step.chance * 100);
    const likely = chance === null ? [] : [phrase(voice, 'notice.chance', { chance })];
    const todo = step.notice === 'heat' ? [phrase(voice, 'notice.watch-heat')] : [];
    return { headline: headline(step, voice), why: [...likely, ...why], todo };
  }
  const before = step.stage === 'update' ? (changed?.stopAtMs ?? null) : null;
  return {
    headline: headline(step, voice),
    why: [...(before === null ? [] : [phrase(voice, 'notice.was', { time: time(voice, before) })]), ...why],
    todo: [phrase(voice, 'notice.loaded'), restart(step, voice), phrase(voice, 'notice.reply')],
  };
};

/** The first line of a notice and why, for "can we dig". */
export const noticeShort = (step: NoticeStep, rain: RainAround | null, voice: Voice): string => {
  const isSoft = step.stage === 'watch';
  const parts = [headline(step, voice), ...reasons(step, null, rain, voice)];
  return [...parts, ...(isSoft ? [] : [restart(step, voice)])].join(' ');
};

export const noticeData = (step: NoticeStep, iso: Iso): Data => ({
  notice: step.notice,
  event: step.event,
  number: step.number,
  stage: step.stage,
  drill: step.source === 'drill',
  reason:
    step.words ?? (step.peakF === null ? step.source : `forecast ${step.peakF} F, limit ${step.limitF} F`),
  place: step.place,
  stopToppingAt: isoOrNull(iso, step.stopToppingMs),
  stopAt: isoOrNull(iso, step.stopAtMs),
  resumeAt: isoOrNull(iso, step.resumeAtMs),
  chance: step.chance,
});
