/**
 * Learns and forecasts in threads of their own, so that no message waits for it: one thread learns for seconds, the
 * other forecasts within tens of milliseconds from what has been learned so far.
 */
import { Worker } from 'node:worker_threads';
import { reasonOf } from '../../core/reason.ts';
import { signOfHistory } from '../../core/line/history.ts';
import type { LineHistory } from '../../core/line/history.ts';
import { noKnowledge } from '../../core/line/knowledge.ts';
import type { LineKnowledge } from '../../core/line/knowledge.ts';
import type { StationId } from '../../core/roster.ts';
import type { Order, ThreadReply } from './worker.ts';
import type { Log } from '../../ports/log.ts';
import type { WaitForecaster } from './forecaster.ts';

interface Thread {
  carryOut: (order: Order, withinMs: number) => Promise<ThreadReply>;
  close: () => Promise<void>;
}

interface Patience {
  forecastMs: number;
  learnMs: number;
}

const USUAL_PATIENCE: Patience = { forecastMs: 2_000, learnMs: 300_000 };

const WORKER = new URL('./worker.ts', import.meta.url);

/** Started at the first order, and anew at the next one after it has ended. */
const thread = (script: URL): Thread => {
  const open = new Map<number, PromiseWithResolvers<ThreadReply>>();
  const now: { worker: Worker | null; number: number } = { worker: null, number: 0 };
  const ended = (worker: Worker, why: Error): void => {
    if (now.worker !== worker) return;
    now.worker = null;
    for (const { reject } of open.values()) reject(why);
    open.clear();
  };
  const start = (): Worker => {
    const worker = new Worker(script);
    // The bot ends when its chats do; this must not keep it.
    worker.unref();
    worker.on('message', (reply: ThreadReply) => {
      open.get(reply.number)?.resolve(reply);
      open.delete(reply.number);
    });
    worker.on('error', (error: Error) => {
      ended(worker, error);
    });
    worker.on('exit', (code) => {
      ended(worker, new Error(`The thread has ended with ${code}.`));
    });
    now.worker = worker;
    return worker;
  };
  const stop = async (why: Error): Promise<void> => {
    const { worker } = now;
    if (worker === null) return;
    ended(worker, why);
    await worker.terminate();
  };
  return {
    carryOut: async (order, withinMs) => {
      const worker = now.worker ?? start();
      now.number += 1;
      const reply = Promise.withResolvers<ThreadReply>();
      open.set(now.number, reply);
      worker.postMessage({ number: now.number, order });
      const late = new Error(`The thread has not answered within ${withinMs} ms.`);
      const timer = setTimeout(() => void stop(late), withinMs);
      return reply.promise.finally(() => {
        clearTimeout(timer);
      });
    },
    close: () => stop(new Error('The bot stops.')),
  };
};

/** For the live bot. Until a station's past is learned, the trade's figures stand in for it. */
export const lineThreads = (
  log: Log,
  patience: Patience = USUAL_PATIENCE,
  script: URL = WORKER,
): WaitForecaster & {
  /** Resolves when nothing is being learned. */
  settled: () => Promise<void>;
} => {
  const [learner, forecaster] = [thread(script), thread(script)];
  const learned = new Map<StationId, LineKnowledge>();
  const begun = new Map<StationId, string>();
  const underWay = new Map<StationId, Promise<void>>();
  const life = { closed: false };

  const learn = async (history: LineHistory): Promise<void> => {
    try {
      const { knowledge } = await learner.carryOut({ order: 'learn', history }, patience.learnMs);
      if (knowledge) learned.set(history.station, knowledge);
    } catch (error) {
      if (life.closed) return;
      const why = reasonOf(error);
      log.warn(
        { station: history.station, why },
        'The line was not learned; what was known before still holds',
      );
    }
  };
  /** A station is learned once at a time; what came in meanwhile is learned with the next ask. */
  const keepUp = (history: LineHistory): void => {
    const { station } = history;
    const sign = signOfHistory(history);
    if (begun.get(station) === sign || underWay.has(station)) return;
    begun.set(station, sign);
    underWay.set(
      station,
      learn(history).finally(() => underWay.delete(station)),
    );
  };
  return {
    forecast: async (asks) => {
      const known = asks.map(({ observations, ask, history }) => {
        keepUp(history);
        const knowledge = learned.get(history.station) ?? noKnowledge(history.usualPilers);
        return { observations, ask, knowledge };
      });
      const reply = await forecaster.carryOut({ order: 'forecast', asks: known }, patience.forecastMs);
      return reply.forecasts;
    },
    prepare: (histories) => {
      histories.forEach(keepUp);
    },
    settled: async () => {
      await Promise.all(underWay.values());
    },
    close: async () => {
      life.closed = true;
      await Promise.all([learner.close(), forecaster.close()]);
    },
  };
};
