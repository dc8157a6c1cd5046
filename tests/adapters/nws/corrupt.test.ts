/** Replies that are corrupt, or ask for too much: each costs what is wrong with it, and no more. */
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { readAlerts } from '../../../adapters/nws/alerts.ts';
import { waitAsked } from '../../../adapters/nws/failure.ts';
import { parseInterval } from '../../../adapters/nws/interval.ts';
import { nws } from '../../../adapters/nws/listen.ts';
import { parseGrid, parseHourly } from '../../../adapters/nws/parse.ts';
import { keptForecast } from '../../../src/core/weather/kept-forecast.ts';
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
import { json, webPage, weatherServer } from '../../support/weather-server.ts';
import type { Answer, WeatherServer } from '../../support/weather-server.ts';

const place = { id: 'north-station', latitude: 43.877, longitude: -116.995 };
const nowMs = Date.parse('2026-10-15T18:25Z');
const HOUR_MS = 3_600_000;
const day = ['2026-10-15T05:00:00+00:00/P1D', 20] as const;

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
const service = (grid: Answer, alerts: unknown = alertsReply()): void => {
  server.answer(({ path }) => {
    if (path.startsWith('/points/')) return json(pointsReply());
    return path === GRID_PATH ? grid : path === '/alerts/active' ? json(alerts) : webPage(404);
  });
};

describe('a forecast of the future', () => {
  it.each([
    ['2026-10-15T18:40:00+00:00', 'fresh'],
    ['2026-10-15T18:41:00+00:00', 'unavailable'],
    ['2026-10-17T18:25:00+00:00', 'unavailable'],
  ])('issued at %s is %s', async (updateTime, result) => {
    service(json(gridReply({ updateTime, temperature: [day] })));
    expect(await source.fetch(place, nowMs)).toMatchObject({ result });
  });
});

describe('the wait that is asked for', () => {
  const headers = (retryAfter: string): Headers =>
    new Headers({ 'retry-after': retryAfter, date: 'Thu, 15 Oct 2026 18:25:00 GMT' });

  // Both forms: RFC 9110, 10.2.3.
  it.each([
    ['120', 120_000],
    ['Thu, 15 Oct 2026 20:25:00 GMT', 2 * HOUR_MS],
    ['Thu, 15 Oct 2026 17:00:00 GMT', 0],
    ['1000000000', 6 * HOUR_MS],
    ['Fri, 15 Oct 2027 18:25:00 GMT', 6 * HOUR_MS],
    ['soon', 0],
  ])('%s is %d ms', (retryAfter, ms) => {
    expect(waitAsked(headers(retryAfter))).toBe(ms);
  });

  it('is kept: after "too many requests" nothing else is asked', async () => {
    service({ status: 429, headers: { 'retry-after': '1000000000' }, body: '' });
    expect(await source.fetch(place, nowMs)).toMatchObject({
      result: 'unavailable',
      retryAfterMs: 6 * HOUR_MS,
    });
    expect(server.requests.map(({ path }) => path)).not.toContain(HOURLY_PATH);
  });
});

describe('a body of 100 MB', () => {
  it('is not read to its end', async () => {
    service({
      status: 200,
      headers: { 'content-type': 'application/geo+json' },
      body: `{"properties":"${'x'.repeat(100 * 2 ** 20)}"}`,
    });
    expect(await source.fetch(place, nowMs)).toMatchObject({
      result: 'unavailable',
      why: 'the answer is longer than 5 MB',
    });
  });
});

describe('an interval of years', () => {
  it.each(['P999999999D', 'P36500D', 'P17D'])('%s is none', (duration) => {
    expect(parseInterval(`2026-10-15T05:00:00+00:00/${duration}`, nowMs)).toBeNull();
  });

  it('costs that value, and a line in the log', () => {
    const reading = parseGrid(
      gridReply({
        updateTime: '2026-10-15T17:20:00+00:00',
        temperature: [day, ['2026-10-16T05:00:00+00:00/P999999999D', 20]],
      }),
      nowMs,
    );
    expect(reading).toMatchObject({
      read: { remarks: [expect.stringMatching(/time that cannot be read: .*P999999999D/)] },
    });
  });
});

describe('a value that is none', () => {
  it('costs itself, in the grid and in the hourly forecast', () => {
    const fields = gridFields({ updateTime: '2026-10-15T17:20:00+00:00', temperature: [day] });
    const temperature = {
      uom: 'wmoUnit:degC',
      values: [
        { validTime: day[0], value: 20 },
        { validTime: '2026-10-16T05:00:00+00:00/PT1H', value: 'warm' },
        null,
      ],
    };
    const grid = parseGrid({ properties: { ...fields, temperature } }, nowMs);
    expect(grid).toMatchObject({ read: { hours: { length: 11 } } });
    expect('read' in grid ? grid.read.remarks.length : 0).toBeGreaterThan(0);
    const hourly = hourlyReply('2026-10-15T17:00:00+00:00', [
      period('2026-10-15T12:00:00-06:00', '2026-10-15T13:00:00-06:00', 64),
      { startTime: 7 },
    ]);
    expect(parseHourly(hourly, nowMs)).toMatchObject({
      read: { hours: [{ temperatureF: 64 }], remarks: ['a period cannot be read: left out'] },
    });
  });
});

describe('an alert that cannot be read', () => {
  it('costs itself alone, and a line in the log', async () => {
    const good = alertFields({});
    const odd = [
      { ...good, id: undefined },
      { ...good, id: 'b', references: 'none', onset: 7 },
    ];
    const body = {
      features: [{ properties: good }, { properties: null }, ...odd.map((properties) => ({ properties }))],
    };
    const { alerts, remarks } = readAlerts([body], nowMs);
    expect(alerts).toMatchObject([{ id: good['id'] }, { id: 'b', onsetMs: null }]);
    expect(remarks).toEqual(['2 alerts cannot be read: left out']);
    service(json(gridReply({ updateTime: '2026-10-15T17:20:00+00:00', temperature: [day] })), body);
    // Asked for the point and for its zone, so each fault comes twice.
    expect(await source.fetch(place, nowMs)).toMatchObject({
      freezeAlerts: [{ id: good['id'] }, { id: 'b' }],
      remarks: ['4 alerts cannot be read: left out'],
    });
  });
});

describe('a reply of many thousand values', () => {
  it('takes no more than a moment', () => {
    const at = (hour: number): string =>
      new Date(nowMs + hour * HOUR_MS).toISOString().replace(/\.\d+Z/, '+00:00');
    const values = Array.from({ length: 20_000 }, (_, n) => [`${at(n % 300)}/P7D`, 20] as const);
    const begunMs = performance.now();
    const reading = parseGrid(
      gridReply({
        updateTime: '2026-10-15T17:20:00+00:00',
        temperature: values,
        maxTemperature: values,
        rain: values,
      }),
      nowMs,
    );
    if ('faulty' in reading) throw new Error(reading.faulty);
    keptForecast(reading.read, nowMs);
    // 12 s of a blocked bot before; generous, for a busy machine.
    expect(performance.now() - begunMs).toBeLessThan(3_000);
  });
});
