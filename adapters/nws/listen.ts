/** Forecasts of the US National Weather Service, https://www.weather.gov/documentation/services-web-api. */
import { MS_PER_DAY, MS_PER_HOUR, MS_PER_MINUTE, hoursBetween } from '../../src/core/units.ts';
import type { WeatherPlace, WeatherResult, WeatherSource } from '../../src/ports/weather.ts';
import { readAlerts } from './alerts.ts';
import type { AlertsRead } from './alerts.ts';
import { unusable } from './failure.ts';
import type { NwsFailure } from './failure.ts';
import { getJson, onBase } from './get.ts';
import type { NwsAccess, NwsSettings, Validators } from './get.ts';
import { observeAt } from './observe.ts';
import { parseGrid, parseHourly, parsePoints } from './parse.ts';
import type { Links, NwsForecast, Checked } from './parse.ts';

export type { NwsSettings } from './get.ts';

/** The grid cell of a point changes now and then: links are requested again each day, and when they fail. Grade: chosen. */
const LINKS_HOLD_MS = MS_PER_DAY;
/** Bodies 20-89 h old came with status 200. Grade: source (the limit of others, https://github.com/weather-gov/api/issues/71). */
const OLDEST_MS = 18 * MS_PER_HOUR;
/** Clocks differ; taken in, a forecast of the future would outrank every right one until then. Grade: chosen. */
const AHEAD_MS = 15 * MS_PER_MINUTE;

type Parse = (body: unknown, nowMs: number) => Checked<NwsForecast>;
type FetchedForecast =
  { got: 'forecast'; parsed: NwsForecast } | { got: 'unchanged'; issuedMs: number } | NwsFailure;

interface Known {
  validators: Validators;
  issuedMs: number;
}

/** At most 4 decimals and no trailing zeros, otherwise the service redirects. */
const coordinate = (degrees: number): string => String(Number(degrees.toFixed(4)));
const pointOf = (place: WeatherPlace): string =>
  `${coordinate(place.latitude)},${coordinate(place.longitude)}`;

const isOld = (issuedMs: number, nowMs: number): boolean => nowMs - issuedMs > OLDEST_MS;
const hoursOld = (issuedMs: number, nowMs: number): string => hoursBetween(issuedMs, nowMs).toFixed(0);

const forecastAt = (settings: NwsAccess, known: Map<string, Known>) => {
  const once = async (
    { url, key, parse, nowMs }: { url: URL; key: string; parse: Parse; nowMs: number },
    accept: string,
    earlier: Known | null,
  ): Promise<FetchedForecast | { got: 'old'; issuedMs: number }> => {
    const got = await getJson(settings, url, { accept, known: earlier?.validators ?? null });
    if (got.got === 'unchanged') {
      return earlier ? { ...got, issuedMs: earlier.issuedMs } : unusable('304 to an unconditional request');
    }
    if (got.got !== 'json') return got;
    const reading = parse(got.body, nowMs);
    if ('faulty' in reading) return unusable(reading.faulty);
    const { issuedMs } = reading.read;
    if (issuedMs > nowMs + AHEAD_MS)
      return unusable(`the forecast is of the future: ${new Date(issuedMs).toISOString()}`);
    if (isOld(issuedMs, nowMs)) return { got: 'old', issuedMs };
    // A server that lags behind must not bring back an earlier forecast.
    if (earlier && issuedMs <= earlier.issuedMs) return { got: 'unchanged', issuedMs: earlier.issuedMs };
    known.set(key, { validators: got.validators, issuedMs });
    return { got: 'forecast', parsed: reading.read };
  };

  /** If one server has an old forecast, the next may have a fresh one: the Accept header selects another. */
  return async (
    place: WeatherPlace,
    address: string,
    parse: Parse,
    nowMs: number,
  ): Promise<FetchedForecast> => {
    const url = onBase(settings.baseUrl, address);
    // Two places may share a grid cell: each must get its forecast as fresh once.
    const ask = { url, key: `${place.id} ${url.pathname}`, parse, nowMs };
    const last = known.get(ask.key) ?? null;
    const earlier = last && isOld(last.issuedMs, nowMs) ? null : last;
    const first = await once(ask, 'application/geo+json', earlier);
    if (first.got !== 'old') return first;
    const second = await once(ask, 'application/ld+json', earlier);
    if (second.got !== 'old') return second;
    return unusable(`the forecast is ${hoursOld(second.issuedMs, nowMs)} h old`);
  };
};

