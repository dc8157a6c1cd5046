/** Time to act decides how loud: advice hours ahead, an order that rings from an hour before the topper must stop. */
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { openDatabase } from '../../src/store/database.ts';
import type { Database } from '../../src/store/database.ts';
import type { Claimed } from '../../src/ports/outbox.ts';
import { crewOn } from '../support/crew.ts';
import type { Crew } from '../support/crew.ts';
import { sampleRoster } from '../support/roster.ts';

let database: Database;
let crew: Crew;
beforeAll(async () => {
  database = await openDatabase({ memory: true });
});
afterAll(() => database.close());
beforeEach(async () => {
  crew = await crewOn(database);
});

const NORTH = 'north-station';
/** Hourly from 04:00: topping stops at 10:40, digging at 11:10. */
const WARM = [36, 36, 37, 39, 43, 47, 51, 55, 58, 62, 66, 68, 70, 66, 61, 55, 50, 47, 45, 43];
const COOL = WARM.map((temperatureF) => Math.min(temperatureF, 52));
const EVERYBODY = sampleRoster.people.length;

const notices = (): Claimed[] => crew.delivered.filter(({ kind }) => kind === 'notice');
const who = ({ recipient }: Claimed): string => ('room' in recipient ? 'room' : recipient.person);
const ringing = (): string[] =>
  notices()
    .filter(({ said }) => said.ring)
    .map(who);

test('hours ahead the room is told, and nobody’s phone rings but the foreman’s and the grower’s', async () => {
  await crew.forecast(NORTH, '05:10', '04:00', WARM);
  expect(notices().map(who).toSorted()).toEqual(['mateo', 'room', 'ruth']);
  expect(ringing().toSorted()).toEqual(['mateo', 'ruth']);
  const [advice] = crew.heardIn('crew');
  expect(advice).toMatch(
    /^HEAT STOP for North station: stop topping at 10:40 AM, stop digging at 11:10 AM\./,
  );
  expect(advice).toContain('Nothing to confirm yet: the order comes an hour before topping stops.');
  expect(crew.heardBy('mateo')[0]).toContain('Por ahora no hay nada que confirmar');
  expect(notices().every(({ said }) => said.buttons.length === 0)).toBe(true);
  await crew.passTo('09:39');
  expect(notices()).toHaveLength(3);
  expect(crew.delivered.filter(({ kind }) => kind === 'reminder' || kind === 'unseen')).toEqual([]);
  expect(await crew.say('ruth', null, 'who has not seen it', '09:39')).toEqual(['No notice has gone out.']);
});

test('an hour before the topper must stop everybody is ordered to, asked to confirm, and then reminded', async () => {
  await crew.forecast(NORTH, '05:10', '04:00', WARM);
  await crew.passTo('09:40');
  const orders = notices().slice(3);
  expect(orders).toHaveLength(EVERYBODY + 1);
  expect(orders.every(({ said }) => said.ring && said.buttons.length === 1)).toBe(true);
  expect(crew.heardBy('gus')[0]).toMatch(/stop topping at 10:40 AM[^]*reply only when parked: "got it"\.$/);
  await crew.say('gus', null, 'got it', '09:45');
  await crew.passTo('09:49');
  expect(crew.delivered.filter(({ kind }) => kind === 'reminder')).toEqual([]);
  await crew.passTo('09:50');
  expect(crew.delivered.filter(({ kind }) => kind === 'reminder')).toHaveLength(EVERYBODY - 1);
  await crew.passTo('10:00');
  expect(crew.delivered.filter(({ kind }) => kind === 'unseen').map(who)).toEqual(['ruth', 'mateo']);
});

test('with less than an hour left the first word is the order', async () => {
  await crew.forecast(NORTH, '10:00', '04:00', WARM);
  expect(notices()).toHaveLength(EVERYBODY + 1);
  expect(ringing()).toHaveLength(EVERYBODY + 1);
  await crew.passTo('10:09');
  expect(notices()).toHaveLength(EVERYBODY + 1);
});

test('advice that is called off is called off as quietly', async () => {
  await crew.forecast(NORTH, '05:10', '04:00', WARM);
  await crew.forecast(NORTH, '06:10', '04:00', COOL);
  await crew.forecast(NORTH, '07:10', '04:00', COOL);
  const ends = notices().slice(3);
  expect(ends.map(who).toSorted()).toEqual(['mateo', 'room', 'ruth']);
  expect(ends.some(({ said }) => said.ring)).toBe(false);
  await crew.passTo('12:00');
  expect(notices()).toHaveLength(6);
});

test('an order that is called off is called off to everybody', async () => {
  await crew.forecast(NORTH, '05:10', '04:00', WARM);
  await crew.passTo('09:40');
  await crew.forecast(NORTH, '09:50', '04:00', COOL);
  await crew.forecast(NORTH, '10:10', '04:00', COOL);
  const ends = notices().slice(-(EVERYBODY + 1));
  expect(ends.every(({ said }) => said.ring && /^(ALL-CLEAR|YA SE PUEDE)/.test(said.text))).toBe(true);
});

test('without a room the advice goes to each alone, and no phone rings', async () => {
  crew = await crewOn(database, {
    roster: { ...sampleRoster, operation: `quiet-${crypto.randomUUID()}`, rooms: [] },
  });
  await crew.forecast(NORTH, '05:10', '04:00', WARM);
  expect(notices()).toHaveLength(EVERYBODY);
  expect(ringing()).toEqual([]);
});
