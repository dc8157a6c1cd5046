import { ANSWER_HOLDS_MIN, never, noButtons } from '../telling-kind.ts';
import type { TellingKind } from '../telling-kind.ts';
import { phrase, stationName, truckName } from '../voice.ts';

export const lineStopped: TellingKind<'line-stopped'> = {
  text: ({ station, waiting, silentMin }, voice) =>
    phrase(voice, 'line.stopped', {
      station: stationName(voice, station),
      trucks: waiting.map((truck) => truckName(voice, truck)).join(', '),
      silent: silentMin,
    }),
  data: ({ station, waiting, silentMin }) => ({ station, waiting, silentMin }),
  buttons: noButtons,
  rings: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
