/** Two stations with weather of their own: every notice and every answer says for which one it is. */
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Roster } from '../../src/core/roster.ts';
import { openDatabase } from '../../src/store/database.ts';
import type { Database } from '../../src/store/database.ts';
import { crewOn } from '../support/crew.ts';
import type { Crew } from '../support/crew.ts';
import { sampleRoster } from '../support/roster.ts';

let database: Database;
let crew: Crew;
beforeAll(async () => {
  database = await openDatabase({ memory: true });
});
afterAll(() => database.close());

const NORTH = 'north-station';
const WEST = 'west-station';
const [north] = sampleRoster.stations;
const [field] = sampleRoster.fields;
if (!north || !field) throw new Error('the sample has a station and a field');
const roster = (): Roster => ({
  ...sampleRoster,
  operation: `two-${crypto.randomUUID()}`,
  stations: [north, { ...north, id: WEST, name: 'West station', aliases: ['west'] }],
  fields: [...sampleRoster.fields, { ...field, id: 'west-80', name: 'West 80', aliases: [], station: WEST }],
});
beforeEach(async () => {
  crew = await crewOn(database, { roster: roster() });
});

/** Hourly from 04:00: passes 60 °F at 12:30, 70 at 16:00, down to 55 at 19:00. */
const WARM = [36, 36, 37, 39, 43, 47, 51, 55, 58, 62, 66, 68, 70, 66, 61, 55, 50, 47, 45, 43];
const COOL = WARM.map((temperatureF) => Math.min(temperatureF, 52));
/** Hourly from 18:00 the evening before: 24 °F at 02:00, above freezing at 08:00, and the warm day after it. */
const FROST_THEN_WARM = [
  46, 42, 38, 35, 32, 29, 27, 25, 23, 22, 22, 22, 24, 28, 34, 43, 50, 56, 62, 66, 68, 70, 66, 61,
];

/** The notices in the room. */
const inRoom = (): string[] =>
  crew.delivered
    .filter(({ kind, recipient }) => kind === 'notice' && 'room' in recipient)
    .map(({ said }) => said.text);
const asked = async (clock: string): Promise<string> =>
  (await crew.say('ben', null, 'can we dig', clock))[0] ?? '';

test('each stop names its station, in the notice, the reminder and the list of names', async () => {
  await crew.forecast(NORTH, '05:00', '04:00', COOL);
  await crew.forecast(WEST, '05:00', '04:00', WARM);
  expect(inRoom()[0]).toMatch(/^HEAT STOP for West station: stop topping at 10:40 AM/);
  await crew.passTo('11:00');
  expect(crew.heardBy('mateo')[0]).toMatch(/^PARO POR CALOR para West station: paren de deshojar/);
  const said = crew.delivered.filter(({ kind }) => kind === 'reminder' || kind === 'unseen');
  expect(said.length).toBeGreaterThan(0);
  expect(said.every(({ said: { text } }) => text.includes('West station'))).toBe(true);
});

describe('a frost hold that is ended while a heat stop stands', () => {
  beforeEach(async () => {
    await crew.forecast(NORTH, '2026-10-19 18:00', '2026-10-19 18:00', FROST_THEN_WARM);
    await crew.forecast(WEST, '2026-10-19 18:00', '2026-10-19 18:00', FROST_THEN_WARM);
    await crew.passTo('08:00');
    await crew.say('ruth', 'crew', 'crowns ok at north 40', '08:30');
  });

  test('is the end of that hold alone: what still holds is named', () => {
    const told = inRoom().at(-1);
    expect(told).toMatch(/^ALL-CLEAR for North station: frost hold over, dig again now\./);
    expect(told).toMatch(/\nStill on: FROST HOLD for West station: stopped since 1:30 AM\./);
    expect(told).toMatch(/\nStill on: HEAT STOP for North station: stop topping at .*, stop digging at /);
    expect(crew.heardBy('mateo').at(-1)).toMatch(
      /^YA SE PUEDE para North station: se acabó el paro por helada/,
    );
  });

  test('does not let "can we dig" or the board forget the others', async () => {
    const may = await asked('08:35');
    expect(may).toMatch(/^Not everywhere\. FROST HOLD for West station: stopped since 1:30 AM\./);
    expect(may).toMatch(/\nHEAT STOP for North station: stop topping at/);
    const [board] = await crew.say('ruth', null, 'where is everybody', '08:36');
    expect(board).toContain('FROST HOLD for West station: stopped since 1:30 AM.');
  });

  test('says crowns of a field of that station must be cut', async () => {
    expect(await asked('08:35')).toContain('"crowns ok at West 80"');
    await crew.passTo('08:59');
    await crew.say('ruth', 'crew', 'crowns ok at west 80', '09:00');
    expect(inRoom().at(-1)).toMatch(/^ALL-CLEAR for West station: frost hold over/);
  });
});

test('two stops in force are both told to whoever asks', async () => {
  await crew.forecast(NORTH, '05:00', '04:00', WARM);
  await crew.forecast(WEST, '05:00', '04:00', WARM);
  const may = await asked('13:00');
  expect(may).toMatch(/^No\. HEAT STOP for .*: stopped since 11:10 AM\./);
  expect(may.match(/stopped since 11:10 AM/g)).toHaveLength(2);
});

test('an all-clear where another stop of that station holds does not say "dig again"', async () => {
  await crew.forecast(NORTH, '05:00', '04:00', WARM);
  await crew.say('ruth', null, 'stop digging, mud', '12:00');
  await crew.say('ruth', null, 'north station is open', '13:30');
  const told = inRoom().at(-1);
  expect(told).toMatch(/^HEAT STOP for North station is over, but DO NOT DIG yet\./);
  expect(told).toMatch(/\nStill on: MUD HOLD: stopped since 12:00 PM\./);
});
