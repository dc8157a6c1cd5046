/** The other side of line-thread.ts: learns or forecasts, one order at a time. */
import { parentPort } from 'node:worker_threads';
import type { LineHistory } from '../../core/line/history.ts';
import { forecastWith } from '../../core/line/knowledge.ts';
import type { LineKnowledge } from '../../core/line/knowledge.ts';
import type { LineObservations, WaitAsk, WaitForecast } from '../../core/line/types.ts';
import { lineLearner } from './learner.ts';

export interface LearnOrder {
  order: 'learn';
  history: LineHistory;
}

export interface ForecastOrder {
  order: 'forecast';
  asks: readonly { observations: LineObservations; ask: WaitAsk; knowledge: LineKnowledge }[];
}

export type Order = LearnOrder | ForecastOrder;

export interface ThreadReply {
  number: number;
  /** Of `learn`; null of `forecast`. */
  knowledge: LineKnowledge | null;
  forecasts: readonly WaitForecast[];
}

const learn = lineLearner();

const carriedOut = (order: Order): Omit<ThreadReply, 'number'> => {
  switch (order.order) {
    case 'learn':
      return { knowledge: learn(order.history), forecasts: [] };
    case 'forecast':
      return {
        knowledge: null,
        forecasts: order.asks.map(({ observations, ask, knowledge }) =>
          forecastWith(knowledge)(observations, ask),
        ),
      };
  }
};

// A fault ends the thread: the other side hears of it, and starts a new one when it needs one.
parentPort?.on('message', ({ number, order }: { number: number; order: Order }) => {
  parentPort?.postMessage({ number, ...carriedOut(order) } satisfies ThreadReply);
});
