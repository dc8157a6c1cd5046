/** A day on which no forecast comes: grower and foreman hear of it, once a day, and when it is back. */
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { nws } from '../../../adapters/nws/listen.ts';
import { watchForecasts } from '../../../src/run/time/forecast-watch.ts';
import { pollWeather } from '../../../src/run/time/poll-weather.ts';
import { openDatabase } from '../../../src/store/database.ts';
import type { Database } from '../../../src/store/database.ts';
import { at, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import {
  GRID_PATH,
  STATIONS_PATH,
  alertsReply,
  gridReply,
  observationReply,
  pointsReply,
  stationsReply,
} from '../../support/nws-replies.ts';
import { sampleRoster } from '../../support/roster.ts';
import { json, problem, weatherServer } from '../../support/weather-server.ts';
import type { Answer, WeatherServer } from '../../support/weather-server.ts';

const NORTH = 'north-station';

let server: WeatherServer;
let database: Database;
let crew: Crew;
let nowMs: number;
let polling: ReturnType<typeof pollWeather>;
beforeAll(async () => {
  [server, database] = await Promise.all([weatherServer(), openDatabase({ memory: true })]);
});
afterAll(async () => {
  await server.close();
  await database.close();
});
const start = (): void => {
  const source = nws({ baseUrl: server.baseUrl, contact: 'operator@example.org', timeoutMs: 20_000 });
  polling = pollWeather(source, crew.bot, () => nowMs);
};
beforeEach(async () => {
  const stations = sampleRoster.stations.map((station) => ({
    ...station,
    location: { latitude: 43.877, longitude: -116.995 },
  }));
  crew = await crewOn(database, {
    roster: { ...sampleRoster, operation: `gap-${crypto.randomUUID()}`, stations },
  });
  start();
});

const grid = (issued: string): Answer =>
  json(
    gridReply({
      updateTime: new Date(at(issued)).toISOString(),
      temperature: [[`${new Date(at(issued)).toISOString().replace('.000Z', '+00:00')}/P4D`, 8]],
    }),
  );
const service = (answer: Answer): void => {
  server.answer(({ path }) => {
    if (path.startsWith('/points/')) return json(pointsReply());
    if (path.startsWith('/alerts/')) return json(alertsReply());
    return path === GRID_PATH ? answer : problem(503, 'Unavailable', path);
  });
};
/** Polls every ten minutes from one time to the other. */
const passTo = async (clock: string): Promise<string[]> => {
  const before = crew.delivered.length;
  for (; nowMs <= at(clock); nowMs += 600_000) await polling.poll();
  await crew.deliverAll(clock);
  return crew.delivered.slice(before).map(({ said }) => said.text);
};
const down = problem(503, 'Unavailable', 'maintenance');

describe('a service that never answers', () => {
  test('is told to grower and foreman within three hours, each in their language, once a day', async () => {
    service(down);
    nowMs = at('09:50');
    expect(await passTo('11:40')).toEqual([]);
    expect(await passTo('12:50')).toEqual([
      expect.stringMatching(
        /^NO FORECAST for North station, so I cannot warn of heat or frost there\. .*503/,
      ),
      expect.stringMatching(/^SIN PRONÓSTICO para North station: no puedo avisar/),
    ]);
    expect(await passTo('2026-10-21 04:50')).toEqual([]);
    expect(await passTo('2026-10-21 05:20')).toHaveLength(2);
    expect(await passTo('2026-10-21 23:50')).toEqual([]);
    expect(await passTo('2026-10-22 05:20')).toHaveLength(2);
  });

  test('in the night is told in the morning', async () => {
    service(down);
    nowMs = at('2026-10-19 23:00');
    expect(await passTo('04:50')).toEqual([]);
    expect(await passTo('05:10')).toHaveLength(2);
  });
});

test.each([
  ['falls silent', () => down, /since 9:50 AM.*503/],
  ['sends rubbish', () => json({ properties: { updateTime: 'soon' } }), /since 9:50 AM/],
  ['sends what is two days old', () => grid('2026-10-18 06:00'), /since 9:50 AM.* h old/],
])('a service that %s is told of, and so is its return', async (_, answer, told) => {
  service(grid('09:30'));
  nowMs = at('09:50');
  await polling.poll();
  expect(await crew.deliverAll('09:50')).toEqual([]);
  nowMs = at('10:00');
  service(answer());
  expect((await passTo('12:50')).filter((text) => text.startsWith('NO'))).toEqual([
    expect.stringMatching(told),
  ]);
  service(grid('12:55'));
  nowMs = at('13:00');
  expect(await passTo('14:20')).toEqual([
    'The forecast for North station is back. I warn of heat and frost again.',
    'Ya hay pronóstico otra vez para North station. Vuelvo a avisar de calor y de helada.',
  ]);
});

test('a refusal is told at once, and again each morning; another start on the same day says nothing more', async () => {
  service({ status: 403, headers: { 'content-type': 'text/html' }, body: '<html></html>' });
  nowMs = at('10:00');
  expect(await passTo('10:00')).toHaveLength(2);
  start();
  expect(await passTo('22:00')).toEqual([]);
  expect(await passTo('2026-10-21 06:00')).toHaveLength(2);
});

test('settings that give no forecast are told of every day', async () => {
  const supply = { by: 'nobody', startedMs: at('09:50') } as const;
  const look = async (clock: string): Promise<string[]> => {
    await watchForecasts(crew.bot, () => supply, at(clock));
    return crew.deliverAll(clock);
  };
  expect(await look('11:49')).toEqual([]);
  expect(await look('12:50')).toEqual([
    expect.stringMatching(/No weather service is set up for that station: look at the settings/),
    expect.stringMatching(/No hay servicio del clima para esa estación/),
  ]);
  expect(await look('18:00')).toEqual([]);
  expect(await look('2026-10-21 05:00')).toHaveLength(2);
});

test('forecasts of a file are missed once the newest is older than 18 hours', async () => {
  const look = async (clock: string): Promise<string[]> => {
    await watchForecasts(crew.bot, () => ({ by: 'file' }), at(clock));
    return crew.deliverAll(clock);
  };
  const cool = Array.from({ length: 48 }, () => 45);
  await crew.forecast(NORTH, '2026-10-19 14:00', '2026-10-19 14:00', cool);
  expect(await look('08:00')).toEqual([]);
  expect((await look('08:10'))[0]).toMatch(/since 2:00 PM on 10\/19.*too old/);
  await crew.forecast(NORTH, '09:00', '09:00', cool);
  expect((await look('09:00'))[0]).toMatch(/is back/);
});

describe('"can we dig" without a forecast', () => {
  const asked = (clock: string): Promise<string[]> => crew.say('ben', null, 'can we dig', clock);

  test('is no plain yes, in either language', async () => {
    expect(await asked('10:00')).toEqual([
      "Nobody has stopped it, but I have no forecast: foreman and grower decide. The station's own word goes before mine.",
    ]);
    expect((await crew.say('ana', null, '¿se puede sacar?', '10:01'))[0]).toMatch(
      /^Nadie la ha parado, pero no tengo pronóstico: deciden el mayordomo y el dueño\./,
    );
  });

  test('says since when it is missing, until it is back', async () => {
    service(grid('09:30'));
    nowMs = at('09:50');
    await polling.poll();
    expect((await asked('09:55'))[0]).toMatch(/^Yes: nothing stops the dig/);
    service(down);
    nowMs = at('10:00');
    await passTo('12:50');
    expect((await asked('12:55'))[0]).toMatch(
      /^Nobody has stopped it, but I have no forecast since 9:50 AM:/,
    );
    service(grid('12:58'));
    nowMs = at('13:00');
    await passTo('14:20');
    expect((await asked('14:25'))[0]).toMatch(/^Yes: nothing stops the dig/);
  });

  test('names the station where there are several', async () => {
    const [north] = sampleRoster.stations;
    if (!north) throw new Error('the sample has a station');
    const stations = [north, { ...north, id: 'west', name: 'West station' }];
    crew = await crewOn(database, {
      roster: { ...sampleRoster, operation: `gap-${crypto.randomUUID()}`, stations },
    });
    await crew.forecast(
      NORTH,
      '09:50',
      '09:00',
      Array.from({ length: 40 }, () => 45),
    );
    expect((await asked('10:00'))[0]).toMatch(/no forecast for West station: foreman and grower decide/);
  });
});

test('without any forecast, a root above its limit stops the dig all the same', async () => {
  const limitF = sampleRoster.stations[0]?.rootLimitF ?? 0;
  await crew.say('mateo', 'crew', `root ${limitF + 3} at north 40`, '13:00');
  expect(crew.heardIn('crew')).toContainEqual(expect.stringMatching(/^HEAT STOP/));
  expect((await crew.say('ben', null, 'can we dig', '13:05'))[0]).toMatch(/^No\. HEAT STOP/);
});

test('air measured at 68 °F stops the dig, whatever the forecast says and even where none comes', async () => {
  server.answer(({ path }) => {
    if (path.startsWith('/points/')) return json(pointsReply());
    if (path === STATIONS_PATH) return json(stationsReply('KONO'));
    if (path.startsWith('/stations/')) return json(observationReply('2026-10-20T19:53:00+00:00', 20));
    return down;
  });
  nowMs = at('14:10');
  await polling.poll();
  await crew.deliverAll('14:10');
  expect(crew.heardIn('crew')[0]).toMatch(
    /^HEAT STOP for North station: stop topping NOW, stop digging NOW\.\nWhy: air measured at 68 °F at 1:53 PM, limit 60 °F\./,
  );
  expect(crew.heardBy('mateo')[0]).toContain('Por qué: aire medido a 68 °F a la 1:53 p.m., límite 60 °F.');
});
