import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { nws } from '../../../adapters/nws/listen.ts';
import { pollWeather } from '../../../src/run/time/poll-weather.ts';
import { freshDatabase } from '../../support/database.ts';
import type { Database } from '../../../src/store/database.ts';
import { at, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import {
  GRID_PATH,
  STATIONS_PATH,
  alertFields,
  alertsReply,
  gridReply,
  observationReply,
  pointsReply,
  stationsReply,
} from '../../support/nws-replies.ts';
import { sampleRoster } from '../../support/roster.ts';
import { json, problem, weatherServer, webPage } from '../../support/weather-server.ts';
import type { Answer, WeatherServer } from '../../support/weather-server.ts';

const NORTH = 'north-station';
const HOUR_MS = 3_600_000;

let server: WeatherServer;
let database: Database;
let crew: Crew;
/** The clock of the poll, moved by each test. */
let nowMs: number;
let polling: ReturnType<typeof pollWeather>;
beforeAll(async () => {
  [server, database] = await Promise.all([weatherServer(), freshDatabase()]);
});
afterAll(async () => {
  await server.close();
  await database.close();
});
beforeEach(async () => {
  server.requests.length = 0;
  const stations = sampleRoster.stations.map((station) => ({
    ...station,
    location: { latitude: 43.877, longitude: -116.995 },
  }));
  crew = await crewOn(database, {
    roster: { ...sampleRoster, operation: `weather-${crypto.randomUUID()}`, stations },
  });
  const source = nws({ baseUrl: server.baseUrl, contact: 'operator@example.org', timeoutMs: 20_000 });
  polling = pollWeather(source, crew.bot, () => nowMs);
});

/** Hourly from 04:00 in Idaho for three days; passes the station's 60 °F at 12:30 each day. */
const DAY = [36, 36, 37, 39, 43, 47, 51, 55, 58, 62, 66, 68, 70, 66, 61, 55, 50, 47, 45, 43, 41, 39, 38, 37];
const HOURS = [...DAY, ...DAY, ...DAY];
const temperature = HOURS.map((f, hour) => {
  const start = new Date(at('04:00') + hour * HOUR_MS).toISOString().replace('.000Z', '+00:00');
  return [`${start}/PT1H`, (f - 32) / 1.8] as const;
});

interface Sky {
  grid: Answer;
  alerts: readonly Record<string, unknown>[];
  observed: Answer;
}
const issuedAt = (clock: string, more: Partial<Parameters<typeof gridReply>[0]> = {}): Answer =>
  json(gridReply({ updateTime: new Date(at(clock)).toISOString(), temperature, ...more }));
const service = (sky: Partial<Sky>): void => {
  server.answer(({ path }) => {
    if (path.startsWith('/points/')) return json(pointsReply());
    if (path.startsWith('/alerts/')) return json(alertsReply(...(sky.alerts ?? [])));
    if (path === STATIONS_PATH) return json(stationsReply('KONO'));
    if (path.startsWith('/stations/')) return sky.observed ?? problem(404, 'Not Found', path);
    if (path === GRID_PATH) return sky.grid ?? problem(500, 'Unexpected Problem', path);
    return problem(503, 'Unavailable', path);
  });
};

const pollAt = async (clock: string): Promise<string[]> => {
  nowMs = at(clock);
  await polling.poll();
  return crew.deliverAll(clock);
};
const asks = (): number => server.requests.filter(({ path }) => path === GRID_PATH).length;
const facts = async () => (await crew.factsSoFar()).map(({ fact }) => fact);
const forecasts = async () =>
  (await facts()).flatMap((fact) => (fact.kind === 'forecast-issued' ? [fact] : []));

describe('the weather service', () => {
  test('is asked at the start and at ten past each hour, and what it says raises the stop', async () => {
    service({ grid: issuedAt('04:20') });
    expect(await pollAt('04:50')).toEqual([]);
    // At five in the morning, not in the night.
    expect((await crew.passTo('05:00'))[0]).toMatch(/HEAT STOP|PARO POR CALOR/);
    await pollAt('05:09');
    expect(asks()).toBe(1);
    await pollAt('05:10');
    await pollAt('05:11');
    expect(asks()).toBe(2);
    expect(await forecasts()).toHaveLength(1);
  });

  test('is not asked for stations without a location', async () => {
    crew = await crewOn(database);
    polling = pollWeather(
      nws({ baseUrl: server.baseUrl, contact: 'x@example.org', timeoutMs: 20_000 }),
      crew.bot,
      () => nowMs,
    );
    await pollAt('05:00');
    expect(server.requests).toEqual([]);
  });

  test('is written with its highs, its rain and its alerts, for as long ahead as counts', async () => {
    const noon = new Date(at('12:00')).toISOString().replace('.000Z', '+00:00');
    service({
      grid: issuedAt('04:20', {
        maxTemperature: [[`${noon}/PT8H`, (73 - 32) / 1.8]],
        rain: [
          [`${noon}/PT6H`, 2.54],
          [`${new Date(at('18:00')).toISOString()}/PT6H`, 0],
          [`${new Date(at('18:00') + 6 * HOUR_MS).toISOString()}/PT6H`, 0],
        ],
      }),
      alerts: [
        alertFields({
          onset: '2026-10-21T02:00:00-06:00',
          ends: '2026-10-21T09:00:00-06:00',
          expires: '2026-10-20T20:00:00-06:00',
        }),
      ],
    });
    await pollAt('04:50');
    const [fact] = await forecasts();
    expect(fact?.hours[0]).toEqual({ startMs: at('04:00'), temperatureF: 36 });
    expect(fact?.hours).toHaveLength(61);
    expect(fact?.hours.find(({ startMs }) => startMs === at('16:00'))?.temperatureF).toBe(73);
    expect(fact?.rain).toEqual([
      { fromMs: at('12:00'), toMs: at('18:00'), inches: 0.1 },
      { fromMs: at('18:00'), toMs: at('18:00') + 12 * HOUR_MS, inches: 0 },
    ]);
    expect(fact?.freezeAlerts).toMatchObject([{ event: 'Freeze Warning' }]);
  });

  test('may issue an alert between two forecasts', async () => {
    service({ grid: issuedAt('04:20') });
    await pollAt('04:50');
    const alert = alertFields({
      onset: '2026-10-21T02:00:00-06:00',
      ends: '2026-10-21T09:00:00-06:00',
      expires: '2026-10-20T20:00:00-06:00',
    });
    service({ grid: issuedAt('04:20'), alerts: [alert] });
    await pollAt('05:10');
    await pollAt('06:10');
    expect((await forecasts()).map(({ freezeAlerts }) => freezeAlerts?.length)).toEqual([0, 1]);
  });

  test('that says the same again and again is written twice, and then every three hours', async () => {
    for (const hour of ['04', '05', '06', '07', '08', '09', '10']) {
      service({ grid: issuedAt(`${hour}:20`) });
      await pollAt(`${hour}:50`);
    }
    expect((await forecasts()).map(({ issuedMs }) => issuedMs)).toEqual(['04:20', '05:20', '08:20'].map(at));
  });

  test('has its measurements of the air written once each', async () => {
    service({ grid: issuedAt('04:20'), observed: json(observationReply('2026-10-20T10:53:00+00:00', 2)) });
    await pollAt('04:58');
    await pollAt('05:10');
    const observed = (await facts()).filter(({ kind }) => kind === 'air-observed');
    expect(observed).toMatchObject([{ place: NORTH, atMs: at('04:53'), temperatureF: 35.6, by: null }]);
  });
});

describe('a service that fails', () => {
  test('is asked again after its own wait, then twice that, up to an hour; the last forecast stands', async () => {
    service({});
    expect(await pollAt('04:50')).toEqual([]);
    // A 500 asks for a minute; then two, four ... 32, and an hour at most.
    const due = ['04:51', '04:53', '04:57', '05:05', '05:21', '05:53', '06:53', '07:53'];
    for (const [at_, clock] of due.entries()) {
      nowMs = at(clock) - 1000;
      await polling.poll();
      expect(asks()).toBe(at_ + 1);
      await pollAt(clock);
      expect(asks()).toBe(at_ + 2);
    }
    expect(crew.logged.map(({ message }) => message)).toEqual([expect.stringMatching(/^No new forecast/)]);
    expect(crew.logged[0]?.what).toHaveProperty('why', expect.stringMatching(/500/));
    service({ grid: issuedAt('08:20') });
    await pollAt('08:53');
    await pollAt('09:10');
    expect(asks()).toBe(11);
    expect(await forecasts()).toHaveLength(1);
  });

  test('with a refusal is told to grower and foreman, each in their language, once', async () => {
    server.answer(() => webPage(403));
    const told = await pollAt('04:50');
    expect(told).toHaveLength(2);
    expect(crew.heardBy('ruth')).toEqual([expect.stringMatching(/^NO FORECAST for North station, .*403/)]);
    expect(crew.heardBy('mateo')).toEqual([expect.stringMatching(/^SIN PRONÓSTICO para North station/)]);
    expect(await pollAt('05:10')).toEqual([]);
    expect(crew.logged).toHaveLength(1);
    // Another start on the same day.
    const source = nws({ baseUrl: server.baseUrl, contact: 'x@example.org', timeoutMs: 20_000 });
    polling = pollWeather(source, crew.bot, () => nowMs);
    expect(await pollAt('05:30')).toEqual([]);
  });
});

test('once closed it hears nothing more, and does not wait for an answer', async () => {
  const reached = Promise.withResolvers<undefined>();
  server.answer(() => {
    reached.resolve(undefined);
    return 'stall';
  });
  nowMs = at('04:50');
  const under = polling.poll();
  await reached.promise;
  polling.close();
  await under;
  expect(crew.logged).toEqual([]);
  nowMs = at('06:10');
  await polling.poll();
  expect(server.requests).toHaveLength(1);
});

test('another time zone at the place than in the operation file is logged, once', async () => {
  server.answer(({ path }) => {
    if (path.startsWith('/points/')) {
      const points = pointsReply() as { properties: object };
      return json({ properties: { ...points.properties, timeZone: 'America/Chicago' } });
    }
    if (path.startsWith('/alerts/')) return json(alertsReply());
    return path === GRID_PATH ? issuedAt('04:20') : problem(404, 'Not Found', path);
  });
  await pollAt('04:50');
  await pollAt('05:10');
  expect(crew.logged).toEqual([
    {
      what: { station: NORTH, zone: 'America/Boise', service: 'America/Chicago' },
      message: expect.stringMatching(/another time zone/) as string,
    },
  ]);
});

test('a source that fails beyond expectation is asked again minutes later, not every second', async () => {
  let asked = 0;
  const broken = {
    name: 'broken',
    attribution: null,
    fetch: async () => {
      asked += 1;
      throw new RangeError('Invalid array length');
    },
    observe: async () => null,
    close: () => undefined,
  };
  polling = pollWeather(broken, crew.bot, () => nowMs);
  for (let second = 0; second < 30; second += 1) {
    nowMs = at('04:50') + second * 1000;
    await polling.poll();
  }
  expect(asked).toBe(1);
});
