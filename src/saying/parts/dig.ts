import type { DigState } from '../../core/notices/notices.ts';
import { reasonText } from './reason.ts';
import { machineLine } from './machines.ts';
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
  return [
    phrase(voice, 'may-dig.overridden', {
      person,
      time: time(voice, overridden.atMs),
      words: reasonText(words, voice),
    }),
  ];
};

type Unforecast = DigState['unforecast'][number];

/** For which station, where there are several, and since when. */
const gapValues = ({ station, sinceMs }: Unforecast, voice: Voice): { place: string; since: string } => ({
  place:
    voice.roster.stations.length > 1
      ? phrase(voice, 'may-dig.for', { station: stationName(voice, station) })
      : '',
  since: sinceMs === null ? '' : phrase(voice, 'may-dig.since', { time: time(voice, sinceMs) }),
});

export const unforecastLine = (
  key: 'may-dig.no-forecast' | 'may-dig.unforecast',
  one: Unforecast,
  voice: Voice,
): string => phrase(voice, key, gapValues(one, voice));

/** Which stations are closed, which machine stands, and who had the crew dig on against a notice. */
export const exceptionLines = (dig: DigState, voice: Voice): string[] => [
  ...dig.closed.map((word) => closedLine(word, voice)),
  ...dig.machinesDown.map((fact) => machineLine(fact, voice)),
  ...overriddenLine(dig, voice),
];
