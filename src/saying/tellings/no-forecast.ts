import { isoOrNull } from '../parts/figures.ts';
import { never, noButtons } from '../telling-kind.ts';
import type { TellingKind, TellingOf } from '../telling-kind.ts';
import { phrase, stationName, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

const text = ({ station, missing }: TellingOf<'no-forecast'>, voice: Voice): string => {
  const { why, sinceMs, words } = missing;
  const head =
    sinceMs === null
      ? phrase(voice, 'no-forecast', { station: stationName(voice, station) })
      : phrase(voice, 'no-forecast.since', {
          station: stationName(voice, station),
          time: time(voice, sinceMs),
        });
  const detail = words === null ? '' : ` (${words})`;
  return [head, phrase(voice, `no-forecast.${why}`, { detail }), phrase(voice, 'no-forecast.decide')].join(
    ' ',
  );
};

/** Without forecasts the bot cannot warn: people must look at the weather themselves. */
export const noForecast: TellingKind<'no-forecast'> = {
  text,
  data: ({ station, missing }, iso) => ({
    station,
    why: missing.why,
    since: isoOrNull(iso, missing.sinceMs),
    words: missing.words,
  }),
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: null,
};
