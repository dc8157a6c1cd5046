import type { DigState } from '../../core/notices/notices.ts';
import { exceptionLines } from '../parts/dig.ts';
import { isoOrNull } from '../parts/figures.ts';
import { noticeShort } from '../parts/notice.ts';
import { ANSWER_HOLDS_MIN, never, noButtons } from '../telling-kind.ts';
import type { Data, Iso, TellingKind } from '../telling-kind.ts';
import { phrase, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

const firstLine = ({ hold, coming, closed, rain }: DigState, voice: Voice): string => {
  if (hold) return phrase(voice, 'may-dig.no', { notice: noticeShort(hold, rain, voice) });
  if (closed.length > 0 && closed.length === voice.roster.stations.length)
    return phrase(voice, 'may-dig.nowhere');
  if (coming?.stopAtMs == null || coming.stage === 'watch')
    return [phrase(voice, 'may-dig.yes'), ...(coming ? [noticeShort(coming, null, voice)] : [])].join(' ');
  return phrase(voice, 'may-dig.until', {
    time: time(voice, coming.stopAtMs),
    notice: noticeShort(coming, null, voice),
  });
};

const digData = ({ hold, coming, closed, overridden }: DigState, iso: Iso): Data => ({
  mayDig: hold === null,
  until: isoOrNull(iso, coming?.stage === 'watch' ? null : (coming?.stopAtMs ?? null)),
  closed: closed.map(({ station, untilMs }) => ({ station, until: isoOrNull(iso, untilMs) })),
  overridden: overridden && { by: overridden.by, at: iso(overridden.atMs), words: overridden.step.words },
});

/** May the crew dig: what holds, what comes, who decided otherwise, and which station is closed. */
export const mayDig: TellingKind<'may-dig'> = {
  text: ({ dig }, voice) => [firstLine(dig, voice), ...exceptionLines(dig, voice)].join('\n'),
  data: ({ dig }, iso) => digData(dig, iso),
  buttons: noButtons,
  rings: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
