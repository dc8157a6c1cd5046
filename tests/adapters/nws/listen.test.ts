import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { nws } from '../../../adapters/nws/listen.ts';
import type { WeatherSource } from '../../../src/ports/weather.ts';
import {
  GRID_PATH,
  HOURLY_PATH,
  alertFields,
  alertsReply,
  gridFields,
  gridReply,
  hourlyReply,
  period,
  pointsReply,
} from '../../support/nws-replies.ts';
import { json, problem, weatherServer, webPage } from '../../support/weather-server.ts';
import type { Answer, WeatherRequest, WeatherServer } from '../../support/weather-server.ts';

const place = { id: 'north-station', latitude: 43.877, longitude: -116.995 };
const nowMs = Date.parse('2026-10-15T18:25Z');
const HOUR_MS = 3_600_000;

const grid = (updateTime: string, celsius = 20): unknown =>
  gridReply({ updateTime, temperature: [['2026-10-15T05:00:00+00:00/P1D', celsius]] });

const hours = hourlyReply('2026-10-15T17:00:00+00:00', [
  period('2026-10-15T12:00:00-06:00', '2026-10-15T13:00:00-06:00', 64),
]);

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

/** Answers by path; points and alerts are well unless given. */
const route = (answers: Record<string, Answer | ((request: WeatherRequest) => Answer)>): void => {
  server.answer((request) => {
    const answer = answers[request.path];
    if (answer !== undefined) return typeof answer === 'function' ? answer(request) : answer;
    if (request.path.startsWith('/points/')) return json(pointsReply());
    if (request.path === '/alerts/active') return json(alertsReply());
    return problem(500, 'Unexpected Problem', 'no route');
  });
};
const paths = (): string[] => server.requests.map((request) => request.path);

describe('finding the grid', () => {
  it('names itself and the contact, and gets a web page with 403 where the service does not like it', async () => {
    server.answer(({ headers }) =>
      headers['user-agent'] === 'Fieldbell (operator@example.org)' ? webPage(403) : webPage(500),
    );
    expect(await source.fetch(place, nowMs)).toEqual({
      result: 'refused',
      why: '403: the weather service refuses us; check the contact in the settings',
    });
  });

  it('asks with at most four decimals and no trailing zeros', async () => {
    route({ [GRID_PATH]: json(grid('2026-10-15T17:20:00+00:00')) });
    await source.fetch({ id: 'a', latitude: 47.655349, longitude: -119.499044 }, nowMs);
    await source.fetch({ id: 'b', latitude: 47.65, longitude: -119 }, nowMs);
    expect(paths()).toEqual(expect.arrayContaining(['/points/47.6553,-119.499', '/points/47.65,-119']));
  });

  it('follows a redirect to a path, keeping its name, and stays on its host when a redirect names the public one', async () => {
    const moved = (location: string): Answer => ({
      status: 301,
      headers: { location, 'content-type': 'application/problem+json' },
      body: '{}',
    });
    route({
      '/points/43.877,-116.995': moved('/points/43.9,-117'),
      '/points/43.9,-117': moved('https://api.weather.gov/points/43.91,-117'),
      '/points/43.91,-117': json(pointsReply()),
      [GRID_PATH]: json(grid('2026-10-15T17:20:00+00:00')),
    });
    expect(await source.fetch(place, nowMs)).toMatchObject({ result: 'fresh', zone: 'America/Boise' });
    expect(new Set(server.requests.map((request) => request.headers['user-agent'])).size).toBe(1);
  });

  it('gives up on redirects without end', async () => {
    server.answer(() => ({ status: 301, headers: { location: '/points/43.877,-116.995' }, body: '' }));
    expect(await source.fetch(place, nowMs)).toMatchObject({ result: 'refused' });
    expect(paths()).toHaveLength(4);
  });

  it('asks for the cell once a day', async () => {
    route({ [GRID_PATH]: json(grid('2026-10-15T17:20:00+00:00')) });
    await source.fetch(place, nowMs);
    await source.fetch(place, nowMs + HOUR_MS);
    expect(paths().filter((path) => path.startsWith('/points/'))).toHaveLength(1);
    await source.fetch(place, nowMs + 24 * HOUR_MS);
    expect(paths().filter((path) => path.startsWith('/points/'))).toHaveLength(2);
  });

  it('stays with the cell of yesterday where the service cannot name one', async () => {
    route({ [GRID_PATH]: json(grid('2026-10-15T17:20:00+00:00')) });
    await source.fetch(place, nowMs);
    route({
      '/points/43.877,-116.995': webPage(502),
      [GRID_PATH]: json(
        gridReply({
          updateTime: '2026-10-16T17:20:00+00:00',
          temperature: [['2026-10-16T18:00:00+00:00/PT1H', 20]],
        }),
      ),
    });
    expect(await source.fetch(place, nowMs + 24 * HOUR_MS)).toMatchObject({ result: 'fresh' });
  });

  it('asks for the cell anew when it has moved', async () => {
    let cell = GRID_PATH;
    route({
      '/points/43.877,-116.995': () => json(pointsReply(cell)),
      [GRID_PATH]: () =>
        cell === GRID_PATH
          ? json(grid('2026-10-15T17:20:00+00:00'))
          : problem(404, 'Marine Forecast Not Supported', 'moved'),
      '/gridpoints/BOI/96,91': json(grid('2026-10-15T18:20:00+00:00')),
    });
    await source.fetch(place, nowMs);
    cell = '/gridpoints/BOI/96,91';
    expect(await source.fetch(place, nowMs + HOUR_MS)).toMatchObject({
      result: 'fresh',
      issuedMs: Date.parse('2026-10-15T18:20Z'),
    });
  });

  it('refuses a place that has no forecast, after asking twice', async () => {
    route({ [GRID_PATH]: problem(404, 'Not Found', 'no cell') });
    expect(await source.fetch(place, nowMs)).toMatchObject({ result: 'refused' });
    expect(paths().filter((path) => path === GRID_PATH)).toHaveLength(2);
  });

  it('refuses a place outside the service, with its words', async () => {
    route({
      '/points/43.877,-116.995': problem(404, 'Data Unavailable For Requested Point', 'InvalidPoint'),
    });
    expect(await source.fetch(place, nowMs)).toEqual({
      result: 'refused',
      why: '404 Data Unavailable For Requested Point: InvalidPoint',
    });
  });
});

