import type { DigState } from '../../core/notices/notices.ts';
import { exceptionLines, unforecastLine } from '../parts/dig.ts';
import { isoOrNull } from '../parts/figures.ts';
import { noticeShort } from '../parts/notice.ts';
import { ANSWER_HOLDS_MIN, never, noButtons } from '../telling-kind.ts';
import type { Data, Iso, TellingKind } from '../telling-kind.ts';
import { phrase, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

/** Nothing stops the dig; where nobody watches the weather of a station, that is no plain yes. */
const freeLines = ({ unforecast }: DigState, voice: Voice): string =>
  unforecast.length === 0
    ? phrase(voice, 'may-dig.yes')
    : unforecast.map((one) => unforecastLine('may-dig.no-forecast', one, voice)).join('\n');

const firstLine = (dig: DigState, voice: Voice): string => {
  const { hold, coming, closed, rain } = dig;
  if (hold) return phrase(voice, 'may-dig.no', { notice: noticeShort(hold, rain, voice) });
  if (closed.length > 0 && closed.length === voice.roster.stations.length)
    return phrase(voice, 'may-dig.nowhere');
  if (coming?.stopAtMs == null || coming.stage === 'watch')
    return [freeLines(dig, voice), ...(coming ? [noticeShort(coming, null, voice)] : [])].join(' ');
  return phrase(voice, 'may-dig.until', {
    time: time(voice, coming.stopAtMs),
    notice: noticeShort(coming, null, voice),
  });
};

/** The first line has said so already where nothing stops the dig. */
const blindLines = ({ hold, coming, unforecast }: DigState, voice: Voice): string[] =>
  hold || (coming !== null && coming.stage !== 'watch')
    ? unforecast.map((one) => unforecastLine('may-dig.unforecast', one, voice))
    : [];

const digData = ({ hold, coming, closed, overridden, unforecast }: DigState, iso: Iso): Data => ({
  mayDig: hold === null,
  until: isoOrNull(iso, coming?.stage === 'watch' ? null : (coming?.stopAtMs ?? null)),
  closed: closed.map(({ station, untilMs }) => ({ station, until: isoOrNull(iso, untilMs) })),
  withoutForecast: unforecast.map(({ station, sinceMs }) => ({ station, since: isoOrNull(iso, sinceMs) })),
  overridden: overridden && { by: overridden.by, at: iso(overridden.atMs), words: overridden.step.words },
});

/** May the crew dig: what holds, what comes, who decided otherwise, and which station is closed. */
export const mayDig: TellingKind<'may-dig'> = {
  text: ({ dig }, voice) =>
    [firstLine(dig, voice), ...blindLines(dig, voice), ...exceptionLines(dig, voice)].join('\n'),
  data: ({ dig }, iso) => digData(dig, iso),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
