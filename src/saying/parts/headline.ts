/** The first line of a notice: what it is, for which station, and when topping and digging stop. */
import type { NoticeStep } from '../../core/book/facts.ts';
import { stationById } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import { hasBegun } from '../../core/notices/notices.ts';
import { differs, phrase, stationName, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

/** A clock time; where the station goes by another clock, by that one too. */
export const timeAt = (atMs: EpochMs, { place }: Pick<NoticeStep, 'place'>, voice: Voice): string => {
  const zone = (place === null ? undefined : stationById(voice.roster, place))?.zone ?? voice.zone;
  const own = time(voice, atMs);
  return differs(voice, zone, atMs) ? `${own} (${time({ ...voice, zone }, atMs)})` : own;
};

/** "NOW" for a time that has come, else "at 1:10 PM". */
const when = (atMs: EpochMs | null, step: NoticeStep, voice: Voice): string =>
  atMs === null || atMs <= voice.nowMs
    ? phrase(voice, 'notice.now')
    : phrase(voice, 'notice.at', { time: timeAt(atMs, step, voice) });

/** "HEAT STOP for North station"; a person's order may be for all stations. */
export const titleOf = (step: Pick<NoticeStep, 'source' | 'notice' | 'place'>, voice: Voice): string => {
  const title = phrase(voice, step.source === 'drill' ? 'notice.title.drill' : `notice.title.${step.notice}`);
  return step.place === null || step.source === 'drill'
    ? title
    : phrase(voice, 'notice.title-for', { title, place: stationName(voice, step.place) });
};

/** " for North station"; empty for all stations. */
export const placeOf = ({ place }: Pick<NoticeStep, 'place'>, voice: Voice): string =>
  place === null ? '' : phrase(voice, 'may-dig.for', { station: stationName(voice, place) });

const watchHeadline = (step: NoticeStep, digging: string, voice: Voice): string => {
  const place = placeOf(step, voice);
  if (step.notice === 'frost')
    return phrase(voice, 'notice.watch-frost', {
      place,
      time: timeAt(step.stopToppingMs ?? voice.nowMs, step, voice),
    });
  return phrase(voice, 'notice.watch', {
    title: phrase(voice, `notice.title.${step.notice}`),
    place,
    digging,
  });
};

export const headline = (step: NoticeStep, voice: Voice): string => {
  const times = {
    topping: when(step.stopToppingMs, step, voice),
    digging: when(step.stopAtMs, step, voice),
  };
  if (step.source === 'drill') return phrase(voice, 'notice.drill', times);
  if (step.stage === 'watch') return watchHeadline(step, times.digging, voice);
  const title = titleOf(step, voice);
  return phrase(voice, `notice.${step.stage === 'all-clear' ? 'stop' : step.stage}`, { title, ...times });
};

/** The same for whoever has heard it before: a stop that has begun is told with its beginning. */
export const standingHeadline = (step: NoticeStep, voice: Voice): string =>
  step.source !== 'drill' && step.stopAtMs !== null && hasBegun(step, voice.nowMs)
    ? phrase(voice, 'notice.since', {
        title: titleOf(step, voice),
        time: timeAt(step.stopAtMs, step, voice),
      })
    : headline(step, voice);