describe('reading the grid', () => {
  it('asks conditionally with the date as it was sent, even one in the future, and takes 304 as unchanged', async () => {
    const lastModified = 'Mon, 28 Dec 2026 18:00:00 GMT';
    route({
      [GRID_PATH]: ({ headers }) =>
        headers['if-modified-since'] === lastModified
          ? { status: 304, headers: {}, body: '' }
          : json(grid('2026-10-15T17:20:00+00:00'), { 'last-modified': lastModified }),
      '/alerts/active': json(alertsReply(alertFields({}))),
    });
    await source.fetch(place, nowMs);
    expect(await source.fetch(place, nowMs + HOUR_MS)).toMatchObject({
      result: 'unchanged',
      issuedMs: Date.parse('2026-10-15T17:20Z'),
      freezeAlerts: [{ event: 'Freeze Warning' }],
    });
  });

  it('uses the hourly forecast where the grid has expired, and the grid again when it is back', async () => {
    route({
      [GRID_PATH]: problem(503, 'Forecast Grid Expired', 'issued 2026-10-13T12:17:50+00:00'),
      [HOURLY_PATH]: json(hours),
    });
    expect(await source.fetch(place, nowMs)).toMatchObject({
      result: 'fresh',
      hours: [{ temperatureF: 64 }],
    });
    route({ [GRID_PATH]: json(grid('2026-10-15T18:20:00+00:00')) });
    expect(await source.fetch(place, nowMs + HOUR_MS)).toHaveProperty('hours.0.temperatureF', 68);
  });

  it('says why where both fail, and when to ask again', async () => {
    route({
      [GRID_PATH]: problem(503, 'Forecast Grid Expired', 'issued 2026-10-13T12:17:50+00:00'),
      [HOURLY_PATH]: webPage(502),
    });
    expect(await source.fetch(place, nowMs)).toEqual({
      result: 'unavailable',
      why: '503 Forecast Grid Expired: issued 2026-10-13T12:17:50+00:00',
      retryAfterMs: 600_000,
    });
  });

  it('waits as long as it is told to', async () => {
    route({
      [GRID_PATH]: { status: 429, headers: { 'retry-after': '120' }, body: '' },
      [HOURLY_PATH]: webPage(429),
    });
    expect(await source.fetch(place, nowMs)).toMatchObject({ result: 'unavailable', retryAfterMs: 120_000 });
  });

  it('does not believe a body 25 h old, and tries another representation of it', async () => {
    const old = '2026-10-14T17:00:00+00:00';
    const ld = (updateTime: string): Answer =>
      json(gridFields({ updateTime, temperature: [['2026-10-15T18:00:00+00:00/PT2H', 20]] }));
    route({
      [GRID_PATH]: ({ headers }) =>
        headers.accept === 'application/ld+json' ? ld('2026-10-15T17:20:00+00:00') : json(grid(old)),
    });
    expect(await source.fetch(place, nowMs)).toMatchObject({
      result: 'fresh',
      hours: [{ temperatureF: 68 }, { temperatureF: 68 }],
    });
    route({
      [GRID_PATH]: ({ headers }) => (headers.accept === 'application/ld+json' ? ld(old) : json(grid(old))),
    });
    expect(await source.fetch({ ...place, id: 'other' }, nowMs)).toMatchObject({
      result: 'unavailable',
      why: 'the forecast is 25 h old',
    });
  });

  it('does not go back to an earlier forecast that a lagging server holds', async () => {
    route({ [GRID_PATH]: json(grid('2026-10-15T17:20:00+00:00')) });
    await source.fetch(place, nowMs);
    route({ [GRID_PATH]: json(grid('2026-10-15T05:20:00+00:00', 30)) });
    expect(await source.fetch(place, nowMs + HOUR_MS)).toMatchObject({
      result: 'unchanged',
      issuedMs: Date.parse('2026-10-15T17:20Z'),
    });
  });

  it('gives no "unchanged" once the forecast it held is too old, but asks for it whole', async () => {
    route({ [GRID_PATH]: json(grid('2026-10-15T17:20:00+00:00'), { 'last-modified': 'yesterday' }) });
    await source.fetch(place, nowMs);
    route({
      [GRID_PATH]: ({ headers }) =>
        headers['if-modified-since'] === undefined ? webPage(500) : { status: 304, headers: {}, body: '' },
    });
    expect(await source.fetch(place, nowMs + 18 * HOUR_MS)).toMatchObject({ result: 'unavailable' });
  });
});

describe('frost alerts', () => {
  it('are asked for by point and by zones, and do not stop the forecast when they fail', async () => {
    route({ [GRID_PATH]: json(grid('2026-10-15T17:20:00+00:00')), '/alerts/active': webPage(500) });
    expect(await source.fetch(place, nowMs)).toMatchObject({ result: 'fresh', freezeAlerts: null });
    const asked = server.requests
      .filter((request) => request.path === '/alerts/active')
      .map(({ query }) => query.toString());
    expect(asked.map(decodeURIComponent).sort()).toEqual(['point=43.877,-116.995', 'zone=ORZ064,ORC045']);
  });
});
