import { describe, expect, test } from 'vitest';
import { crewForEachTest } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';

let crew: Crew;
crewForEachTest((fresh) => {
  crew = fresh;
});

const TRUCK_1_TICKET = 'ticket 48101 gross 79840 tare 29320';
/** (79,840 - 29,320) lb of 2,000 lb a short ton. */
const TRUCK_1_TONS = '25.26 tons';

const tonsToday = async (clock: string): Promise<string> =>
  (await crew.say('ruth', null, 'tons today?', clock)).join();
const kinds = async (): Promise<string[]> => (await crew.factsSoFar()).map(({ fact }) => fact.kind);

describe('a changed message', () => {
  test('corrects what it said, at the time it was first sent', async () => {
    await crew.say('ben', 'crew', 'loaded', '07:05', { id: 'm' });
    expect(await crew.edit('ben', 'crew', 'm', 'truck 4 loaded', '07:30')).toEqual([
      'Truck 4: loaded and hauling, 7:05 AM.',
    ]);
    expect(await crew.say('ruth', null, 'where is truck 2', '07:31')).toEqual([
      expect.stringContaining('nothing heard yet'),
    ]);
  });

  test('that cannot be read leaves the first one standing, and says so', async () => {
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40', { id: 'm' });
    expect(await crew.edit('ana', 'crew', 'm', 'blah blah blah', '07:41')).toEqual([
      expect.stringContaining('48101'),
    ]);
    expect(await tonsToday('08:00')).toContain(TRUCK_1_TONS);
  });

  test('with the words it had changes and answers nothing, also where it brought no fact', async () => {
    await crew.say('ben', 'crew', TRUCK_1_TICKET, '07:40', { id: 'm' });
    await crew.say('mateo', null, 'stop digging, mud', '07:41', { id: 'stop' });
    await crew.say('ruth', null, 'tons today?', '07:42', { id: 'question' });
    const facts = await kinds();
    expect(await crew.edit('ben', 'crew', 'm', TRUCK_1_TICKET, '07:43')).toEqual([]);
    expect(await crew.edit('mateo', null, 'stop', 'stop digging, mud', '07:44')).toEqual([]);
    expect(await crew.edit('ruth', null, 'question', 'tons today?', '07:45')).toEqual([]);
    expect(await kinds()).toEqual(facts);
  });

  test('changed again replaces the change, not only the first words', async () => {
    await crew.say('ana', 'crew', 'ticket 48101 gross 79840 tare 29320', '07:40', { id: 'm' });
    await crew.edit('ana', 'crew', 'm', 'ticket 48101 gross 79860 tare 29320', '07:41');
    await crew.edit('ana', 'crew', 'm', 'ticket 48101 gross 79880 tare 29320', '07:42');
    // (79,880 - 29,320) / 2,000
    expect(await tonsToday('08:00')).toContain('25.28 tons in 1 load.');
    await crew.takeBack('ana', 'crew', 'm', '08:01');
    expect(await tonsToday('08:02')).toContain('0 loads');
  });

  test('counts from the time of the first words, though those could not be read', async () => {
    await crew.say('ben', 'crew', 'lowded up', '07:05', { id: 'm', addressed: true });
    expect(await crew.edit('ben', 'crew', 'm', 'loaded', '07:40')).toEqual([
      'Truck 2: loaded and hauling, 7:05 AM.',
    ]);
  });

  test('heard before its first words wins over them', async () => {
    await crew.edit('ana', 'crew', 'm', 'ticket 48101 gross 79860 tare 29320', '07:41');
    await crew.say('ana', 'crew', 'ticket 48102 gross 79840 tare 29320', '07:42', { id: 'm', sent: '07:40' });
    expect(await tonsToday('08:00')).toContain('25.27 tons in 1 load.');
  });

  test('of somebody else changes nothing', async () => {
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40', { id: 'm' });
    expect(await crew.edit('ben', 'crew', 'm', 'loaded', '07:41')).toEqual([]);
    expect(await crew.takeBack('ben', 'crew', 'm', '07:42')).toEqual([]);
    expect(await tonsToday('08:00')).toContain(`${TRUCK_1_TONS} in 1 load.`);
  });
});

describe('a deleted message', () => {
  test('takes back what it said', async () => {
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40', { id: 'm' });
    expect(await crew.takeBack('ana', 'crew', 'm', '07:45')).toEqual([expect.stringContaining('48101')]);
    expect(await tonsToday('08:00')).toContain('0 loads');
  });

  test('that was only talk, or is gone already, is no matter', async () => {
    await crew.say('ben', 'crew', 'who has my gloves', '07:40', { id: 'talk' });
    expect(await crew.takeBack('ben', 'crew', 'talk', '07:41')).toEqual([]);
    await crew.say('ben', 'crew', 'loaded', '07:42', { id: 'm' });
    await crew.say('ben', 'crew', 'undo', '07:43');
    expect(await crew.takeBack('ben', 'crew', 'm', '07:44')).toEqual([]);
  });

  test('does not pretend to end a stop: that takes an all-clear', async () => {
    await crew.say('mateo', 'crew', 'stop digging, mud', '11:45', { id: 'stop' });
    expect(await crew.takeBack('mateo', 'crew', 'stop', '11:46')).toEqual([]);
    expect(await crew.say('eli', null, 'can we dig', '11:47')).toEqual([
      expect.stringMatching(/^No\. MUD HOLD/),
    ]);
  });
});

describe('a reply to a message', () => {
  test('that says undo means that message, not the newest', async () => {
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40', { id: 'first' });
    await crew.say('ana', 'crew', 'loaded', '08:10');
    expect(await crew.say('ana', 'crew', 'undo', '08:11', { repliesTo: 'first' })).toEqual([
      expect.stringContaining('48101'),
    ]);
    expect(await tonsToday('08:12')).toContain('0.00 tons');
  });

  test('a reply to a receipt means what the receipt is for', async () => {
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40');
    const receipt = `bot-${crew.delivered.at(-1)?.id}`;
    await crew.say('ana', 'crew', 'loaded', '08:10');
    expect(await crew.say('ana', 'crew', 'undo', '08:11', { repliesTo: receipt })).toEqual([
      expect.stringContaining('48101'),
    ]);
    expect(await tonsToday('08:12')).toContain('0.00 tons');
  });

  test('that corrects means that message', async () => {
    await crew.say('ben', 'crew', 'loaded', '07:05', { id: 'first' });
    await crew.say('ben', 'crew', '2 pilers open', '07:10');
    const said = await crew.say('ben', 'crew', 'that was truck 4', '07:11', { repliesTo: 'first' });
    expect(said).toEqual(['Corrected: Truck 4: loaded and hauling, 7:05 AM.']);
  });

  test('means its newest words where it was changed', async () => {
    await crew.say('ben', 'crew', 'loaded', '07:05', { id: 'first' });
    await crew.edit('ben', 'crew', 'first', 'truck 4 loaded', '07:06');
    await crew.say('ben', 'crew', '2 pilers open', '07:10');
    const said = await crew.say('ben', 'crew', 'undo', '07:11', { repliesTo: 'first' });
    expect(said).toEqual([expect.stringContaining('Truck 4: loaded')]);
  });
});
