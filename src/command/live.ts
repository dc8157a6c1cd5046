/** The bot under way: adapters listen, the clock ticks, messages are delivered, until it is told to stop. */
import { counted, deliver, overChats } from '../run/out/deliver.ts';
import { pollWeather } from '../run/time/poll-weather.ts';
import { hear } from '../run/in/hear.ts';
import { lineHistories } from '../run/line/service.ts';
import { lineThreads } from '../run/line/thread.ts';
import { lastHarvest } from '../run/host/operation.ts';
import { tick } from '../run/time/tick.ts';
import type { Chat } from '../ports/chat.ts';
import type { WeatherSource } from '../ports/weather.ts';
import type { Operation } from './operate.ts';
import type { Log } from '../ports/log.ts';

const TICK_MS = 1_000;

export interface Live {
  /** Delivers what waits, soon. */
  wake: () => void;
  /** Resolves when all chats listen; rejects when one of them can't ever, such as with a token that is refused. */
  listening: Promise<unknown>;
  stop: () => Promise<void>;
}

interface Task {
  run: () => void;
  /** Resolves when nothing of it is under way. */
  idle: () => Promise<unknown>;
}

/** A fault is logged: the next second brings the next try. */
const safely = async (task: () => Promise<unknown>, log: Log): Promise<void> => {
  try {
    await task();
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    log.error({ why }, 'This is tried again in a second');
  }
};

/** Runs one task at a time; asked again while it runs, it runs once more. */
const oneAtATime = (task: () => Promise<unknown>, log: Log): Task => {
  const state = { busy: false, asked: false, last: Promise.resolve() };
  const loop = async (): Promise<void> => {
    while (state.asked) {
      state.asked = false;
      await safely(task, log);
    }
    state.busy = false;
  };
  const run = (): void => {
    state.asked = true;
    if (state.busy) return;
    state.busy = true;
    state.last = loop();
  };
  return { run, idle: () => state.last };
};

/**
 * Starts anew each time. A delivery that hangs has leased its lanes, so that the next one passes them by: a stop notice
 * does not wait for the time limit of a post to another room.
 */
const sideBySide = (task: () => Promise<unknown>, log: Log): Task => {
  const underWay = new Set<Promise<void>>();
  const run = (): void => {
    const one = safely(task, log).finally(() => underWay.delete(one));
    underWay.add(one);
  };
  return { run, idle: () => Promise.all(underWay) };
};

/** Starts the adapters and the clock. Messages left over from before a stop or a crash go out first. */
export const goLive = (
  operation: Operation,
  chats: readonly Chat[],
  weather: WeatherSource | null,
  log: Log,
): Live => {
  const { running, store } = operation;
  const line = lineThreads(log);
  running.line = line;
  line.prepare(lineHistories(lastHarvest(running), running, Date.now()));
  const platforms = chats.map((chat) => chat.platform);
  const send = counted(overChats(chats), running.metrics);
  const delivery = sideBySide(() => deliver(store.outbox, platforms, send, Date.now, log), log);
  const clockwork = oneAtATime(() => tick(running, Date.now()), log);
  running.weatherBy = weather?.attribution ?? null;
  const forecasts = weather && pollWeather(weather, running, Date.now);
  const polling = oneAtATime(async () => forecasts?.poll(), log);
  const timer = setInterval(() => {
    clockwork.run();
    delivery.run();
    polling.run();
  }, TICK_MS);
  // Side by side: a platform that is out of reach keeps no other one waiting.
  const listening = Promise.all(chats.map((chat) => chat.listen((heard) => hear(running, heard))));
  delivery.run();
  const stop = async (): Promise<void> => {
    clearInterval(timer);
    forecasts?.close();
    await Promise.all(chats.map((chat) => chat.close()));
    await Promise.all([clockwork.idle(), delivery.idle(), polling.idle()]);
    await line.close();
    await operation.close();
  };
  return { wake: delivery.run, listening, stop };
};
