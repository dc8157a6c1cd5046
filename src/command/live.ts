/** The running bot: adapters listen, the clock ticks and messages are delivered until it is stopped. */
import { counted, deliver, overChats } from '../run/out/deliver.ts';
import { reporting } from '../run/out/undelivered.ts';
import { onceAMinute, watchForecasts } from '../run/time/forecast-watch.ts';
import { pollWeather } from '../run/time/poll-weather.ts';
import { giveOwedAnswers } from '../run/in/answer-later.ts';
import { hear } from '../run/in/hear.ts';
import { lineHistories } from '../run/line/service.ts';
import { lineThreads } from '../run/line/thread.ts';
import { knownHarvest } from '../run/host/bot.ts';
import type { Bot } from '../run/host/bot.ts';
import type { ForecastSupply } from '../core/notices/forecast-gaps.ts';
import { reasonOf } from '../core/reason.ts';
import { tick } from '../run/time/tick.ts';
import type { Chat } from '../ports/chat.ts';
import type { WeatherSource } from '../ports/weather.ts';
import type { Operation } from './operate.ts';
import type { Log } from '../ports/log.ts';

const TICK_MS = 1_000;

export interface Live {
  /** Starts a delivery of what is waiting. */
  wake: () => void;
  /** Resolves when all chats listen; rejects if one of them never can, for example because its token is refused. */
  listening: Promise<unknown>;
  stop: () => Promise<void>;
}

interface Task {
  run: () => void;
  /** Resolves when none of it is running. */
  idle: () => Promise<unknown>;
}

/** Logs an error; the next tick tries again. */
const safely = async (task: () => Promise<unknown>, log: Log): Promise<void> => {
  try {
    await task();
  } catch (error) {
    log.error({ why: reasonOf(error) }, 'This is tried again in a second');
  }
};

/** Runs the task once at a time; if asked while it runs, once more after that. */
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
 * Starts another run each time. A run that hangs has leased its lanes, so the next one skips them: a stop notice does not
 * wait for the time limit of a post to another room.
 */
const sideBySide = (task: () => Promise<unknown>, log: Log): Task => {
  const underWay = new Set<Promise<void>>();
  const run = (): void => {
    const one = safely(task, log).finally(() => underWay.delete(one));
    underWay.add(one);
  };
  return { run, idle: () => Promise.all(underWay) };
};

/** The polling of the weather service; without one, a watch on whether forecasts come all the same. */
const weatherTask = (
  weather: WeatherSource | null,
  supply: ForecastSupply | null,
  bot: Bot,
): { poll: () => Promise<void>; close: () => void } => {
  if (weather !== null) return pollWeather(weather, bot, Date.now);
  const isLookDue = onceAMinute();
  const look = async (nowMs: number): Promise<void> => {
    if (supply !== null && isLookDue(nowMs)) await watchForecasts(bot, () => supply, nowMs);
  };
  return { poll: () => look(Date.now()), close: () => undefined };
};

/** Starts the adapters and the clock. Messages left over from an earlier run go out first. */
export const goLive = (
  operation: Operation,
  chats: readonly Chat[],
  weather: WeatherSource | null,
  log: Log,
  /** Where forecasts come from if not from that service; null = none are wanted. */
  supply: ForecastSupply | null = null,
): Live => {
  const { bot, store } = operation;
  const line = lineThreads(log);
  bot.line = line;
  line.prepare(lineHistories(knownHarvest(bot), bot, Date.now()));
  const platforms = chats.map((chat) => chat.platform);
  bot.editable = chats.filter(({ canEdit }) => canEdit).map(({ platform }) => platform);
  const send = reporting(counted(overChats(chats), bot.metrics), bot, Date.now);
  const delivery = sideBySide(() => deliver(store.outbox, platforms, send, Date.now, log), log);
  const clockwork = oneAtATime(() => tick(bot, Date.now()), log);
  bot.weatherBy = weather?.attribution ?? null;
  const forecasts = weatherTask(weather, supply, bot);
  const polling = oneAtATime(() => forecasts.poll(), log);
  const timer = setInterval(() => {
    clockwork.run();
    delivery.run();
    polling.run();
  }, TICK_MS);
  // In parallel, so that an unreachable platform does not delay the others.
  const listening = Promise.all(
    chats.map((chat) =>
      chat.listen(async (heard) => {
        await hear(bot, heard);
      }),
    ),
  );
  // Messages and answers left over from an earlier run go out.
  delivery.run();
  const catchingUp = safely(() => giveOwedAnswers(bot, Date.now()), log);
  const stop = async (): Promise<void> => {
    clearInterval(timer);
    forecasts.close();
    await Promise.all(chats.map((chat) => chat.close()));
    await Promise.all([catchingUp, clockwork.idle(), delivery.idle(), polling.idle()]);
    await line.close();
    await operation.close();
  };
  return { wake: delivery.run, listening, stop };
};
