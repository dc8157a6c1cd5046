/**
 * Wait forecasts for code that does not wait: it is run once to learn what it asks, the forecasts are made elsewhere,
 * and it is run again with them at hand.
 */
import { firstEstimate } from '../../core/line/first-estimate.ts';
import { lineHistory } from '../../core/line/history.ts';
import type { LineHistory } from '../../core/line/history.ts';
import { forecastWith } from '../../core/line/knowledge.ts';
import type { ForecastWait, WaitForecast } from '../../core/line/types.ts';
import type { StationId } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import { lineLearner } from './learner.ts';
import type { Running } from '../host/operation.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import type { LineAsk, WaitForecaster } from './forecaster.ts';

/**
 * In this thread, learning first: the same messages get the same answers, however fast the machine. For recorded days;
 * a live crew does not wait while a season is learned (line-thread.ts).
 */
export const lineHere = (): WaitForecaster => {
  const learn = lineLearner();
  return {
    forecast: async (asks) =>
      asks.map(({ observations, ask, history }) => forecastWith(learn(history))(observations, ask)),
    prepare: () => undefined,
    close: async () => undefined,
  };
};

/** What is asked may depend on what was forecast; deeper than this it never does. */
const MOST_ROUNDS = 4;

/** Runs `work` with forecasts at hand. It may be run several times, so it must leave nothing behind. */
export const withWaitForecasts = async <T>(
  running: Running,
  harvest: Harvest,
  nowMs: EpochMs,
  work: (forecastWait: ForecastWait) => T,
): Promise<T> => {
  const made = new Map<string, WaitForecast>();
  const histories = new Map<StationId, LineHistory>();
  for (let round = 1; ; round += 1) {
    const asked = new Map<string, LineAsk>();
    const result = work((observations, ask) => {
      const key = JSON.stringify([observations, ask]);
      const forecast = made.get(key);
      if (forecast) return forecast;
      const { station } = observations;
      const history = histories.get(station) ?? lineHistory(harvest, station, running.clock, nowMs);
      histories.set(station, history);
      asked.set(key, { observations, ask, history });
      return firstEstimate(observations, ask);
    });
    if (asked.size === 0 || round === MOST_ROUNDS) return result;
    const forecasts = await forecastsOf(running, [...asked.values()]);
    [...asked.keys()].forEach((key, at) => {
      const forecast = forecasts[at];
      if (forecast) made.set(key, forecast);
    });
  }
};

/** A fault in forecasting costs sharpness, and never the answer. */
const forecastsOf = async (
  { line, log }: Running,
  asks: readonly LineAsk[],
): Promise<readonly WaitForecast[]> => {
  try {
    return await line.forecast(asks);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    log.warn({ why }, 'The line cannot be forecast; the answer rests on the last waits alone');
    return asks.map(({ observations, ask }) => firstEstimate(observations, ask));
  }
};

/** What there is to learn from at every station. */
export const lineHistories = (harvest: Harvest, running: Running, nowMs: EpochMs): LineHistory[] =>
  harvest.roster.stations.map(({ id }) => lineHistory(harvest, id, running.clock, nowMs));
