/** Asks the weather service about the place of each station, every hour and after each failure, and hears what it says. */
import { MS_PER_HOUR, MS_PER_MINUTE } from '../../core/units.ts';
import type { Station, StationId } from '../../core/roster.ts';
import type { ForecastSupply } from '../../core/notices/forecast-gaps.ts';
import type { EpochMs } from '../../core/units.ts';
import { reasonOf } from '../../core/reason.ts';
import { stationById } from '../../core/roster.ts';
import { keptForecast } from '../../core/weather/kept-forecast.ts';
import type { WeatherPlace, WeatherResult, WeatherSource } from '../../ports/weather.ts';
import { harvestOn, knownHarvest } from '../host/bot.ts';
import type { Bot } from '../host/bot.ts';
import { hearForecast, hearObservation } from '../in/hear-forecast.ts';
import { onceAMinute, watchForecasts } from './forecast-watch.ts';

const ASKED_AT_MS = 10 * MS_PER_MINUTE;

/** Ten past each hour: the same minute each time, since forecasts are renewed some minutes after the hour. */
const nextHourly = (nowMs: EpochMs): EpochMs =>
  Math.floor((nowMs - ASKED_AT_MS) / MS_PER_HOUR + 1) * MS_PER_HOUR + ASKED_AT_MS;

/** How it went with one station so far. */
interface Asked {
  dueMs: EpochMs;
  /** Failures in a row. */
  failures: number;
  /** When the service last had a usable answer; null = not since the start. */
  goodMs: EpochMs | null;
  /** Why it refuses; null = it does not. */
  refusal: string | null;
  /** Why its last answer was of no use; null = it was. */
  fault: string | null;
}

const FIRST: Asked = { dueMs: -Infinity, failures: 0, goodMs: null, refusal: null, fault: null };

const well = (nowMs: EpochMs): Asked => ({ ...FIRST, dueMs: nextHourly(nowMs), goodMs: nowMs });

/** Twice as long after each failure, up to an hour, but never shorter than the service asks for. */
const unwell = (
  { failures, goodMs }: Asked,
  { why, retryAfterMs }: { why: string; retryAfterMs: number },
  nowMs: EpochMs,
): Asked => {
  const waitMs = Math.max(retryAfterMs, Math.min(retryAfterMs * 2 ** failures, MS_PER_HOUR));
  return { ...FIRST, dueMs: nowMs + waitMs, failures: failures + 1, goodMs, fault: why };
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

const logRemarks = (bot: Bot, station: StationId, remarks: readonly string[]): void => {
  if (remarks.length > 0) bot.log.warn({ station, remarks }, 'Parts of the forecast are left out');
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
      logRemarks(bot, id, remarks);
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
      logRemarks(bot, id, result.remarks);
      await hearAlerts(bot, id, result.freezeAlerts, nowMs);
      return well(nowMs);
    case 'refused':
      if (asked.refusal === null)
        bot.log.error({ station: id, why: result.why }, 'No forecast: the weather service refuses');
      return { ...FIRST, dueMs: nextHourly(nowMs), goodMs: asked.goodMs, refusal: result.why };
    case 'unavailable':
      if (asked.failures === 0)
        bot.log.warn(
          { station: id, why: result.why },
          'No new forecast; the last one stands, and is asked for again',
        );
      return unwell(asked, result, nowMs);
  }
};

const placeOf = ({ id, location }: Station): WeatherPlace[] =>
  location === null ? [] : [{ id, ...location }];

/** A fault of the adapter is no reason to lose the last forecast, nor to ask again at once. */
const fetched = async (
  source: WeatherSource,
  place: WeatherPlace,
  nowMs: EpochMs,
): Promise<WeatherResult> => {
  try {
    return await source.fetch(place, nowMs);
  } catch (error) {
    return { result: 'unavailable', why: reasonOf(error), retryAfterMs: 10 * MS_PER_MINUTE };
  }
};

/** The hours that work counts by are those of the operation file: another clock at the place moves them. */
const warnOfZone = (bot: Bot, id: StationId, zone: string | null, nowMs: EpochMs): boolean => {
  const station = stationById(knownHarvest(bot).roster, id);
  if (zone === null || !station || isSameClock(bot, zone, station.zone, nowMs)) return false;
  bot.log.warn(
    { station: id, zone: station.zone, service: zone },
    'The weather service has another time zone for this station than the operation file',
  );
  return true;
};

const isSameClock = ({ clock }: Bot, a: string, b: string, atMs: EpochMs): boolean => {
  try {
    const [one, other] = [clock.wall(a, atMs), clock.wall(b, atMs)];
    return one.hour === other.hour && one.minute === other.minute;
  } catch {
    // A zone that is not known here says nothing about the right one.
    return true;
  }
};

/** Of stations without a location the service is not asked. */
const supplyOf = (known: Asked | undefined, startedMs: EpochMs): ForecastSupply =>
  known === undefined
    ? { by: 'nobody', startedMs }
    : { by: 'service', startedMs, goodMs: known.goodMs, refusal: known.refusal, fault: known.fault };

/**
 * Asks about each station that is due, and tells grower and foreman where no forecast comes. To be called every second or
 * so, never twice at a time.
 */
export const pollWeather = (
  source: WeatherSource,
  bot: Bot,
  now: () => EpochMs,
): { poll: () => Promise<void>; close: () => void } => {
  const asked = new Map<StationId, Asked>();
  const warned = new Set<StationId>();
  const observedDue = new Map<StationId, EpochMs>();
  const isLookDue = onceAMinute();
  const state: { closed: boolean; startedMs: EpochMs | null } = { closed: false, startedMs: null };
  const isClosed = (): boolean => state.closed;
  const ask = async (place: WeatherPlace): Promise<void> => {
    const before = asked.get(place.id) ?? FIRST;
    if (isClosed() || before.dueMs > now()) return;
    // Whatever goes wrong below, the service is not asked every second.
    asked.set(place.id, { ...before, dueMs: now() + MS_PER_MINUTE });
    const result = await fetched(source, place, now());
    // What is broken off by closing is no failure, and the book may be closed.
    if (isClosed()) return;
    if (result.result === 'fresh' && !warned.has(place.id) && warnOfZone(bot, place.id, result.zone, now()))
      warned.add(place.id);
    const after = await hearResult(bot, place, result, before, now());
    asked.set(place.id, after);
  };
  /** Measurements come even while the forecast does not, and then count all the more. */
  const observe = async (place: WeatherPlace): Promise<void> => {
    if (isClosed() || (observedDue.get(place.id) ?? -Infinity) > now()) return;
    observedDue.set(place.id, nextHourly(now()));
    const observed = await source.observe(place, now());
    if (observed && !isClosed()) await hearObservation(bot, place.id, observed, now());
  };
  return {
    poll: async () => {
      const startedMs = (state.startedMs ??= now());
      const { stations } = knownHarvest(bot).roster;
      for (const place of stations.flatMap(placeOf)) {
        await ask(place);
        await observe(place);
      }
      if (!isClosed() && isLookDue(now()))
        await watchForecasts(bot, (id) => supplyOf(asked.get(id), startedMs), now());
    },
    close: () => {
      state.closed = true;
      source.close();
    },
  };
};
