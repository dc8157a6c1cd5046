/** Wait forecasts for whoever needs them, made outside of any transaction. */
import { firstEstimate } from '../../core/line/first-estimate.ts';
import { lineHistory } from '../../core/line/history.ts';
import type { LineHistory } from '../../core/line/history.ts';
import { forecastWith } from '../../core/line/knowledge.ts';
import type { WaitForecast, WaitNeed } from '../../core/line/types.ts';
import type { StationId } from '../../core/roster.ts';
import { openedFirst } from '../../core/line/at-least.ts';
import { closingAt } from '../../core/notices/station-now.ts';
import { addMinutes } from '../../core/units.ts';
import type { EpochMs } from '../../core/units.ts';
import { lineLearner } from './learner.ts';
import type { Bot } from '../host/bot.ts';
import { reasonOf } from '../../core/reason.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import type { WaitForecaster } from './forecaster.ts';

/**
 * In this thread, learning first: the same messages get the same answers, however fast the machine. For recorded days;
 * a live crew does not wait while a season is learned (thread.ts).
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

/** One forecast for each need, in order. A fault in forecasting costs sharpness, and never the answer. */
export const forecastWaits = async (
  { line, clock, log }: Pick<Bot, 'line' | 'clock' | 'log'>,
  harvest: Harvest,
  needs: readonly WaitNeed[],
  nowMs: EpochMs,
): Promise<readonly WaitForecast[]> => {
  if (needs.length === 0) return [];
  const forecasts = await forecastOf({ line, clock, log }, harvest, needs, nowMs);
  return forecasts.map((forecast, at) => {
    const need = needs[at];
    return need ? openedFirst(forecast, need.ask, opensMs(harvest, need)) : forecast;
  });
};

/** When the station opens that is closed when the truck gets there. */
const opensMs = (harvest: Harvest, { observations, ask }: WaitNeed): EpochMs | null => {
  const { nowMs, arriveInMin } = ask;
  const asked = { station: observations.station, sinceMs: nowMs, nowMs };
  return closingAt(harvest, asked, addMinutes(nowMs, arriveInMin))?.untilMs ?? null;
};

const forecastOf = async (
  { line, clock, log }: Pick<Bot, 'line' | 'clock' | 'log'>,
  harvest: Harvest,
  needs: readonly WaitNeed[],
  nowMs: EpochMs,
): Promise<readonly WaitForecast[]> => {
  const histories = new Map<StationId, LineHistory>();
  const historyOf = (station: StationId): LineHistory => {
    const history = histories.get(station) ?? lineHistory(harvest, station, clock, nowMs);
    histories.set(station, history);
    return history;
  };
  const asks = needs.map((need) => ({ ...need, history: historyOf(need.observations.station) }));
  try {
    return await line.forecast(asks);
  } catch (error) {
    log.warn(
      { why: reasonOf(error) },
      'The line cannot be forecast; the answer rests on the last waits alone',
    );
    return needs.map(({ observations, ask }) => firstEstimate(observations, ask));
  }
};

/** What there is to learn from at every station. */
export const lineHistories = (harvest: Harvest, bot: Pick<Bot, 'clock'>, nowMs: EpochMs): LineHistory[] =>
  harvest.roster.stations.map(({ id }) => lineHistory(harvest, id, bot.clock, nowMs));
