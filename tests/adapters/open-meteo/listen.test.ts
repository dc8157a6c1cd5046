import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openMeteo } from '../../../adapters/open-meteo/listen.ts';
import type { WeatherResult } from '../../../src/ports/weather.ts';
import { openMeteoReply } from '../../support/open-meteo-replies.ts';
import { json, weatherServer } from '../../support/weather-server.ts';
import type { Answer, WeatherServer } from '../../support/weather-server.ts';

const place = { id: 'north-station', latitude: 43.877, longitude: -116.995 };
const nowMs = Date.parse('2026-10-15T18:25Z');

let server: WeatherServer;
beforeAll(async () => {
  server = await weatherServer();
});
afterAll(() => server.close());

const fetchWith = async (
  answer: Answer,
  apiKey: string | null = null,
): Promise<WeatherResult | undefined> => {
  server.requests.length = 0;
  server.answer(() => answer);
  return openMeteo({ baseUrl: server.baseUrl, apiKey, timeoutMs: 20_000 })?.fetch(place, nowMs);
};
const fault = (status: number, reason: string): Answer => ({
  status,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify({ error: true, reason }),
});

describe('Open-Meteo', () => {
  it('is off unless it is set up', () => {
    expect(openMeteo(null)).toBeNull();
  });

  it('is asked for Unix time in GMT, whole units and its key, where there is one', async () => {
    await fetchWith(json(openMeteoReply('2026-10-15T18:00Z', [50])), 'secret');
    const query = server.requests[0]?.query;
    expect(query?.get('timeformat')).toBe('unixtime');
    expect(query?.get('timezone')).toBe('GMT');
    expect(query?.get('temperature_unit')).toBe('fahrenheit');
    expect(query?.get('apikey')).toBe('secret');
    await fetchWith(json(openMeteoReply('2026-10-15T18:00Z', [50])));
    expect(server.requests[0]?.query.has('apikey')).toBe(false);
  });

  it('gives rain as the total of the hour before its time stamp, and no alerts', async () => {
    expect(await fetchWith(json(openMeteoReply('2026-10-15T19:00Z', [50])))).toMatchObject({
      rain: [
        { fromMs: Date.parse('2026-10-15T18:00Z'), toMs: Date.parse('2026-10-15T19:00Z'), inches: 0.01 },
      ],
      freezeAlerts: null,
    });
  });

  it.each([
    ['Minutely API request limit exceeded. Please try again in one minute.', 60_000],
    ['Hourly API request limit exceeded. Please try again in the next hour.', 3_600_000],
    ['Daily API request limit exceeded. Please try again tomorrow.', 21_600_000],
    ['Too many concurrent requests', 60_000],
  ])('waits after "%s"', async (reason, retryAfterMs) => {
    expect(await fetchWith(fault(429, reason))).toEqual({
      result: 'unavailable',
      why: `429 ${reason}`,
      retryAfterMs,
    });
  });

  it('passes on why it was refused', async () => {
    expect(await fetchWith(fault(400, 'Latitude must be in range of -90 to 90°.'))).toEqual({
      result: 'refused',
      why: '400 Latitude must be in range of -90 to 90°.',
    });
  });

  it('does not take °C for °F', async () => {
    const reply = openMeteoReply('2026-10-15T18:00Z', [12]);
    const celsius = {
      ...reply,
      hourly_units: { time: 'unixtime', temperature_2m: '°C', precipitation: 'mm' },
    };
    expect(await fetchWith(json(celsius))).toMatchObject({ result: 'unavailable' });
  });

  it('is unavailable where every value is null, as past the range of the model', async () => {
    expect(await fetchWith(json(openMeteoReply('2026-10-15T18:00Z', [null, null])))).toMatchObject({
      result: 'unavailable',
      why: 'no temperatures to come',
    });
  });
});
