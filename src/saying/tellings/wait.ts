import { addMinutes } from '../../core/units.ts';
import { tenths } from '../parts/figures.ts';
import { evidenceData, evidenceText, told } from '../parts/line.ts';
import { troubleData, troubleText } from '../parts/station.ts';
import { ANSWER_HOLDS_MIN, never, noButtons } from '../telling-kind.ts';
import type { Data, Iso, TellingKind, TellingOf } from '../telling-kind.ts';
import { phrase, stationName, time, truckName } from '../voice.ts';
import type { Voice } from '../voice.ts';

const holdText = ({ hold }: TellingOf<'wait'>, voice: Voice): string => {
  if (!hold?.advice.hold) return '';
  const { advice } = hold;
  const truck = truckName(voice, hold.truck);
  if (advice.because === 'closed')
    return ` ${phrase(voice, 'hold.closed', { truck, time: time(voice, advice.untilMs) })}`;
  const why = phrase(voice, `hold.${advice.because}`);
  return ` ${phrase(voice, 'hold.say', { truck, why, cost: Math.round(10 * advice.laterPerMin) })}`;
};

const lineText = (telling: TellingOf<'wait'>, voice: Voice): string => {
  const { forecast } = telling;
  const station = stationName(voice, telling.station);
  const figures = forecast.known ? forecast : forecast.usual;
  if (!figures) return phrase(voice, 'wait.none', { station });
  const values = { station, ...told(figures) };
  if (!forecast.known) return phrase(voice, 'wait.usual', values);
  const evidence = evidenceText(forecast.evidence, voice);
  if (telling.leaveInMin === null) return phrase(voice, 'wait.now', values) + evidence;
  const leave = time(voice, addMinutes(voice.nowMs, telling.leaveInMin));
  const when =
    telling.leaveInMin === 0
      ? phrase(voice, 'wait.leave-now')
      : phrase(voice, 'wait.leave-in', { time: leave });
  const arrive = time(voice, addMinutes(voice.nowMs, telling.arriveInMin));
  return phrase(voice, 'wait.later', { ...values, when, arrive }) + evidence;
};

/** Of a closed station, or one that serves nobody, what is usual at that hour says nothing. */
const waitText = (telling: TellingOf<'wait'>, voice: Voice): string => {
  const { trouble, forecast, station } = telling;
  const isUsual = trouble === null || trouble.trouble === 'turned-away';
  const line = forecast.known || isUsual ? [lineText(telling, voice)] : [];
  const why = trouble === null ? [] : [troubleText(trouble, station, voice)];
  return [...why, ...line].join(' ') + holdText(telling, voice);
};

const waitData = (telling: TellingOf<'wait'>, iso: Iso): Data => {
  const { station, arriveInMin, leaveInMin, haulMin, forecast, hold, trouble } = telling;
  const figures = forecast.known ? forecast : forecast.usual;
  const { medianMin, lowMin, highMin } = figures ?? { medianMin: null, lowMin: null, highMin: null };
  const rounded = (min: number | null): number | null => (min === null ? null : tenths(min));
  return {
    station,
    arriveInMin: tenths(arriveInMin),
    medianMin: rounded(medianMin),
    lowMin: rounded(lowMin),
    highMin: rounded(highMin),
    known: forecast.known,
    ...troubleData(trouble, iso),
    leaveInMin,
    haulMin: rounded(haulMin),
    evidence: forecast.known ? evidenceData(forecast.evidence, iso) : null,
    hold: hold?.advice.hold ? { truck: hold.truck, because: hold.advice.because } : null,
  };
};

/** The wait with its 80 % interval and one sentence of evidence; without evidence it says so. */
export const wait: TellingKind<'wait'> = {
  text: waitText,
  data: waitData,
  buttons: noButtons,
  rings: never,
  restsOnForecast: never,
  holdsMin: ANSWER_HOLDS_MIN,
};
