import type { Evidence } from '../core/line/types.ts';
import type { Telling } from '../core/telling.ts';
import { addMinutes } from '../core/units.ts';
import type { Minutes } from '../core/units.ts';
import { phrase, stationName, time } from './voice.ts';
import type { Voice } from './voice.ts';

type Wait = Extract<Telling, { tell: 'wait' }>;

/** A wide interval is not known to the minute, and is not told so. */
const WIDE_MIN = 20;

const told = (minutes: Minutes, widthMin: Minutes): number =>
  widthMin > WIDE_MIN ? Math.round(minutes / 5) * 5 : Math.round(minutes);

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
    newestAgeMin !== null && phrase(voice, 'wait.evidence-age', { age: Math.round(newestAgeMin) }),
  ].filter((part) => typeof part === 'string');
  const sentence = parts.join('; ');
  return sentence === '' ? '' : ` ${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
};

/** The wait with its 80 % interval and one sentence of evidence; without evidence it says so. */
export const waitText = (wait: Wait, voice: Voice): string => {
  const { forecast } = wait;
  const station = stationName(voice, wait.station);
  const figures = forecast.known ? forecast : forecast.usual;
  if (!figures) return phrase(voice, 'wait.none', { station });
  const widthMin = figures.highMin - figures.lowMin;
  const [median, low, high] = [figures.medianMin, figures.lowMin, figures.highMin].map((min) =>
    told(min, widthMin),
  );
  const values = { station, median: median ?? 0, low: low ?? 0, high: high ?? 0 };
  if (!forecast.known) return phrase(voice, 'wait.usual', values);
  const evidence = evidenceText(forecast.evidence, voice);
  if (wait.leaveInMin === null) return phrase(voice, 'wait.now', values) + evidence;
  const leave = time(voice, addMinutes(voice.nowMs, wait.leaveInMin));
  const when =
    wait.leaveInMin === 0 ? phrase(voice, 'wait.leave-now') : phrase(voice, 'wait.leave-in', { time: leave });
  const arrive = time(voice, addMinutes(voice.nowMs, wait.arriveInMin));
  return phrase(voice, 'wait.later', { ...values, when, arrive }) + evidence;
};
