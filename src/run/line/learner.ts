/** Learns stations' lines, each thing once: the usual day when a day has passed, each finished trip as it comes. */
import type { WaitInterval } from '../../core/line/model/calibration.ts';
import { signOfPast } from '../../core/line/history.ts';
import type { LineHistory } from '../../core/line/history.ts';
import { calibrateOn, forecastBefore, learnUsualDay, settledTrips } from '../../core/line/knowledge.ts';
import type { LineKnowledge, Settled } from '../../core/line/knowledge.ts';
import type { StationId } from '../../core/roster.ts';

interface Learned {
  past: string;
  usualDay: LineKnowledge;
  /** Forecasts that would have been made, by trip and lead. */
  before: Map<string, WaitInterval | null>;
}

export type LearnLine = (history: LineHistory) => LineKnowledge;

const keyOf = ({ visit, joinedMs, waitMin }: Settled, leadMin: number): string =>
  [visit.truck, visit.heardMs, joinedMs, waitMin, leadMin].join(' ');

/** What it gives depends on the history alone; that it remembers only saves time. */
export const lineLearner = (): LearnLine => {
  const stations = new Map<StationId, Learned>();
  return (history) => {
    const past = signOfPast(history);
    const known = stations.get(history.station);
    const learned: Learned =
      known?.past === past ? known : { past, usualDay: learnUsualDay(history), before: new Map() };
    stations.set(history.station, learned);
    const { usualDay, before } = learned;
    const remembered = (trip: Settled, leadMin: number): WaitInterval | null => {
      const key = keyOf(trip, leadMin);
      const interval = before.has(key) ? (before.get(key) ?? null) : forecastBefore(trip, leadMin, usualDay);
      before.set(key, interval);
      return interval;
    };
    const trips = settledTrips(history, usualDay.profile);
    return { ...usualDay, calibration: calibrateOn(trips, remembered) };
  };
};
