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
/** Two hours later. */
const LATER = [34, 35, ...WARM.slice(0, -2)];
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

const ACTING = ['mateo', 'fritz', 'gus'];
const kindsOf = (...kinds: readonly string[]): Claimed[] =>
  crew.delivered.filter(({ kind }) => kinds.includes(kind));

test('an hour before the topper must stop those who must act are rung, and asked to confirm in time', async () => {
  await crew.forecast(NORTH, '05:10', '04:00', WARM);
  await crew.passTo('09:40');
  const orders = notices().slice(3);
  expect(orders.map(who)).toEqual(['room', 'ruth', ...ACTING]);
  expect(orders.every(({ said }) => said.buttons.length === 1)).toBe(true);
  expect(orders.filter(({ said }) => said.ring).map(who)).toEqual(ACTING);
  expect(crew.heardBy('gus')[0]).toMatch(/stop topping at 10:40 AM[^]*reply only when parked: "got it"\.$/);
  await crew.say('gus', null, 'got it', '09:45');
  await crew.passTo('09:54');
  expect(kindsOf('reminder', 'unseen')).toEqual([]);
  await crew.passTo('10:10');
  expect(kindsOf('reminder', 'unseen').map((one) => [one.kind, who(one)])).toEqual([
    ['reminder', 'mateo'],
    ['reminder', 'fritz'],
    ['unseen', 'mateo'],
  ]);
  await crew.say('fritz', null, 'got it', '10:12');
  await crew.say('mateo', null, 'enterado', '10:13');
  await crew.passTo('19:00');
  expect(kindsOf('reminder', 'unseen')).toHaveLength(3);
});

test('a driver gets the order in the room, and once beside the next answer', async () => {
  await crew.forecast(NORTH, '05:10', '04:00', WARM);
  await crew.passTo('09:40');
  expect(crew.heardBy('ben')).toEqual([]);
  await crew.say('ben', 'crew', 'loaded', '09:50');
  expect(crew.heardBy('ben')).toEqual([]);
  const answers = await crew.say('ben', null, 'in line, 4 ahead', '10:20');
  expect(answers).toHaveLength(2);
  expect(answers[0]).toMatch(/^HEAT STOP for North station: stop topping at 10:40 AM/);
  expect(notices().at(-1)?.said.ring).toBe(false);
  expect(await crew.say('ben', null, 'dumped', '10:50')).toHaveLength(1);
  await crew.say('eli', null, 'got it', '10:51');
  expect(await crew.say('eli', null, 'tons today?', '10:52')).toHaveLength(1);
});

test('after the time only who still reports from the field is reminded, once', async () => {
  await crew.forecast(NORTH, '05:10', '04:00', WARM);
  await crew.passTo('11:10');
  const before = kindsOf('reminder').length;
  await crew.say('ana', 'crew', 'cargado', '11:15');
  await crew.say('ben', 'crew', 'dumped', '11:30');
  expect(kindsOf('reminder')).toHaveLength(before);
  await crew.say('carla', 'crew', 'cargado', '11:40');
  await crew.say('carla', 'crew', 'cargado', '12:40');
  expect(kindsOf('reminder').slice(before).map(who)).toEqual(['carla']);
  expect(kindsOf('reminder').at(-1)?.said.text).toMatch(
    /^PARO POR CALOR para North station: parados desde las 11:10/,
  );
});

test('a later time rings nobody and is not asked about again; an earlier one is a new order', async () => {
  await crew.forecast(NORTH, '09:50', '04:00', WARM);
  for (const id of ACTING) await crew.say(id, null, 'got it', '09:55');
  const before = notices().length;
  await crew.forecast(NORTH, '10:00', '04:00', LATER);
  await crew.forecast(NORTH, '10:20', '04:00', LATER);
  const later = notices().slice(before);
  expect(later.map(who)).toEqual(['room', 'ruth', ...ACTING]);
  expect(later.some(({ said }) => said.ring)).toBe(false);
  await crew.passTo('12:00');
  expect(kindsOf('reminder', 'unseen')).toEqual([]);
  await crew.forecast(NORTH, '12:10', '04:00', WARM);
  expect(
    notices()
      .slice(before + 5)
      .filter(({ said }) => said.ring)
      .map(who),
  ).toEqual(ACTING);
});

test('with less than an hour left the first word is the order', async () => {
  await crew.forecast(NORTH, '10:00', '04:00', WARM);
  expect(notices()).toHaveLength(5);
  expect(ringing()).toEqual(ACTING);
  await crew.passTo('10:09');
  expect(notices()).toHaveLength(5);
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

test('an order that is called off is called off to everybody who had it', async () => {
  await crew.forecast(NORTH, '05:10', '04:00', WARM);
  await crew.passTo('09:40');
  await crew.forecast(NORTH, '09:50', '04:00', COOL);
  await crew.forecast(NORTH, '10:10', '04:00', COOL);
  const ends = notices().slice(-5);
  expect(ends.map(who)).toEqual(['room', 'ruth', ...ACTING]);
  expect(ends.every(({ said }) => /^(ALL-CLEAR|YA SE PUEDE)/.test(said.text))).toBe(true);
  expect(ends.filter(({ said }) => said.ring).map(who)).toEqual(ACTING);
});

test('without a room the advice goes to each alone, and no phone rings', async () => {
  crew = await crewOn(database, {
    roster: { ...sampleRoster, operation: `quiet-${crypto.randomUUID()}`, rooms: [] },
  });
  await crew.forecast(NORTH, '05:10', '04:00', WARM);
  expect(notices()).toHaveLength(EVERYBODY);
  expect(ringing()).toEqual([]);
});

test('one who works at night wakes nobody: the stop of the next day waits for the morning of each', async () => {
  const morning = (clock: string) => `2026-10-21 ${clock}`;
  await crew.say('ana', 'crew', 'vacié', morning('00:30'));
  await crew.forecast(NORTH, morning('01:20'), morning('01:00'), [36, 36, 36, ...WARM]);
  expect(notices().map(who)).toEqual(['room', 'ruth', 'mateo']);
  expect(ringing()).toEqual([]);
  expect(await crew.say('ruth', null, 'who has not seen it', morning('01:30'))).toEqual([
    'No notice has gone out.',
  ]);
});

test('at night an order is asked only of those who work then: nobody who sleeps is missing', async () => {
  crew = await crewOn(database, {
    roster: {
      ...sampleRoster,
      operation: `night-${crypto.randomUUID()}`,
      people: sampleRoster.people.map((one) => {
        if (one.id === 'gus') return { ...one, shiftHours: [18, 6] as const };
        return one.id === 'fritz' ? { ...one, shiftHours: [6, 18] as const } : one;
      }),
    },
  });
  await crew.say('ruth', null, 'stop digging, mud', '23:30');
  expect(notices().map(who)).toEqual(['room', 'ruth', 'mateo', 'gus']);
  await crew.passTo('2026-10-21 00:30');
  expect(kindsOf('reminder').map(who)).toEqual(['gus']);
  expect(kindsOf('unseen').at(-1)?.data).toMatchObject({ seen: ['ruth'], unseen: ['gus'] });
});
