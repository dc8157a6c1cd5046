import { describe, expect, test } from 'vitest';
import { isZone } from '../../src/run/host/zone-clock.ts';
import { loadSettings } from '../../src/settings/load.ts';
import { readSettings } from '../../src/settings/settings.ts';

const faultsOf = (fileText: string, env: Record<string, string> = {}): string[] => {
  const result = readSettings(env, fileText, 'farm.yaml', isZone);
  return 'faults' in result ? result.faults : [];
};

const FARM = {
  head: 'name: Farm\nzone: America/Boise\n',
  people: 'people:\n  - {name: Ruth, role: grower}\n',
  trucks: 'trucks:\n  - {id: 1}\n',
  fields: 'fields:\n  - {name: East}\n',
  stations: 'stations:\n  - {name: River, air-limit: 60 F, root-limit: 55 F, pilers: 1}\n',
};
const farm = (change: Partial<typeof FARM>): string => Object.values({ ...FARM, ...change }).join('');

test('a farm without faults has none', () => {
  expect(faultsOf(farm({}))).toEqual([]);
});

test('all faults come at once, in the order of the lines, with the place, what is wrong and what to do', () => {
  const file = `name: Farm
zone: America/Boisee
people:
  - name: Ben
    role: drivr
    truck: 9
  - name: ben
    rolle: driver
trucks:
  - id: 1
    gross-limit: 86000
fields:
  - name: East
    station: Rver
stations:
  - name: River
    air-limit: 60 F
    pilers: 1
`;
  expect(faultsOf(file, { FIELDBELL_LOG: 'loud', FIELDBELL_DATBASE: 'x' })).toEqual([
    expect.stringMatching(
      /^FIELDBELL_DATBASE: is not a setting: correct it to one of FIELDBELL_OPERATION, FIELDBELL_DATABASE, .*, or unset it\.$/,
    ),
    'FIELDBELL_LOG: is not a log level: write one of trace, debug, info, warn, error, fatal, silent.',
    'farm.yaml, line 2: zone: "America/Boisee" is not an IANA time zone: write one such as America/Boise.',
    'farm.yaml, line 4: people: has no grower and no foreman, so nobody could stop the dig: add one.',
    'farm.yaml, line 5: people / Ben / role: is "drivr": write one of grower, foreman, driver, digger-operator, topper-operator.',
    'farm.yaml, line 6: people / Ben / truck: "9" is not under trucks (1): correct it, or add it there.',
    'farm.yaml, line 7: people / ben / role: is missing: add it.',
    'farm.yaml, line 7: people / ben / name: "ben" means another entry of people already: give each its own names and aliases.',
    'farm.yaml, line 8: people / ben / rolle: is not a setting here: correct it to one of name, id, role, language, truck, aliases, shift, addresses, or remove it.',
    'farm.yaml, line 11: trucks / 1 / gross-limit: "86000" cannot be read: write it as in "86,000 lb".',
    'farm.yaml, line 14: fields / East / station: "Rver" is not under stations (River): correct it, or add it there.',
    'farm.yaml, line 16: stations / River / root-limit: is missing: add it.',
  ]);
});

describe('each of these is one fault', () => {
  test.each([
    [
      'an alias that means two trucks',
      { trucks: 'trucks:\n  - {id: 1, aliases: [red]}\n  - {id: 2, aliases: [Red]}\n' },
      /line 7: trucks \/ 2 \/ aliases: "red" means another/,
    ],
    ['the same truck twice', { trucks: 'trucks:\n  - {id: 1}\n  - {id: 1}\n' }, /"1" means another/],
    [
      'two fields with the same short name',
      { fields: 'fields:\n  - {name: North 40}\n  - {name: north-40}\n' },
      /"north-40" means another/,
    ],
    [
      'one address for two people',
      {
        people:
          'people:\n  - {name: A, role: grower, addresses: {slack: U1}}\n  - {name: B, role: driver, addresses: {slack: U1}}\n',
      },
      /address of another person/,
    ],
    [
      'a chat platform that there is not',
      { people: 'people:\n  - {name: A, role: grower, addresses: {sms: 5}}\n' },
      /sms: is not a setting here/,
    ],
    [
      'nobody who may stop the dig',
      { people: 'people:\n  - {name: A, role: driver}\n' },
      /no grower and no foreman/,
    ],
    ['no people', { people: 'people: []\n' }, /people: is empty/],
    [
      'a field with a choice of stations',
      { stations: FARM.stations + FARM.stations.replace('stations:\n', '').replace('River', 'Hill') },
      /has no station, and there are several/,
    ],
    [
      'tons where pounds are meant',
      { trucks: 'trucks:\n  - {id: 1, gross-limit: 43 lb}\n' },
      /"43 lb" is not plausible/,
    ],
    ['a digit too many', { trucks: 'trucks:\n  - {id: 1, gross-limit: 860000 lb}\n' }, /not plausible/],
    ['a comma out of place', { trucks: 'trucks:\n  - id: 1\n    gross-limit: 86,00 lb\n' }, /cannot be read/],
    [
      'an empty weight above the gross limit',
      { trucks: 'trucks:\n  - id: 1\n    gross-limit: 30000 lb\n    usual-tare: 28000 lb to 34000 lb\n' },
      /not below the gross limit/,
    ],
    [
      'a range of weights that runs backwards',
      { trucks: 'trucks:\n  - id: 1\n    usual-tare: 34000 lb to 28000 lb\n' },
      /not a range of empty weights/,
    ],
    [
      'degrees Celsius taken for Fahrenheit',
      { stations: FARM.stations.replace('60 F', '15 F') },
      /"15 F" is not plausible/,
    ],
    [
      'a temperature without its unit',
      { stations: FARM.stations.replace('60 F', '60') },
      /write it as in "60 F"/,
    ],
    ['half a piler', { stations: FARM.stations.replace('pilers: 1', 'pilers: 1.5') }, /whole number/],
    [
      'the same room twice',
      {
        stations: `${FARM.stations}rooms:\n  - {id: crew, platform: local}\n  - {id: all, platform: local, room: crew}\n`,
      },
      /listed already/,
    ],
    ['a name without letters', { fields: 'fields:\n  - {name: "!"}\n' }, /add a line "id:"/],
    [
      'an id that is not a short name',
      { fields: 'fields:\n  - {name: East, id: The East}\n' },
      /not a short name/,
    ],
    ['a list that is none', { fields: 'fields: East\n' }, /fields: must be a list/],
    ['a value left empty', { trucks: 'trucks:\n  - id: 1\n    name:\n' }, /is empty: write a value/],
    [
      'the same setting twice',
      { trucks: 'trucks:\n  - id: 1\n    id: 2\n' },
      /line 7: Map keys must be unique/,
    ],
    ['a reference to an anchor that is not there', { trucks: 'trucks: *t\n' }, /Write the value out/],
  ])('%s', (_what, change, expected) => {
    const faults = faultsOf(farm(change));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(expected);
  });
});

