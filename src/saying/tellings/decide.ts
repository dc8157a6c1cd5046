import { isoOrNull } from '../parts/figures.ts';
import { timeAt } from '../parts/headline.ts';
import { always, never, noButtons } from '../telling-kind.ts';
import type { TellingKind, TellingOf } from '../telling-kind.ts';
import { phrase, stationName, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

const text = ({ step, forecastMs }: TellingOf<'decide'>, voice: Voice): string => {
  const place =
    step.place === null ? '' : phrase(voice, 'may-dig.for', { station: stationName(voice, step.place) });
  const since = forecastMs === null ? '' : phrase(voice, 'may-dig.since', { time: time(voice, forecastMs) });
  const promised =
    step.resumeAtMs === null
      ? phrase(voice, 'decide.no-time', { place })
      : phrase(voice, 'decide.promised', { place, time: timeAt(step.resumeAtMs, step, voice) });
  return [phrase(voice, 'decide.no-forecast', { since }), promised, phrase(voice, 'decide.how')].join(' ');
};

/** No forecast will end the stop: people must, before the time that everybody was told to wait for. */
export const decide: TellingKind<'decide'> = {
  text,
  data: ({ step, forecastMs }, iso) => ({
    event: step.event,
    station: step.place,
    forecastAt: isoOrNull(iso, forecastMs),
    resumeAt: isoOrNull(iso, step.resumeAtMs),
  }),
  buttons: noButtons,
  rings: always,
  restsOnForecast: never,
  holdsMin: null,
};
