import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { nws } from '../../../adapters/nws/listen.ts';
import type { WeatherSource } from '../../../src/ports/weather.ts';
import {
  GRID_PATH,
  STATIONS_PATH,
  observationReply,
  pointsReply,
  stationsReply,
} from '../../support/nws-replies.ts';
import { json, problem, weatherServer, webPage } from '../../support/weather-server.ts';
import type { Answer, WeatherServer } from '../../support/weather-server.ts';

const place = { id: 'north-station', latitude: 43.877, longitude: -116.995 };
const nowMs = Date.parse('2026-10-15T18:25Z');
const RECENT = '2026-10-15T17:56:00+00:00';

let server: WeatherServer;
let source: WeatherSource;
beforeAll(async () => {
  server = await weatherServer();
});
afterAll(() => server.close());
beforeEach(() => {
  server.requests.length = 0;
  source = nws({ baseUrl: server.baseUrl, contact: 'operator@example.org', timeoutMs: 20_000 });
});

/** Stations near the place, and what each answers when asked for its latest observation. */
const answer = (observations: Readonly<Record<string, Answer>>): void => {
  server.answer(({ path }) => {
    if (path.startsWith('/points/')) return json(pointsReply());
    if (path === STATIONS_PATH) return json(stationsReply(...Object.keys(observations)));
    const id = /^\/stations\/(\w+)\/observations\/latest$/.exec(path)?.[1] ?? '';
    return observations[id] ?? problem(404, 'Not Found', path);
  });
};
const asked = (): string[] => server.requests.map(({ path }) => path);

describe('the air as it was measured', () => {
  it('is that of the nearest station', async () => {
    answer({ KONO: json(observationReply(RECENT, 20)), KBOI: json(observationReply(RECENT, 25)) });
    expect(await source.observe(place, nowMs)).toEqual({ atMs: Date.parse(RECENT), temperatureF: 68 });
    expect(asked()).toEqual(['/points/43.877,-116.995', STATIONS_PATH, '/stations/KONO/observations/latest']);
  });

  // As in the recordings of weather.gov itself: the first station invalid, the second valid.
  it.each<[string, Answer]>([
    ['measured nothing', json(observationReply(RECENT, null, { qualityControl: 'Z' }))],
    ['is silent since two hours', json(observationReply('2026-10-15T16:20:00+00:00', 20))],
    ['is ahead of the clock', json(observationReply('2026-10-15T19:00:00+00:00', 20))],
    ['measured what cannot be', json(observationReply(RECENT, 200))],
    ['is doubted by quality control', json(observationReply(RECENT, 20, { qualityControl: 'X' }))],
    ['has another unit', json(observationReply(RECENT, 20, { unitCode: 'wmoUnit:K' }))],
    ['has an error', problem(500, 'Unexpected Problem', 'later')],
    ['is blocked', webPage(200)],
  ])('is that of the next station where the nearest one %s', async (_, nearest) => {
    answer({ KONO: nearest, KBOI: json(observationReply(RECENT, 25, { unitCode: 'unit:degC' })) });
    expect(await source.observe(place, nowMs)).toEqual({ atMs: Date.parse(RECENT), temperatureF: 77 });
  });

  it('is not known where three stations have none, nor where there is no list', async () => {
    const none = json(observationReply(RECENT, null));
    answer({ A: none, B: none, C: none, D: json(observationReply(RECENT, 20)) });
    expect(await source.observe(place, nowMs)).toBeNull();
    expect(asked()).not.toContain('/stations/D/observations/latest');
    server.answer(({ path }) => (path.startsWith('/points/') ? json(pointsReply()) : webPage(403)));
    expect(await source.observe(place, nowMs)).toBeNull();
  });
});

it('a source that is closed breaks off what is under way', async () => {
  const reached = Promise.withResolvers<undefined>();
  server.answer(({ path }) => {
    if (path.startsWith('/points/')) return json(pointsReply());
    if (path === GRID_PATH) reached.resolve(undefined);
    return 'stall';
  });
  const fetching = source.fetch(place, nowMs);
  await reached.promise;
  source.close();
  const broken = await fetching;
  expect(broken.result).toBe('unavailable');
  expect(broken).toHaveProperty('why', expect.stringMatching(/no answer/));
});
