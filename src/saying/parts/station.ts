/** What keeps trucks waiting at the station. */
import type { StationTrouble } from '../../core/notices/station-now.ts';
import type { StationId } from '../../core/roster.ts';
import { isoOrNull } from './figures.ts';
import { reasonText } from './reason.ts';
import type { Data, Iso } from '../telling-kind.ts';
import { phrase, stationName, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

/** The reason behind a colon; empty where none was given. */
export const quoted = (words: string | null, voice: Voice): string =>
  words === null ? '' : phrase(voice, 'station.why', { words: reasonText(words, voice) });

/** " until 9:00 AM: at least 48 min"; empty where nobody has said when. `leastMin`: from when a truck gets there. */
export const untilText = (untilMs: number | null, leastMin: number | null, voice: Voice): string => {
  if (untilMs === null) return '';
  const until = phrase(voice, 'receipt.until', { time: time(voice, untilMs) });
  const least = leastMin === null ? 0 : Math.ceil(leastMin);
  return least > 0 ? `${until}${phrase(voice, 'station.least', { least })}` : until;
};

/** One sentence. */
export const troubleText = (trouble: StationTrouble, id: StationId, voice: Voice): string => {
  const station = stationName(voice, id);
  const since = time(voice, trouble.sinceMs);
  switch (trouble.trouble) {
    case 'closed': {
      const { untilMs, leastMin } = trouble;
      return untilMs === null
        ? phrase(voice, 'station.closed-since', { station, time: since })
        : phrase(voice, 'station.closed', { station, until: untilText(untilMs, leastMin, voice) });
    }
    case 'all-down':
      return phrase(voice, 'station.all-down-since', { station, time: since });
    case 'turned-away':
      return phrase(voice, 'station.turned-away-at', {
        station,
        time: since,
        why: quoted(trouble.words, voice),
      });
  }
};

export const troubleData = (trouble: StationTrouble | null, iso: Iso): Data => ({
  halted: trouble?.trouble ?? null,
  closedUntil: trouble?.trouble === 'closed' ? isoOrNull(iso, trouble.untilMs) : null,
  leastMin: trouble?.trouble === 'closed' && trouble.leastMin !== null ? Math.ceil(trouble.leastMin) : null,
});
