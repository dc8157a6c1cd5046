/** Rooms that become the crew's, and cease to be, by a word said in them. */
import { expect, test } from 'vitest';
import type { Database } from '../../../src/store/database.ts';
import { crewForEachTest, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';

let crew: Crew;
let database: Database;
crewForEachTest((fresh, shared) => {
  crew = fresh;
  database = shared;
});

const USED: unknown = expect.stringMatching(/^This is a room of the crew now/);

test('a room that grower or foreman names is read, hears notices, and is still the crew’s after a restart', async () => {
  expect(await crew.say('ben', 'shop', 'truck 2 loaded', '06:00')).toEqual([]);
  expect(await crew.say('ruth', 'shop', 'use this room', '06:05')).toEqual([USED]);
  expect(await crew.say('ben', 'shop', 'truck 2 loaded', '07:00')).toEqual([
    'Truck 2: loaded and hauling, 7:00 AM.',
  ]);
  await crew.say('ruth', null, 'stop digging, mud', '08:00');
  expect(crew.heardIn('shop').filter((text) => /stop/i.test(text) && /mud/i.test(text))).toHaveLength(1);

  const restarted = await crewOn(database, { roster: crew.bot.roster });
  expect(await restarted.say('ben', 'shop', 'truck 2 in line', '08:30', { id: 'after' })).toEqual([
    expect.stringContaining('Truck 2'),
  ]);
});

test('a room that is named while the dig is stopped hears of the stop', async () => {
  await crew.say('ruth', null, 'stop digging, mud', '08:00');
  const heard = await crew.say('ruth', 'shop', 'usa esta sala', '08:01');
  expect(heard).toHaveLength(2);
  expect(heard).toContainEqual(USED);
  expect(heard).toContainEqual(expect.stringMatching(/mud/i));
  expect(crew.heardIn('crew')).toHaveLength(1);
});

test('a driver’s or a stranger’s word names no room, and nothing is said in it', async () => {
  expect(await crew.say('ben', 'shop', 'use this room', '06:00')).toEqual([]);
  await crew.say('passer-by', 'shop', 'use this room', '06:01');
  expect(crew.heardIn('shop')).toEqual([]);
  expect(await crew.say('ben', 'crew', 'use this room', '06:02')).toEqual([
    'Only grower and foreman can change the lists.',
  ]);
  expect(await crew.say('ben', 'shop', 'truck 2 loaded', '06:03')).toEqual([]);
});

test('a room that is given up is left alone, but for calls for help', async () => {
  await crew.say('ruth', 'shop', 'use this room', '06:00');
  expect(await crew.say('mateo', 'shop', 'deja esta sala', '06:10')).toEqual([
    expect.stringMatching(/^Esta ya no es sala del equipo/),
  ]);
  expect(await crew.say('ben', 'shop', 'truck 2 loaded', '07:00')).toEqual([]);
  await crew.say('ruth', null, 'stop digging, mud', '08:00');
  expect(crew.heardIn('shop').filter((text) => /mud/i.test(text))).toEqual([]);
  expect((await crew.say('ben', 'shop', 'I am pinned under the truck', '08:05')).join()).toMatch(/911/);
});

test('named again after that, it is the crew’s again', async () => {
  await crew.say('ruth', 'shop', 'use this room', '06:00');
  await crew.say('ruth', 'shop', 'stop using this room', '06:10');
  expect(await crew.say('ruth', 'shop', 'use this room', '06:20')).toEqual([USED]);
  expect(await crew.say('ben', 'shop', 'truck 2 loaded', '07:00')).toHaveLength(1);
});

test.each([
  ['crew', 'use this room', 'This is a room of the crew already.'],
  ['crew', 'stop using this room', 'The operation file names this room; only there can it be taken out.'],
  ['shop', 'stop using this room', 'This is not a room of the crew.'],
  [null, 'use this room', 'Say that in the room that you mean.'],
])('in %s, "%s": %s', async (room, text, answer) => {
  expect(await crew.say('ruth', room, text, '06:00')).toEqual([answer]);
  expect(await crew.factsSoFar()).toEqual([]);
});

test('on a platform the room goes by its name there, and one that the file names later stays as the file has it', async () => {
  const { roster } = crew.bot;
  const bot = { platforms: ['matrix'] };
  const ruth = { platform: 'matrix', user: '@ruth:farm.example' };
  const people = roster.people.map((one) => (one.id === 'ruth' ? { ...one, addresses: [ruth] } : one));
  const there = await crewOn(database, { roster: { ...roster, people }, bot, platform: 'matrix' });
  const shop = { platform: 'matrix', room: '!shop:farm.example' };
  await there.say(ruth.user, shop.room, 'use this room', '06:00');
  await there.say(ruth.user, null, 'stop digging, mud', '08:00');
  const told = () => there.delivered.filter(({ kind, to }) => kind === 'notice' && 'room' in to);
  expect(told().map(({ platform, to }) => ({ platform, ...to }))).toEqual([shop]);

  const rooms = [...roster.rooms, { id: 'shop', ...shop }];
  const named = { ...roster, people, rooms };
  const later = await crewOn(database, { roster: named, bot, platform: 'matrix' });
  await later.say(ruth.user, null, 'dig again', '09:00', { id: 'later' });
  const notices = later.delivered.filter(({ kind, to }) => kind === 'notice' && 'room' in to);
  expect(notices.map(({ to }) => to)).toEqual([{ room: shop.room }]);
});
