import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordedNws } from '../../../adapters/nws/recorded.ts';
import { alertFields, alertsReply, gridReply, hourlyReply, period } from '../../support/nws-replies.ts';

const place = { id: 'north-station', latitude: 0, longitude: 0 };
const nowMs = Date.parse('2026-10-15T18:25Z');
const grid = (updateTime: string): unknown =>
  gridReply({ updateTime, temperature: [['2026-10-15T18:00:00+00:00/PT1H', 20]] });

describe('recorded replies', () => {
  let folder: string;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'fieldbell-forecast-'));
  });
  afterAll(() => rm(folder, { recursive: true }));
  const record = (name: string, body: unknown): Promise<void> =>
    writeFile(join(folder, name), JSON.stringify(body));

  it('are read as the service would be, and again when the file is newer', async () => {
    const source = recordedNws(folder);
    await record('north-station.json', grid('2026-10-15T17:20:00+00:00'));
    expect(await source.fetch(place, nowMs)).toMatchObject({
      result: 'fresh',
      hours: [{ temperatureF: 68 }],
      freezeAlerts: null,
    });
    await record('north-station.alerts.json', alertsReply(alertFields({})));
    expect(await source.fetch(place, nowMs)).toMatchObject({ result: 'unchanged', freezeAlerts: [{}] });
    await record('north-station.json', grid('2026-10-15T18:20:00+00:00'));
    expect(await source.fetch(place, nowMs)).toMatchObject({ result: 'fresh' });
  });

  it('may be hourly', async () => {
    const body = hourlyReply('2026-10-15T17:20:00+00:00', [
      period('2026-10-15T12:00:00-06:00', '2026-10-15T13:00:00-06:00', 64),
    ]);
    await record('hourly.json', body);
    expect(await recordedNws(folder).fetch({ ...place, id: 'hourly' }, nowMs)).toMatchObject({
      hours: [{ temperatureF: 64 }],
    });
  });

  it('are refused where there is no file, or none that can be used', async () => {
    expect(await recordedNws(folder).fetch({ ...place, id: 'nowhere' }, nowMs)).toMatchObject({
      result: 'refused',
    });
    await record('odd.json', { properties: {} });
    expect(await recordedNws(folder).fetch({ ...place, id: 'odd' }, nowMs)).toMatchObject({
      result: 'refused',
    });
  });
});