const zoneIds = (links: Links): string[] =>
  [links.forecastZone, links.county].flatMap((address) => address?.split('/').at(-1) ?? []);

/**
 * Alerts by point and by zone, because an alert was seen to be missing from one of the two
 * (https://github.com/weather-gov/api/issues/109).
 */
const alertsAt = async (
  settings: NwsAccess,
  place: WeatherPlace,
  links: Links,
  nowMs: number,
): Promise<AlertsRead> => {
  const zones = zoneIds(links);
  const queries = [`point=${pointOf(place)}`, ...(zones.length > 0 ? [`zone=${zones.join(',')}`] : [])];
  const replies = await Promise.all(
    queries.map((query) => getJson(settings, onBase(settings.baseUrl, `/alerts/active?${query}`))),
  );
  return readAlerts(
    replies.flatMap((reply) => (reply.got === 'json' ? [reply.body] : [])),
    nowMs,
  );
};

const failed = (failure: NwsFailure): WeatherResult =>
  failure.got === 'unavailable'
    ? { result: 'unavailable', why: failure.why, retryAfterMs: failure.retryAfterMs }
    : { result: 'refused', why: failure.why };

/**
 * The grid of the place, or if that fails its hourly forecast (from the same office and often with the same faults, so
 * not a second opinion), and the frost alerts of the place.
 */
export const nws = (given: NwsSettings): WeatherSource => {
  const closing = new AbortController();
  const settings: NwsAccess = { ...given, closing: closing.signal };
  const linksOf = new Map<string, { links: Links; atMs: number }>();
  const forecast = forecastAt(settings, new Map());

  const resolve = async (
    place: WeatherPlace,
    nowMs: number,
  ): Promise<{ got: 'links'; links: Links } | NwsFailure> => {
    const point = pointOf(place);
    const held = linksOf.get(point);
    if (held && nowMs - held.atMs < LINKS_HOLD_MS) return { got: 'links', links: held.links };
    const got = await getJson(settings, onBase(settings.baseUrl, `/points/${point}`));
    if (got.got === 'unchanged') return unusable('304 to an unconditional request');
    // Cells rarely change: yesterday's is better than none.
    if (got.got === 'unavailable' && held) return { got: 'links', links: held.links };
    if (got.got !== 'json') return got;
    const reading = parsePoints(got.body);
    if ('faulty' in reading) return unusable(reading.faulty);
    linksOf.set(point, { links: reading.read, atMs: nowMs });
    return { got: 'links', links: reading.read };
  };

  const read = async (place: WeatherPlace, links: Links, nowMs: number): Promise<FetchedForecast> => {
    const grid = await forecast(place, links.forecastGridData, parseGrid, nowMs);
    if (grid.got !== 'unavailable' || grid.isLimit) return grid;
    const hourly = await forecast(place, links.forecastHourly, parseHourly, nowMs);
    return hourly.got === 'forecast' || hourly.got === 'unchanged' ? hourly : grid;
  };

  const fetchOnce = async (place: WeatherPlace, nowMs: number): Promise<WeatherResult | 'moved'> => {
    const resolved = await resolve(place, nowMs);
    if (resolved.got !== 'links') return failed(resolved);
    const found = await read(place, resolved.links, nowMs);
    if (found.got === 'missing') return 'moved';
    if (found.got !== 'forecast' && found.got !== 'unchanged') return failed(found);
    const { alerts: freezeAlerts, remarks } = await alertsAt(settings, place, resolved.links, nowMs);
    if (found.got === 'unchanged')
      return { result: 'unchanged', issuedMs: found.issuedMs, freezeAlerts, remarks };
    const zone = resolved.links.timeZone ?? null;
    const all = [...found.parsed.remarks, ...remarks];
    return { result: 'fresh', ...found.parsed, freezeAlerts, zone, remarks: all };
  };

  return {
    name: 'nws',
    attribution: null,
    fetch: async (place, nowMs) => {
      const first = await fetchOnce(place, nowMs);
      if (first !== 'moved') return first;
      linksOf.delete(pointOf(place));
      const second = await fetchOnce(place, nowMs);
      return second === 'moved' ? { result: 'refused', why: `no forecast for ${pointOf(place)}` } : second;
    },
    observe: async (place, nowMs) => {
      const resolved = await resolve(place, nowMs);
      const address = resolved.got === 'links' ? resolved.links.observationStations : null;
      return address == null ? null : observeAt(settings, address, nowMs);
    },
    close: () => {
      closing.abort();
    },
  };
};
