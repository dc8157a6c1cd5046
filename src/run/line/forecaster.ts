import type { LineHistory } from '../../core/line/history.ts';
import type { LineObservations, WaitAsk, WaitForecast } from '../../core/line/types.ts';

export interface LineAsk {
  observations: LineObservations;
  ask: WaitAsk;
  history: LineHistory;
}

/** Where forecasts are made. */
export interface WaitForecaster {
  /** One for each ask, in order; rejects where none can be made. */
  forecast: (asks: readonly LineAsk[]) => Promise<readonly WaitForecast[]>;
  /** Begins to learn, so that the first question need not do without. */
  prepare: (histories: readonly LineHistory[]) => void;
  close: () => Promise<void>;
}
