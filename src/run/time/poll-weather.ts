/** Asks the weather service about the place of each station, every hour and after each failure, and hears what it says. */
import { MS_PER_HOUR, MS_PER_MINUTE } from '../../core/units.ts';
import type { Station, StationId } from '../../core/roster.ts';
import type { Tell } from '../../core/telling.ts';
import type { EpochMs } from '../../core/units.ts';
import { keptForecast } from '../../core/weather/kept-forecast.ts';
import { startOfDayMs } from '../../core/zone-clock.ts';
import type { WeatherPlace, WeatherResult, WeatherSource } from '../../ports/weather.ts';
import { outgoing } from '../out/outgoing.ts';
import { harvestOn, knownHarvest } from '../host/bot.ts';
import type { Bot } from '../host/bot.ts';
import { hearForecast, hearObservation } from '../in/hear-forecast.ts';
import { managersOf } from '../../core/notices/audiences.ts';

const ASKED_AT_MS = 10 * MS_PER_MINUTE;

/** Ten past each hour: the same minute each time, since forecasts are renewed some minutes after the hour. */
const nextHourly = (nowMs: EpochMs): EpochMs =>
  Math.floor((nowMs - ASKED_AT_MS) / MS_PER_HOUR + 1) * MS_PER_HOUR + ASKED_AT_MS;

/** How it went with one station so far. */
interface Asked {
  dueMs: EpochMs;
  /** Failures in a row. */
  failures: number;
  /** True where the refusal has been told already. */
  refused: boolean;
}

const FIRST: Asked = { dueMs: -Infinity, failures: 0, refused: false };

const well = (nowMs: EpochMs): Asked => ({ ...FIRST, dueMs: nextHourly(nowMs) });

/** Twice as long after each failure, up to an hour, but never shorter than the service asks for. */
const unwell = ({ failures }: Asked, retryAfterMs: number, nowMs: EpochMs): Asked => {
  const waitMs = Math.max(retryAfterMs, Math.min(retryAfterMs * 2 ** failures, MS_PER_HOUR));
  return { dueMs: nowMs + waitMs, failures: failures + 1, refused: false };
};

/** Grower and foreman must know that no stop will be told. Once a day at most, however often the bot is started. */
const tellNoForecast = async (bot: Bot, station: StationId, why: string, nowMs: EpochMs): Promise<void> => {
  await bot.book.inOneGo(bot.roster.operation, async (page) => {
    const harvest = await harvestOn(page, bot);
    const key = `no-forecast:${station}:${startOfDayMs(bot.clock, harvest.roster.zone, nowMs)}`;
    const tells = managersOf(harvest.roster).map((audience): Tell => ({
      audience,
      telling: { tell: 'no-forecast', station, why },
      urgent: false,
      key,
    }));
    await page.enqueue(outgoing(tells, { cause: key, origin: null, harvest, nowMs }, bot));
  });
  bot.wakeDeliverer();
};

/** The last forecast still holds; its alerts may have changed. */
const hearAlerts = async (
  bot: Bot,
  place: StationId,
  freezeAlerts: Extract<WeatherResult, { result: 'unchanged' }>['freezeAlerts'],
  heardMs: EpochMs,
): Promise<void> => {
  const { forecasts } = await bot.book.inOneGo(bot.roster.operation, (page) => harvestOn(page, bot));
  const last = forecasts.get(place)?.at(-1);
  if (!last) return;
  const { issuedMs, hours, rain } = last;
  await hearForecast(bot, { place, issuedMs, hours, rain, freezeAlerts, heardMs });
};

const hearResult = async (
  bot: Bot,
  place: WeatherPlace,
  result: WeatherResult,
  asked: Asked,
  nowMs: EpochMs,
): Promise<Asked> => {
  const { id } = place;
  switch (result.result) {
    case 'fresh': {
      const { issuedMs, freezeAlerts, remarks } = result;
      if (remarks.length > 0) bot.log.warn({ station: id, remarks }, 'Parts of the forecast are left out');
      await hearForecast(bot, {
        place: id,
        issuedMs,
        freezeAlerts,
        ...keptForecast(result, nowMs),
        heardMs: nowMs,
      });
      return well(nowMs);
    }
    case 'unchanged':
      await hearAlerts(bot, id, result.freezeAlerts, nowMs);
      return well(nowMs);
    case 'refused':
      if (!asked.refused) {
        bot.log.error({ station: id, why: result.why }, 'No forecast: the weather service refuses');
        await tellNoForecast(bot, id, result.why, nowMs);
      }
      return { ...well(nowMs), refused: true };
    case 'unavailable':
      if (asked.failures === 0)
        bot.log.warn(
          { station: id, why: result.why },
          'No new forecast; the last one stands, and is asked for again',
        );
      return unwell(asked, result.retryAfterMs, nowMs);
  }
};

const placeOf = ({ id, location }: Station): WeatherPlace[] =>
  location === null ? [] : [{ id, ...location }];

/** Asks about each station that is due. To be called every second or so, never twice at a time. */
export const pollWeather = (
  source: WeatherSource,
  bot: Bot,
  now: () => EpochMs,
): { poll: () => Promise<void>; close: () => void } => {
  const asked = new Map<StationId, Asked>();
  const state = { closed: false };
  const isClosed = (): boolean => state.closed;
  const ask = async (place: WeatherPlace): Promise<void> => {
    const before = asked.get(place.id) ?? FIRST;
    if (isClosed() || before.dueMs > now()) return;
    const result = await source.fetch(place, now());
    // What is broken off by closing is no failure, and the book may be closed.
    if (isClosed()) return;
    const after = await hearResult(bot, place, result, before, now());
    asked.set(place.id, after);
    if (after.failures > 0 || after.refused) return;
    const observed = await source.observe(place, now());
    if (observed && !isClosed()) await hearObservation(bot, place.id, observed, now());
  };
  return {
    poll: async () => {
      const { stations } = knownHarvest(bot).roster;
      for (const place of stations.flatMap(placeOf)) await ask(place);
    },
    close: () => {
      state.closed = true;
      source.close();
    },
  };
};
