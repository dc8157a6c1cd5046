/** Forecasts of Open-Meteo, https://open-meteo.com/en/docs. */
import { createHash } from 'node:crypto';
import type { WeatherPlace, WeatherResult, WeatherSource } from '../../src/ports/weather.ts';
import { limitedText } from './limited-text.ts';
import { broken, failureOf, unusable } from './failure.ts';
import type { OpenMeteoFailure } from './failure.ts';
import { parseForecast } from './parse.ts';

interface OpenMeteoSettings {
  /** https://customer-api.open-meteo.com with a key, https://api.open-meteo.com without, or a loopback server. */
  baseUrl: string;
  /** Null = free use, which is for non-commercial purposes only (https://open-meteo.com/en/terms). */
  apiKey: string | null;
  timeoutMs: number;
}

/** Unix time, because local times have today's offset for every hour, even beyond the end of daylight time. */
const urlOf = ({ baseUrl, apiKey }: OpenMeteoSettings, place: WeatherPlace): URL => {
  const url = new URL('/v1/forecast', baseUrl);
  const query = {
    latitude: String(place.latitude),
    longitude: String(place.longitude),
    hourly: 'temperature_2m,precipitation',
    temperature_unit: 'fahrenheit',
    precipitation_unit: 'inch',
    timeformat: 'unixtime',
    timezone: 'GMT',
    forecast_days: '7',
    ...(apiKey === null ? {} : { apikey: apiKey }),
  };
  url.search = new URLSearchParams(query).toString();
  return url;
};

type OpenMeteoReply = { body: unknown } | OpenMeteoFailure;

const getJson = async (
  settings: OpenMeteoSettings,
  url: URL,
  closing: AbortSignal,
): Promise<OpenMeteoReply> => {
  try {
    const signal = AbortSignal.any([AbortSignal.timeout(settings.timeoutMs), closing]);
    const response = await fetch(url, { signal });
    const text = await limitedText(response);
    if (text === null) return unusable('the answer is longer than 5 MB');
    if (response.status !== 200) return failureOf(response.status, text);
    return jsonOf(text);
  } catch (error) {
    return broken(error, settings.timeoutMs);
  }
};

const jsonOf = (text: string): OpenMeteoReply => {
  try {
    return { body: JSON.parse(text) };
  } catch {
    return unusable('the answer is truncated or not JSON');
  }
};

/**
 * A forecast mixed from several models. It has no time of issue, so the first reading of a forecast counts as its issue,
 * and no alerts. Null = not set up: free use excludes a commercial harvest.
 */
export const openMeteo = (settings: OpenMeteoSettings | null): WeatherSource | null => {
  if (settings === null) return null;
  const closing = new AbortController();
  const last = new Map<string, { digest: string; issuedMs: number }>();

  /** When this block was first read, and whether that is now. */
  const seen = (place: WeatherPlace, block: unknown, nowMs: number): { issuedMs: number; isNew: boolean } => {
    const digest = createHash('sha256').update(JSON.stringify(block)).digest('hex');
    const known = last.get(place.id);
    if (known?.digest === digest) return { issuedMs: known.issuedMs, isNew: false };
    last.set(place.id, { digest, issuedMs: nowMs });
    return { issuedMs: nowMs, isNew: true };
  };

  return {
    name: 'open-meteo',
    attribution: 'Weather data by Open-Meteo.com (CC BY 4.0)',
    fetch: async (place, nowMs): Promise<WeatherResult> => {
      const got = await getJson(settings, urlOf(settings, place), closing.signal);
      if ('result' in got) return got;
      const reading = parseForecast(got.body, nowMs);
      if ('faulty' in reading) return unusable(reading.faulty);
      const { block, hours, rain, remarks } = reading.read;
      const { issuedMs, isNew } = seen(place, block, nowMs);
      if (!isNew) return { result: 'unchanged', issuedMs, freezeAlerts: null, remarks: [] };
      return { result: 'fresh', issuedMs, hours, rain, remarks, highs: [], freezeAlerts: null, zone: null };
    },
    // Its current weather comes from a model; it is not measured.
    observe: async () => null,
    close: () => {
      closing.abort();
    },
  };
};