test('a reference to an entry that has a fault of its own is no second fault', () => {
  const people = 'people:\n  - {name: Ruth, role: grower, truck: 1}\n';
  const faults = faultsOf(farm({ people, trucks: 'trucks:\n  - {id: 1, gross-limit: heavy}\n' }));
  expect(faults).toEqual([
    'farm.yaml, line 6: trucks / 1 / gross-limit: "heavy" cannot be read: write it as in "86,000 lb".',
  ]);
});

test.each(['', '# only a comment', '- a list', '5', 'a: [', '\t- x', 'a: &a [*a]'])(
  '%j is told in words, without throwing',
  (text) => {
    const faults = faultsOf(text);
    expect(faults.length).toBeGreaterThan(0);
    for (const fault of faults) expect(fault).not.toMatch(/undefined|\n|\bat .*:\d+:\d+/);
  },
);

test('a database address is checked, and its password is not repeated', () => {
  for (const url of ['mysql://bell:secret@db/bell', 'postgres://bell:sec#ret@db:port/bell']) {
    const faults = faultsOf(farm({}), { FIELDBELL_DATABASE: url });
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(/^FIELDBELL_DATABASE: is not a Postgres address/);
    expect(faults[0]).not.toMatch(/sec/);
  }
});

test.each(['70000', '-1', 'http', '80.5'])('%s is not a port', (port) => {
  expect(faultsOf(farm({}), { FIELDBELL_HEALTH_PORT: port })).toEqual([
    'FIELDBELL_HEALTH_PORT: is not a port: write a number from 1 to 65535, or 0 for any free one.',
  ]);
});

test('an operation file that is not there is told together with the faults of the environment', () => {
  expect(
    loadSettings({ FIELDBELL_OPERATION: '/no/such/farm.yaml', FIELDBELL_HEALTH_PORT: 'x' }, isZone),
  ).toEqual({
    faults: [
      'FIELDBELL_HEALTH_PORT: is not a port: write a number from 1 to 65535, or 0 for any free one.',
      'FIELDBELL_OPERATION: /no/such/farm.yaml: there is no such file. Set it to the path of your operation file.',
    ],
  });
});

describe('a weather service', () => {
  const weatherFaults = (env: Record<string, string>): string[] => faultsOf(farm({}), env);

  test('that cannot be used is told with what it lacks', () => {
    expect(weatherFaults({ FIELDBELL_WEATHER: 'nws' })).toEqual([
      expect.stringMatching(/^FIELDBELL_WEATHER: names a weather service, but no station has a location/),
      expect.stringMatching(/^FIELDBELL_WEATHER_CONTACT: is missing.*set it to your e-mail address\.$/),
    ]);
    expect(weatherFaults({ FIELDBELL_WEATHER: 'open-meteo' })).toEqual([
      expect.stringMatching(/no station has a location/),
    ]);
  });

  test.each([
    [
      { FIELDBELL_WEATHER: 'radar' },
      /^FIELDBELL_WEATHER: is not a weather service: write one of nws, open-meteo, off\.$/,
    ],
    [
      { FIELDBELL_NWS_URL: 'api.weather.gov' },
      /^FIELDBELL_NWS_URL: is not a web address: write one such as https:/,
    ],
    [{ FIELDBELL_WEATHER_CONTACT: 'a@b\r\nX: y' }, /^FIELDBELL_WEATHER_CONTACT: cannot be sent in a request/],
  ])('%j is a fault', (env, says) => {
    expect(weatherFaults(env)).toEqual([expect.stringMatching(says)]);
  });
});

test.each([
  ['work-hours: 5-22\n', []],
  ['work-hours: 0 - 24\n', []],
  ...['22-5', '5', '5-25', 'daytime'].map((said): [string, unknown[]] => [
    `work-hours: ${said}\n`,
    [expect.stringMatching(/work-hours: .*write one such as 5-22, or leave it out/)],
  ]),
])('the hours of work, %j', (line, faults) => {
  expect(faultsOf(farm({}) + line)).toEqual(faults);
});

test.each([
  ['6-18', []],
  ['18 - 6', []],
  ...['6', '6-6', '18-25', 'nights'].map((said): [string, unknown[]] => [
    said,
    [expect.stringMatching(/shift: is no shift: write the hours such as 6-18, or 18-6 for a night/)],
  ]),
])('a shift, %j', (said, faults) => {
  const people = `people:\n  - {name: Ruth, role: grower, shift: ${said}}\n`;
  expect(faultsOf(farm({ people }))).toEqual(faults);
});
