import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { WeatherSource } from '../../src/ports/weather.ts';
import { weatherServer, webPage } from '../support/weather-server.ts';
import type { Answer, WeatherServer } from '../support/weather-server.ts';

export interface ForecastService {
  name: string;
  /** A source over a service at this address that gives up after this time. */
  open: (baseUrl: string, timeoutMs: number) => WeatherSource;
  /**
   * How the service answers a forecast of these temperatures, one an hour from `startIso` on (null = no value), that it
   * issued at `issuedIso`.
   */
  forecast: (
    issuedIso: string,
    startIso: string,
    temperaturesF: readonly (number | null)[],
  ) => (request: { path: string; headers: Record<string, unknown> }) => Answer;
}

const place = { id: 'north-station', latitude: 43.877, longitude: -116.995 };
const at = (iso: string): number => Date.parse(iso);
const nowMs = at('2026-10-15T18:25Z');
/** Longer than a loopback answer takes on a busy machine; nothing waits it out. */
const PATIENT_MS = 20_000;
/** Waited out by the one service that does not answer. */
const IMPATIENT_MS = 200;

/** What holds for every forecast service. */
export const forecastContract = (service: ForecastService): void => {
  describe(`${service.name} as a forecast source`, () => {
    let server: WeatherServer;
    let source: WeatherSource;
    beforeAll(async () => {
      server = await weatherServer();
    });
    afterAll(() => server.close());
    beforeEach(() => {
      source = service.open(server.baseUrl, PATIENT_MS);
    });

    const answers = service.forecast('2026-10-15T17:20Z', '2026-10-15T16:00Z', [
      50,
      52,
      54,
      57,
      60,
      null,
      61,
    ]);

    it('gives the hours to come, in order, from the one that holds now, without those that have no value', async () => {
      server.answer(answers);
      const result = await source.fetch(place, nowMs);
      expect(result).toMatchObject({
        result: 'fresh',
        hours: [
          { startMs: at('2026-10-15T18:00Z'), temperatureF: 54 },
          { startMs: at('2026-10-15T19:00Z'), temperatureF: 57 },
          { startMs: at('2026-10-15T20:00Z'), temperatureF: 60 },
          { startMs: at('2026-10-15T22:00Z'), temperatureF: 61 },
        ],
      });
    });

    it('says that the same forecast is unchanged, and since when', async () => {
      server.answer(answers);
      const first = await source.fetch(place, nowMs);
      const second = await source.fetch(place, nowMs + 60_000);
      expect(second).toMatchObject({
        result: 'unchanged',
        issuedMs: first.result === 'fresh' ? first.issuedMs : 'not fresh',
      });
    });

    it('gives a newer forecast as fresh', async () => {
      server.answer(answers);
      const first = await source.fetch(place, nowMs);
      server.answer(service.forecast('2026-10-15T18:20Z', '2026-10-15T18:00Z', [58, 59]));
      const second = await source.fetch(place, nowMs + 60_000);
      expect(second).toMatchObject({ result: 'fresh', hours: [{ temperatureF: 58 }, { temperatureF: 59 }] });
      const issued = [first, second].map((result) => (result.result === 'fresh' ? result.issuedMs : NaN));
      expect(issued[1]).toBeGreaterThan(issued[0] ?? NaN);
    });

    it('leaves out a temperature that cannot be, and remarks on it', async () => {
      server.answer(service.forecast('2026-10-15T17:20Z', '2026-10-15T18:00Z', [54, 392, 60]));
      const result = await source.fetch(place, nowMs);
      expect(result).toMatchObject({ hours: [{ temperatureF: 54 }, { temperatureF: 60 }] });
      expect(result).toHaveProperty('remarks.0', expect.stringContaining('left out'));
    });

    it('knows what each place had: the first forecast of a place is fresh, also where two share a grid cell', async () => {
      server.answer(answers);
      await source.fetch(place, nowMs);
      const other = await source.fetch({ ...place, id: 'south-station' }, nowMs);
      expect(other.result).toBe('fresh');
    });

    const body = (text: string): Answer => ({
      status: 200,
      headers: { 'content-type': 'application/json' },
      body: text,
    });
    const failures: readonly (readonly [string, Answer, string])[] = [
      ['a refusal', webPage(403), 'refused'],
      ['a fault of ours', webPage(400), 'refused'],
      ['too many requests', webPage(429), 'unavailable'],
      ['an error of the service', webPage(500), 'unavailable'],
      ['an overload', webPage(503), 'unavailable'],
      ['a web page instead of data', webPage(200), 'unavailable'],
      ['data cut short', body('{"prop'), 'unavailable'],
      ['data of another shape', body('{}'), 'unavailable'],
      ['a connection that breaks', 'reset', 'unavailable'],
    ];
    it.each(failures)('takes %s as a value', async (_, answer, expected) => {
      server.answer(() => answer);
      const result = await source.fetch(place, nowMs);
      expect(result.result).toBe(expected);
      expect(result).toHaveProperty('why', expect.stringMatching(/\w{4}/));
      if (result.result === 'unavailable') expect(result.retryAfterMs).toBeGreaterThanOrEqual(5000);
    });

    it('gives up on a service that does not answer, after the time that was set', async () => {
      server.answer(() => 'stall');
      const result = await service.open(server.baseUrl, IMPATIENT_MS).fetch(place, nowMs);
      expect(result).toMatchObject({
        result: 'unavailable',
        why: `no complete answer within ${IMPATIENT_MS} ms`,
      });
    });

    it('takes a service that is not there as unavailable', async () => {
      const gone = await weatherServer();
      await gone.close();
      expect(await service.open(gone.baseUrl, PATIENT_MS).fetch(place, nowMs)).toMatchObject({
        result: 'unavailable',
      });
    });

    it('is well again after a fault', async () => {
      server.answer(() => webPage(500));
      await source.fetch(place, nowMs);
      server.answer(answers);
      expect(await source.fetch(place, nowMs + 60_000)).toMatchObject({ result: 'fresh' });
    });
  });
};
