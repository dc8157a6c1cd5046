/** May the crew dig: what holds, what comes, who decided otherwise, and which station is closed. */
import { noticeShort } from './notice.ts';
import { personName, phrase, stationName, time } from './voice.ts';
import type { Voice } from './voice.ts';
import type { DigState } from '../core/notices/notices.ts';

const closedLine = ({ station, untilMs, by, atMs }: DigState['closed'][number], voice: Voice): string =>
  phrase(voice, 'may-dig.closed', {
    station: stationName(voice, station),
    until: untilMs === null ? '' : phrase(voice, 'receipt.until', { time: time(voice, untilMs) }),
    person: by === null ? '' : personName(voice, by),
    time: time(voice, atMs),
  });

const overriddenLine = ({ overridden }: DigState, voice: Voice): string[] => {
  const words = overridden?.step.words ?? null;
  if (overridden === null || words === null) return [];
  const person = overridden.by === null ? '' : personName(voice, overridden.by);
  return [phrase(voice, 'may-dig.overridden', { person, time: time(voice, overridden.atMs), words })];
};

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

export const mayDigText = (dig: DigState, voice: Voice): string =>
  [
    firstLine(dig, voice),
    ...dig.closed.map((word) => closedLine(word, voice)),
    ...overriddenLine(dig, voice),
  ].join('\n');

/** For the board: only what is out of the ordinary. */
export const digLines = (dig: DigState, voice: Voice): string[] => {
  const hold = dig.hold ? [noticeShort(dig.hold, dig.rain, voice)] : [];
  return [...hold, ...dig.closed.map((word) => closedLine(word, voice)), ...overriddenLine(dig, voice)];
};
