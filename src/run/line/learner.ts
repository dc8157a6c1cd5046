/** Learns stations' lines, each thing once: a past day when it has passed, each finished trip as it comes. */
import type { Forecasts } from '../../core/line/model/mixture.ts';
import { signOfDay } from '../../core/line/history.ts';
import type { LineHistory } from '../../core/line/history.ts';
import {
  earnedOn,
  forecastsBefore,
  knownBefore,
  learnDays,
  settledTrips,
  usualDayFrom,
} from '../../core/line/knowledge.ts';
import type { LearnedDay, LineKnowledge, Settled } from '../../core/line/knowledge.ts';
import type { StationId } from '../../core/roster.ts';

/** Forecasts that would have been made, by trip and lead. */
type Before = Map<string, Forecasts | null>;

interface Learned {
  days: readonly LearnedDay[];
  usualDay: LineKnowledge;
  /** By what was known that morning (`sign` of the day before). */
  before: ReadonlyMap<string, Before>;
}

const noneBefore = (): Before => new Map();

export type LearnLine = (history: LineHistory) => LineKnowledge;

const keyOf = (trip: Settled, leadMin: number): string => {
  const { nowMs, seen } = knownBefore(trip, leadMin);
  return `${nowMs} ${leadMin} ${signOfDay(seen)}`;
};

/** What it gives depends on the history alone; that it remembers only saves time. */
export const lineLearner = (): LearnLine => {
  const stations = new Map<StationId, Learned>();
  return (history) => {
    const known = stations.get(history.station);
    const days = learnDays(history, known?.days);
    const isSame = known?.days.length === days.length && known.days.at(-1)?.sign === days.at(-1)?.sign;
    const usualDay = isSame ? known.usualDay : usualDayFrom(history, days);
    const signs = ['', ...days.map(({ sign }) => sign)];
    const before = new Map(signs.map((sign) => [sign, known?.before.get(sign) ?? noneBefore()]));
    stations.set(history.station, { days, usualDay, before });
    const placeOf = new Map(history.past.map((day, at) => [day.opening, at]));
    const remembered = (trip: Settled, leadMin: number): Forecasts | null => {
      const at = placeOf.get(trip.observations.opening) ?? days.length;
      const ofMorning = before.get(signs[at] ?? '') ?? noneBefore();
      const key = keyOf(trip, leadMin);
      const knowledge = days[at]?.before ?? usualDay;
      const interval = ofMorning.get(key) ?? forecastsBefore(trip, leadMin, knowledge);
      ofMorning.set(key, interval);
      return interval;
    };
    return { ...usualDay, mixture: earnedOn(settledTrips(history, usualDay.profile), remembered) };
  };
};
