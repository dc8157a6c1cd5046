/** "How long is the line" and "if I leave now". */
import { HOLD_MIN, canBeKept, keepAtField } from './keep-at-field.ts';
import { NO_STATION, askedStation, seenToday, troubleFor } from './asking.ts';
import type { Asking } from './asking.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { haulMinutes } from '../harvest/usual-times.ts';
import type { Question } from '../intent.ts';
import type { WaitForecast, WaitNeed } from '../line/types.ts';
import type { FieldId, StationId, TruckId } from '../roster.ts';
import type { Telling } from '../telling.ts';
import type { Minutes } from '../units.ts';

/** The field that a truck hauls from. */
const fieldOf = (harvest: Harvest, truck: TruckId | null): FieldId | null => {
  const state = truck === null ? undefined : harvest.trucks.get(truck);
  return state?.loads.at(-1)?.field ?? state?.field ?? harvest.dugField;
};

type LineQuestion = Extract<Question, { about: 'line' }>;

/** When the asker would join the line: now, or after leaving and hauling. */
const arrival = (
  { leaveInMin }: LineQuestion,
  station: StationId,
  harvest: Harvest,
  { asker }: Asking,
): { arriveInMin: Minutes; haulMin: Minutes | null } => {
  if (leaveInMin === null) return { arriveInMin: 0, haulMin: null };
  const haulMin = haulMinutes(harvest, station, fieldOf(harvest, asker.truck));
  return { arriveInMin: leaveInMin + haulMin, haulMin };
};

/** The wait on arrival, and that of an arrival half an hour later if the truck could be kept at the field. */
export const waitsForLine = (question: LineQuestion, harvest: Harvest, asking: Asking): WaitNeed[] => {
  const station = askedStation(harvest, asking, question.station);
  if (station === null) return [];
  const { nowMs, asker } = asking;
  const observations = seenToday(harvest, station, asking);
  const { arriveInMin, haulMin } = arrival(question, station, harvest, asking);
  const at = (minutes: Minutes): WaitNeed => ({ observations, ask: { nowMs, arriveInMin: minutes } });
  const mayKeep = haulMin !== null && asker.truck !== null && canBeKept(harvest, asker.truck);
  return mayKeep ? [at(arriveInMin), at(arriveInMin + HOLD_MIN)] : [at(arriveInMin)];
};

export const answerLine = (
  question: LineQuestion,
  harvest: Harvest,
  asking: Asking,
  waits: readonly WaitForecast[],
): Telling => {
  const station = askedStation(harvest, asking, question.station);
  const [forecast] = waits;
  if (station === null || forecast === undefined) return NO_STATION;
  const { leaveInMin } = question;
  const { truck } = asking.asker;
  const { arriveInMin, haulMin } = arrival(question, station, harvest, asking);
  const trouble = troubleFor(harvest, station, arriveInMin, asking);
  const opensMs = trouble?.trouble === 'closed' ? trouble.untilMs : null;
  const advice =
    truck === null || haulMin === null
      ? null
      : keepAtField(
          harvest,
          truck,
          seenToday(harvest, station, asking),
          { nowMs: asking.nowMs, arriveInMin, haulMin, opensMs },
          waits,
        );
  const hold = truck === null || advice === null ? null : { truck, advice };
  return { tell: 'wait', station, arriveInMin, leaveInMin, haulMin, forecast, hold, trouble };
};
