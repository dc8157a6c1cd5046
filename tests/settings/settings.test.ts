import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { isZone } from '../../src/run/host/zone-clock.ts';
import { loadSettings } from '../../src/settings/load.ts';
import { operationSchema } from '../../src/settings/operation-schema.ts';
import { readSettings } from '../../src/settings/settings.ts';

const SAMPLE_FILE = new URL('../../deploy/operation.yaml', import.meta.url);
const sample = readFileSync(SAMPLE_FILE, 'utf8');

const read = (fileText: string, env: Record<string, string> = {}) =>
  readSettings(env, fileText, 'farm.yaml', isZone);

const settingsOf = (...given: Parameters<typeof read>) => {
  const result = read(...given);
  if ('faults' in result) throw new Error(result.faults.join('\n'));
  return result.settings;
};

/** The sample with one piece of text replaced; fails where the piece is not there. */
const sampleWith = (piece: string, instead: string): string => {
  expect(sample).toContain(piece);
  return sample.replace(piece, instead);
};

describe('the sample operation', () => {
  test('is valid, and is what runs when nothing is set', () => {
    expect(loadSettings({}, isZone)).toEqual({
      settings: {
        roster: settingsOf(sample).roster,
        database: { embedded: '.fieldbell/data' },
        logLevel: 'info',
        health: { host: '127.0.0.1', port: 9464 },
        slack: null,
        matrix: null,
        warnings: [],
        weather: { service: 'off', why: 'no station in the operation file has a location' },
      },
    });
  });

  test('has five drivers with a truck each, one grower, one foreman, three fields and one station', () => {
    const { roster } = settingsOf(sample);
    const inRole = (role: string): string[] =>
      roster.people.filter(({ roles }) => roles.some((r) => r === role)).map(({ id }) => id);
    expect(inRole('grower')).toEqual(['ruth']);
    expect(inRole('foreman')).toEqual(['mateo']);
    expect(inRole('driver')).toEqual(['ana', 'ben', 'carla', 'dale', 'eli']);
    expect(roster.people.map(({ truck }) => truck).filter((truck) => truck !== null)).toEqual([
      '1',
      '2',
      '3',
      '4',
      '5',
    ]);
    expect(roster.people.filter(({ language }) => language === 'es').map(({ id }) => id)).toEqual([
      'mateo',
      'ana',
      'carla',
    ]);
    expect(roster.trucks.map(({ grossLimitLb }) => grossLimitLb)).toEqual([86e3, 86e3, 86e3, 80e3, 86e3]);
    expect(roster.fields.map(({ id, acres, station }) => [id, acres, station])).toEqual([
      ['north-40', 38, 'north-station'],
      ['south-80', 78, 'north-station'],
      ['creek-bottom', 31, 'north-station'],
    ]);
    expect(roster.stations).toMatchObject([{ id: 'north-station', airLimitF: 60, rootLimitF: 55 }]);
    expect(roster.rooms).toEqual([{ id: 'crew', platform: 'local', room: 'crew' }]);
  });

  test('names and explains every setting that there is', () => {
    const hasProperties = z.object({ properties: z.record(z.string(), z.unknown()) });
    const keysOf = (schema: unknown): string[] => {
      if (typeof schema !== 'object' || schema === null) return [];
      const own = Object.keys(hasProperties.safeParse(schema).data?.properties ?? {});
      return [...own, ...Object.values(schema).flatMap(keysOf)];
    };
    const keys = keysOf(z.toJSONSchema(operationSchema(isZone), { io: 'input', unrepresentable: 'any' }));
    expect(keys.length).toBeGreaterThan(40);
    const unexplained = [...new Set(keys)].filter((key) => !new RegExp(`^ *(- )?${key}:`, 'm').test(sample));
    const inComments = unexplained.filter((key) => new RegExp(`^ *# +${key}(:|  )`, 'm').test(sample));
    expect(inComments).toEqual(unexplained);
  });

  test('keeps its meaning where a comment is made a setting', () => {
    const uncommented = sample
      .replace(/# (addresses:)\n( +)# ( +local.*)\n +# ( +slack.*)\n +# ( +matrix.*)/, '$1\n$2$3\n$2$4\n$2$5')
      .replace(/# (name: Old Red)\n( +)# (aliases.*)\n +# (usual-tare.*)/, '$1\n$2$3\n$2$4')
      .replace(/# (location:)\n( +)# ( +latitude.*)\n +# ( +longitude.*)/, '$1\n$2$3\n$2$4');
    const { people, trucks, stations } = settingsOf(uncommented).roster;
    expect(people[0]?.addresses).toEqual([
      { platform: 'local', user: 'ruth' },
      { platform: 'slack', user: 'U0EXAMPLE1' },
      { platform: 'matrix', user: '@ruth:chat.example' },
    ]);
    expect(trucks[2]).toMatchObject({ name: 'Old Red', usualTareLb: { min: 28_000, max: 34_000 } });
    expect(stations[0]?.location).toEqual({ latitude: 43.615, longitude: -116.202 });
  });
});

const SMALL = `
name: Small Farm
zone: America/Boise
people:
  - name: José Núñez
    role: [grower, driver]
    truck: the red one
trucks:
  - id: 01
    aliases: [the red one]
fields:
  - name: East
stations:
  - name: River station
    zone: America/Denver
    air-limit: 15.5 C
    root-limit: 55°F
    pilers: 1
`;

describe('what may be left out', () => {
  const { roster } = settingsOf(SMALL);

  test('ids are made of the names, and references may use any name', () => {
    expect(roster.operation).toBe('small-farm');
    expect(roster.people[0]).toMatchObject({
      id: 'jose-nunez',
      truck: '01',
      addresses: [{ platform: 'local', user: 'jose-nunez' }],
    });
    expect(roster.trucks[0]).toMatchObject({ id: '01', name: 'Truck 01', grossLimitLb: null });
  });

  test('a field goes to the only station, and has the zone of the operation', () => {
    expect(roster.fields[0]).toMatchObject({ station: 'river-station', zone: 'America/Boise', acres: null });
    expect(roster.stations[0]).toMatchObject({ zone: 'America/Denver', airLimitF: 59.9, rootLimitF: 55 });
    expect(roster.limits).toEqual({ lineLimitMin: null, shortestCycleMin: 15 });
  });

  test('a weight in kilograms is kept in pounds', () => {
    // 36,287.3896 kg = 80,000 lb: 1 lb = 0.45359237 kg exactly (NIST Handbook 44, Appendix C).
    const metric = sampleWith('gross-limit: 80,000 lb', 'gross-limit: 36,287.3896 kg');
    expect(settingsOf(metric).roster.trucks[3]?.grossLimitLb).toBeCloseTo(80_000, 6);
  });
});

describe('shared tickets', () => {
  const pooled = sampleWith('pilers: 2', 'pilers: 2\n    pool: north-yard');
  const postgres = { FIELDBELL_DATABASE: 'postgres://bell@db/bell' };

  test('are shared under the name that the operations have agreed on, and else not at all', () => {
    expect(settingsOf(sample).roster.pools).toEqual({});
    expect(settingsOf(pooled, postgres)).toMatchObject({
      roster: { pools: { 'north-station': 'north-yard' } },
      warnings: [],
    });
  });

  test('in a database that nobody else can use are hardly meant', () => {
    expect(settingsOf(pooled).warnings).toEqual([expect.stringContaining('FIELDBELL_DATABASE')]);
  });
});

test('settings cannot be changed', () => {
  const { roster } = settingsOf(sample);
  expect(Object.isFrozen(roster)).toBe(true);
  expect(Object.isFrozen(roster.people[0]?.addresses[0])).toBe(true);
});

test('the environment chooses database, log level and health port', () => {
  const env = {
    FIELDBELL_DATABASE: 'postgres://bell:pass%23word@db:5432/bell',
    FIELDBELL_LOG: 'warn',
    FIELDBELL_HEALTH_HOST: '0.0.0.0',
    FIELDBELL_HEALTH_PORT: '8080',
    PATH: '/bin',
  };
  expect(settingsOf(sample, env)).toMatchObject({
    database: { url: env.FIELDBELL_DATABASE },
    logLevel: 'warn',
    health: { host: '0.0.0.0', port: 8080 },
  });
  expect(settingsOf(sample, { FIELDBELL_DATABASE: '/var/lib/bell' }).database).toEqual({
    embedded: '/var/lib/bell',
  });
  expect(settingsOf(sample, { FIELDBELL_LOG: '' }).logLevel).toBe('info');
});

describe('the weather service', () => {
  const located = sampleWith(
    '# location:\n    #   latitude: 43.615\n    #   longitude: -116.202',
    `location: {latitude: 43.877, longitude: -116.995}`,
  );
  const weatherOf = (env: Record<string, string>, file = located) => settingsOf(file, env).weather;
  const contact = { FIELDBELL_WEATHER_CONTACT: 'operator@example.org' };

  test('is the National Weather Service where a station has a location and a contact is given', () => {
    expect(settingsOf(located).roster.stations[0]?.location).toEqual({
      latitude: 43.877,
      longitude: -116.995,
    });
    expect(weatherOf(contact)).toEqual({
      service: 'nws',
      baseUrl: 'https://api.weather.gov',
      contact: 'operator@example.org',
    });
    expect(weatherOf({ ...contact, FIELDBELL_NWS_URL: 'http://127.0.0.1:8080' })).toMatchObject({
      baseUrl: 'http://127.0.0.1:8080',
    });
  });

  test('is off otherwise, and says why unless that was asked for', () => {
    expect(weatherOf({})).toEqual({ service: 'off', why: 'FIELDBELL_WEATHER_CONTACT is not set' });
    expect(weatherOf(contact, sample)).toEqual({
      service: 'off',
      why: 'no station in the operation file has a location',
    });
    expect(weatherOf({ ...contact, FIELDBELL_WEATHER: 'off' })).toEqual({ service: 'off', why: null });
  });

  // Hosts: https://open-meteo.com/en/pricing, "API access".
  test('is Open-Meteo only by name, on the host for customers where there is a key', () => {
    const openMeteo = { FIELDBELL_WEATHER: 'open-meteo' };
    expect(weatherOf(openMeteo)).toEqual({
      service: 'open-meteo',
      baseUrl: 'https://api.open-meteo.com',
      apiKey: null,
    });
    expect(weatherOf({ ...openMeteo, FIELDBELL_OPEN_METEO_KEY: 'k' })).toEqual({
      service: 'open-meteo',
      baseUrl: 'https://customer-api.open-meteo.com',
      apiKey: 'k',
    });
    expect(weatherOf({ ...openMeteo, FIELDBELL_OPEN_METEO_URL: 'http://weather.example' })).toMatchObject({
      baseUrl: 'http://weather.example',
    });
  });
});
