/** A wait in the scale line: its figures, and what they rest on. */
import type { Evidence } from '../../core/line/types.ts';
import type { Minutes } from '../../core/units.ts';
import { isoOrNull, tenths } from './figures.ts';
import type { Data, Iso } from '../telling-kind.ts';
import { phrase, time } from '../voice.ts';
import type { Voice } from '../voice.ts';

interface Figures {
  medianMin: Minutes;
  lowMin: Minutes;
  highMin: Minutes;
}

/** A wide interval is not known to the minute, and is not told so. */
const WIDE_MIN = 20;

export const told = ({
  medianMin,
  lowMin,
  highMin,
}: Figures): { median: number; low: number; high: number } => {
  const toMin = highMin - lowMin > WIDE_MIN ? 5 : 1;
  const rounded = (min: Minutes): number => Math.round(min / toMin) * toMin;
  return { median: rounded(medianMin), low: rounded(lowMin), high: rounded(highMin) };
};

/** The age of the newest word is told where it is old, or where no serial dates it. */
const OLD_MIN = 10;

/** One sentence, with a blank ahead; empty where there is none. */
export const evidenceText = (evidence: Evidence, voice: Voice): string => {
  const { lastSerial, trucksAhead, ratePerHour, newestAgeMin } = evidence;
  const parts = [
    lastSerial &&
      phrase(voice, 'wait.evidence-serial', {
        serial: lastSerial.serial,
        time: time(voice, lastSerial.atMs),
      }),
    trucksAhead !== null && phrase(voice, 'wait.evidence-ahead', { count: Math.round(trucksAhead) }),
    ratePerHour !== null && phrase(voice, 'wait.evidence-rate', { rate: Math.round(ratePerHour) }),
    newestAgeMin !== null &&
      (lastSerial === null || newestAgeMin >= OLD_MIN) &&
      phrase(voice, 'wait.evidence-age', { age: Math.max(0, Math.round(newestAgeMin)) }),
  ].filter((part) => typeof part === 'string');
  const sentence = parts.join('; ');
  return sentence === '' ? '' : ` ${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
};

export const evidenceData = (found: Evidence, iso: Iso): Data => ({
  serial: found.lastSerial?.serial ?? null,
  serialAt: isoOrNull(iso, found.lastSerial?.atMs ?? null),
  trucksAhead: found.trucksAhead === null ? null : Math.round(found.trucksAhead),
  ratePerHour: found.ratePerHour === null ? null : tenths(found.ratePerHour),
  newestAgeMin: found.newestAgeMin === null ? null : tenths(found.newestAgeMin),
});
