import { minutesBetween } from '../../core/units.ts';
import { isoOrNull } from '../parts/figures.ts';
import { quoted, untilText } from '../parts/station.ts';
import { ANSWER_HOLDS_MIN, never, noButtons } from '../telling-kind.ts';
import type { Data, Iso, TellingKind, TellingOf } from '../telling-kind.ts';
import { personName, phrase, stationName, time, truckName } from '../voice.ts';
import type { Voice } from '../voice.ts';

type StationNews = TellingOf<'station-news'>;

const newsText = ({ fact, pilers: { running, of } }: StationNews, voice: Voice): string => {
  const station = stationName(voice, fact.station);
  switch (fact.kind) {
    case 'station-reported': {
      if (fact.open) return phrase(voice, 'station.open', { station });
      const { untilMs } = fact;
      const leastMin = untilMs === null ? null : minutesBetween(voice.nowMs, untilMs);
      return phrase(voice, 'station.closed', { station, until: untilText(untilMs, leastMin, voice) });
    }
    case 'pilers-seen':
      if (running === 0) return phrase(voice, 'station.all-down', { station });
      return running === of
        ? phrase(voice, 'station.all-run', { station })
        : phrase(voice, 'station.some-run', { station, running, of });
    case 'loads-turned-away':
      return phrase(voice, 'station.turned-away', { station, why: quoted(fact.words, voice) });
  }
};

const saidBy = ({ fact }: StationNews, voice: Voice): string => {
  if (fact.by === null) return '';
  const truck = fact.kind === 'loads-turned-away' ? fact.truck : null;
  return ` ${phrase(voice, 'station.said', {
    person: personName(voice, fact.by),
    truck: truck === null ? '' : phrase(voice, 'station.of-truck', { truck: truckName(voice, truck) }),
    time: time(voice, fact.atMs),
  })}`;
};

/** No load comes in. */
const halts = ({ fact, pilers }: StationNews): boolean => {
  switch (fact.kind) {
    case 'station-reported':
      return !fact.open;
    case 'pilers-seen':
      return pilers.running === 0;
    case 'loads-turned-away':
      return true;
  }
};

const newsData = ({ fact, pilers }: StationNews, iso: Iso): Data => ({
  station: fact.station,
  event: fact.kind,
  open: fact.kind === 'station-reported' ? fact.open : null,
  closedUntil: fact.kind === 'station-reported' ? isoOrNull(iso, fact.untilMs) : null,
  pilersRunning: fact.kind === 'pilers-seen' ? pilers.running : null,
  truck: fact.kind === 'loads-turned-away' ? fact.truck : null,
  words: fact.kind === 'loads-turned-away' ? fact.words : null,
  by: fact.by,
  at: iso(fact.atMs),
});

/** It asks for no answer: most who get it are driving. */
export const stationNews: TellingKind<'station-news'> = {
  text: (telling, voice) => {
    const news = `${newsText(telling, voice)}${saidBy(telling, voice)}`;
    return halts(telling) ? `${news}\n${phrase(voice, 'station.wait-at-field')}` : news;
  },
  data: newsData,
  buttons: noButtons,
  rings: halts,
  restsOnForecast: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
