import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readFileSync } from 'node:fs';
import { describe, expect, onTestFinished, test } from 'vitest';
import { startFieldbell } from '../support/fieldbell.ts';
import { GRID_PATH, alertsReply, gridReply, pointsReply } from '../support/nws-replies.ts';
import { temporaryDirectory } from '../support/temporary.ts';
import { json, problem, weatherServer } from '../support/weather-server.ts';

const HOUR_MS = 3_600_000;
const SAMPLE = readFileSync(new URL('../../deploy/operation.yaml', import.meta.url), 'utf8');

/** Issued an hour ago, far above the limit of the station for three days: whatever the time of the test, tomorrow stops. */
const hotGrid = (): unknown => {
  const startMs = Math.floor(Date.now() / HOUR_MS) * HOUR_MS;
  const start = new Date(startMs).toISOString().replace('.000Z', '+00:00');
  return gridReply({
    updateTime: new Date(startMs - HOUR_MS).toISOString(),
    temperature: [[`${start}/P3D`, 40]],
  });
};

const settingsFor = (more: Readonly<Record<string, string>>) => {
  const directory = temporaryDirectory();
  const operation = join(directory, 'farm.yaml');
  const location = /# location:\n.*\n.*\n/;
  expect(SAMPLE).toMatch(location);
  writeFileSync(operation, SAMPLE.replace(location, 'location: {latitude: 43.877, longitude: -116.995}\n'));
  return {
    FIELDBELL_DATABASE: join(directory, 'data'),
    FIELDBELL_HEALTH_PORT: '0',
    FIELDBELL_OPERATION: operation,
    ...more,
  };
};

// Each start opens the database, which takes seconds, on a busy machine many.
describe('the bot on its own', { timeout: 240_000 }, () => {
  test('asks the weather service of its settings, and ends with its input', async () => {
    const server = await weatherServer();
    onTestFinished(() => server.close());
    const asked = Promise.withResolvers<undefined>();
    server.answer(({ path }) => {
      if (path.startsWith('/points/')) return json(pointsReply());
      if (path.startsWith('/alerts/')) return json(alertsReply());
      if (path !== GRID_PATH) {
        asked.resolve(undefined);
        return problem(404, 'Not Found', path);
      }
      return json(hotGrid());
    });
    const bot = startFieldbell(
      [],
      settingsFor({ FIELDBELL_NWS_URL: server.baseUrl, FIELDBELL_WEATHER_CONTACT: 'operator@example.org' }),
    );
    // Measurements are asked for once the forecast is in the book.
    await asked.promise;
    bot.type('/as ruth', '/dm', 'tomorrow?');
    const shown = await bot.shows('Picture: Tomorrow');
    expect(shown).toContain('Tomorrow, North station: too warm to dig in the morning.');
    expect(server.requests[0]?.headers['user-agent']).toContain('operator@example.org');
    expect((await bot.end()).code).toBe(0);
  });

  test('takes recorded replies in place of the service', async () => {
    const folder = join(temporaryDirectory(), 'recorded');
    mkdirSync(folder);
    writeFileSync(join(folder, 'north-station.json'), JSON.stringify(hotGrid()));
    const bot = startFieldbell(['--forecast', folder], settingsFor({}));
    bot.type('/as ruth', '/dm');
    for (let turn = 0; turn < 100; turn += 1) {
      bot.type('tomorrow?', `/mark${turn}`);
      if ((await bot.shows(`/mark${turn} is not understood`)).includes('Picture: Tomorrow')) break;
    }
    expect((await bot.end()).out).toContain('Tomorrow, North station: too warm to dig in the morning.');
  });
});
