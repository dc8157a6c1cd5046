import type { DigState } from '../../core/notices/notices.ts';
import { personName, phrase, stationName, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

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

/** Which stations are closed, and who had the crew dig on against a notice. */
export const exceptionLines = (dig: DigState, voice: Voice): string[] => [
  ...dig.closed.map((word) => closedLine(word, voice)),
  ...overriddenLine(dig, voice),
];
