import type { Evidence } from '../core/line/types.ts';
import type { Telling } from '../core/telling.ts';
import { addMinutes } from '../core/units.ts';
import type { Minutes } from '../core/units.ts';
import { phrase, stationName, time, truckName } from './voice.ts';
import type { Voice } from './voice.ts';

type Wait = Extract<Telling, { tell: 'wait' }>;
type LineLimit = Extract<Telling, { tell: 'line-limit' }>;
type LineStopped = Extract<Telling, { tell: 'line-stopped' }>;

interface Figures {
  medianMin: Minutes;
  lowMin: Minutes;
  highMin: Minutes;
}

/** A wide interval is not known to the minute, and is not told so. */
const WIDE_MIN = 20;

const told = ({ medianMin, lowMin, highMin }: Figures): { median: number; low: number; high: number } => {
  const toMin = highMin - lowMin > WIDE_MIN ? 5 : 1;
  const rounded = (min: Minutes): number => Math.round(min / toMin) * toMin;
  return { median: rounded(medianMin), low: rounded(lowMin), high: rounded(highMin) };
};

/** The age of the newest word is told where it is old, or where no serial dates it. */
const OLD_MIN = 10;

const evidenceText = (evidence: Evidence, voice: Voice): string => {
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

const holdText = ({ hold }: Wait, voice: Voice): string => {
  if (!hold?.advice.hold) return '';
  const { because, laterPerMin } = hold.advice;
  const why = phrase(voice, `hold.${because}`);
  const values = { truck: truckName(voice, hold.truck), why, cost: Math.round(10 * laterPerMin) };
  return ` ${phrase(voice, 'hold.say', values)}`;
};

/** The wait with its 80 % interval and one sentence of evidence; without evidence it says so. */
export const waitText = (wait: Wait, voice: Voice): string => {
  const { forecast } = wait;
  const station = stationName(voice, wait.station);
  const figures = forecast.known ? forecast : forecast.usual;
  if (!figures) return phrase(voice, 'wait.none', { station });
  const values = { station, ...told(figures) };
  if (!forecast.known) return phrase(voice, 'wait.usual', values);
  const evidence = evidenceText(forecast.evidence, voice);
  if (wait.leaveInMin === null) return phrase(voice, 'wait.now', values) + evidence;
  const leave = time(voice, addMinutes(voice.nowMs, wait.leaveInMin));
  const when =
    wait.leaveInMin === 0 ? phrase(voice, 'wait.leave-now') : phrase(voice, 'wait.leave-in', { time: leave });
  const arrive = time(voice, addMinutes(voice.nowMs, wait.arriveInMin));
  return phrase(voice, 'wait.later', { ...values, when, arrive }) + evidence + holdText(wait, voice);
};

export const lineLimitText = ({ station, limitMin, forecast }: LineLimit, voice: Voice): string =>
  phrase(voice, 'line.limit', {
    station: stationName(voice, station),
    limit: limitMin,
    ...told(forecast),
  }) + evidenceText(forecast.evidence, voice);

export const lineStoppedText = ({ station, waiting, silentMin }: LineStopped, voice: Voice): string =>
  phrase(voice, 'line.stopped', {
    station: stationName(voice, station),
    trucks: waiting.map((truck) => truckName(voice, truck)).join(', '),
    silent: silentMin,
  });
