/** The board as one message of each room and person, on a platform that can change messages. */
import { expect, test } from 'vitest';
import { crewForEachTest, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import { rosterOnSlack } from '../../support/roster.ts';

let crew: Crew;
crewForEachTest(async (_, database) => {
  crew = await crewOn(database, {
    roster: { ...rosterOnSlack, operation: `board-${crypto.randomUUID()}` },
    bot: { platforms: ['slack'], editable: ['slack'] },
    platform: 'slack',
  });
});

const boards = () =>
  crew.delivered
    .filter(({ slot }) => slot?.startsWith('board'))
    .map(({ said, replaces, to }) => ({ text: said.text, replaces, to }));
const BOARD = /^Trucks at/;

test('the board that was asked for is changed in place when a truck moves, and nothing is posted anew', async () => {
  await crew.say('ruth', 'crew', 'where is everybody', '07:00');
  expect(await crew.say('ben', 'crew', 'loaded', '07:05')).toEqual([
    expect.stringMatching(/^Truck 2: loaded/),
    expect.stringMatching(BOARD),
  ]);
  const [first, second, ...others] = boards();
  expect(others).toEqual([]);
  expect(first).toMatchObject({ replaces: null });
  expect(second?.replaces).toMatch(/^bot-/);
  expect(second?.text).toMatch(/Truck 2: hauling/);
});

test('changes within 20 s are one change, and it shows the newest', async () => {
  await crew.say('ruth', 'crew', 'board', '07:00:00');
  await crew.say('ben', 'crew', 'loaded', '07:00:05');
  await crew.say('dale', 'crew', 'loaded', '07:00:10');
  expect(boards()).toHaveLength(1);
  expect(await crew.deliverAll('07:00:19')).toEqual([]);
  expect(await crew.deliverAll('07:00:20')).toEqual([expect.stringMatching(BOARD)]);
  expect(boards().at(-1)?.text).toMatch(/Truck 2: hauling[^]*Truck 4: hauling/);
  await crew.say('ben', 'crew', 'in line', '07:00:30');
  expect(await crew.deliverAll('07:00:39')).toEqual([]);
  expect(await crew.deliverAll('07:00:40')).toEqual([expect.stringMatching(/Truck 2: in line/)]);
});

test('what moves no truck changes no board', async () => {
  await crew.say('ruth', 'crew', 'board', '07:00');
  await crew.say('ben', 'crew', 'roots 48 F', '07:05');
  await crew.say('ruth', null, 'tons today?', '07:06');
  expect(boards()).toHaveLength(1);
});

test('asked for again it comes at the end of the talk, and the older one says so', async () => {
  await crew.say('ruth', 'crew', 'board', '07:00');
  await crew.say('ben', 'crew', 'loaded', '07:05');
  await crew.say('mateo', 'crew', 'donde estan todos', '07:10');
  const [, , anew, moved] = boards();
  expect(anew?.replaces).toBeNull();
  expect(anew?.text).toMatch(/^Trocas a las/);
  expect(moved?.replaces).toMatch(/^bot-/);
  expect(moved?.text).toContain('further down');
  await crew.say('ben', 'crew', 'in line', '07:15');
  expect(boards()).toHaveLength(5);
  expect(boards().at(-1)?.text).toMatch(/^Trocas a las[^]*en la fila/);
});

test('each room and person has a board of its own, in its own language', async () => {
  await crew.say('ruth', 'crew', 'board', '07:00');
  await crew.say('mateo', null, 'donde estan todos', '07:01');
  await crew.say('ben', 'crew', 'loaded', '07:05');
  const changed = boards().filter(({ replaces }) => replaces !== null);
  expect(changed.map(({ to }) => to)).toEqual(expect.arrayContaining([{ room: 'crew' }, { user: 'mateo' }]));
  expect(changed.map(({ text }) => text.split(' ')[0]).sort()).toEqual(['Trocas', 'Trucks']);
});

test('yesterday’s board is left alone', async () => {
  await crew.say('ruth', 'crew', 'board', '2026-10-19T18:00:00');
  await crew.say('ben', 'crew', 'loaded', '07:05');
  expect(boards()).toHaveLength(1);
});

test('taken back, the board goes back too', async () => {
  await crew.say('ruth', 'crew', 'board', '07:00');
  await crew.say('ben', 'crew', 'loaded', '07:05');
  await crew.say('ben', 'crew', 'undo', '07:06');
  expect(boards().at(-1)?.text).toContain('Truck 2: nothing heard yet');
});

test('a stop and its end change the board too: a list that still says dig on is worse than none', async () => {
  await crew.say('ruth', 'crew', 'board', '07:00');
  await crew.say('mateo', 'crew', 'stop digging, mud', '07:05');
  expect(boards().at(-1)?.text).toContain('MUD HOLD');
  await crew.say('mateo', 'crew', 'dig again', '09:05');
  expect(boards()).toHaveLength(3);
  expect(boards().at(-1)?.text).not.toContain('MUD HOLD');
});
