import { eq } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import type { Database } from '../../../src/store/database.ts';
import { inbox } from '../../../src/store/schema.ts';
import { at, crewForEachTest, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import { sampleRoster } from '../../support/roster.ts';

let database: Database;
let crew: Crew;
crewForEachTest((fresh, shared) => {
  crew = fresh;
  database = shared;
});

const TRUCK_1_TICKET = 'ticket 48101 gross 79840 tare 29320';
/** (79,840 - 29,320) lb of 2,000 lb a short ton. */
const TRUCK_1_TONS = '25.26 tons';

const tonsToday = async (clock: string): Promise<string> =>
  (await crew.say('ruth', null, 'tons today?', clock)).join();
const loadsOf = async (truck: string, clock: string): Promise<string> =>
  (await crew.say('ruth', null, `how many loads has truck ${truck}`, clock)).join();
const kinds = async (): Promise<string[]> => (await crew.factsSoFar()).map(({ fact }) => fact.kind);

describe('a message', () => {
  test('is answered where it was written, in the language of its sender', async () => {
    expect(await crew.say('ben', 'crew', 'loaded', '07:05')).toEqual([
      'Truck 2: loaded and hauling, 7:05 AM.',
    ]);
    expect(await crew.say('ana', null, 'cargado', '07:06')).toEqual([
      expect.stringMatching(/^Troca 1: .*7:06 a\.m\.$/),
    ]);
    expect(crew.heardIn('crew')).toHaveLength(1);
    expect(crew.heardBy('ana')).toHaveLength(1);
  });

  test('delivered twice by the platform changes and answers nothing the second time', async () => {
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40', { id: 'ticket' });
    expect(await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:41', { id: 'ticket' })).toEqual([]);
    expect(await kinds()).toEqual(['ticket-booked']);
    expect(await tonsToday('08:00')).toContain(`${TRUCK_1_TONS} in 1 load.`);
  });

  test('that is talk among the crew is left alone', async () => {
    expect(await crew.say('ruth', 'crew', 'coffee is on at the shop', '05:00')).toEqual([]);
    expect(await crew.say('ben', 'crew', 'got it', '05:01')).toEqual([]);
    expect(await kinds()).toEqual([]);
  });

  test('that says more than twelve things is taken up to there, and the rest is asked for again', async () => {
    const steps = ['loaded', 'in line', 'dumped'].flatMap((step) =>
      [1, 2, 3, 4, 5].map((truck) => `truck ${truck} ${step}`),
    );
    expect((await crew.say('ruth', null, steps.slice(0, 12).join('. '), '07:05')).join()).not.toContain(
      'again',
    );
    expect((await kinds()).length).toBe(12);
    const answers = await crew.say('ruth', null, steps.join('. '), '08:05');
    expect(answers.at(-1)).toBe(
      'That is a lot for one message: I took the first 12 things. Send the rest again.',
    );
    expect((await kinds()).length).toBe(24);
    expect(await crew.say('ana', null, 'borra eso '.repeat(40), '08:06')).toHaveLength(13);
  });

  test('heard late counts at the time it was sent', async () => {
    await crew.say('ben', 'crew', 'in line', '08:30');
    expect(await crew.say('ben', 'crew', 'loaded', '08:45', { sent: '08:00' })).toEqual([
      'Truck 2: loaded and hauling, 8:00 AM.',
    ]);
    expect(await crew.say('ruth', null, 'where is truck 2', '08:50')).toEqual([
      expect.stringContaining('in line'),
    ]);
    await crew.say('ben', 'crew', 'dumped', '08:55');
    expect(await loadsOf('2', '08:56')).toContain('1 load,');
  });

  test('of a sender whose clock is fast counts at the time it was heard', async () => {
    expect(await crew.say('ben', 'crew', 'loaded', '08:00', { sent: '08:20' })).toEqual([
      'Truck 2: loaded and hauling, 8:00 AM.',
    ]);
  });
});

describe('roles', () => {
  test('a driver can neither stop nor resume the dig, nor change the lists', async () => {
    expect(await crew.say('eli', null, 'stop digging', '11:40')).toEqual([
      expect.stringMatching(/^Only grower and foreman can stop the dig/),
    ]);
    await crew.say('mateo', 'crew', 'stop digging, mud', '11:45');
    // The stop comes with the first answer after it.
    expect(await crew.say('eli', null, 'dig again', '11:50')).toEqual([
      expect.stringMatching(/^MUD HOLD/),
      'Only grower and foreman can start the dig again.',
    ]);
    expect(await crew.say('eli', null, 'add driver Zed truck 4', '11:51')).toEqual([
      'Only grower and foreman can change the lists.',
    ]);
    expect(await crew.say('eli', null, 'can we dig', '11:52')).toEqual([
      expect.stringMatching(/^No\. MUD HOLD/),
    ]);
  });

  test('a stop by the foreman goes to the room, the grower and those who must act, once', async () => {
    await crew.say('mateo', 'crew', 'stop digging, mud', '11:45');
    const stops = crew.delivered.filter((message) => message.kind === 'notice');
    expect(stops.map((message) => message.recipient)).toEqual([
      { room: 'crew' },
      ...['ruth', 'mateo', 'fritz', 'gus'].map((person) => ({ person })),
    ]);
    expect(stops.every((message) => message.urgent)).toBe(true);
    expect(stops.map((message) => message.said.ring)).toEqual([false, false, true, true, true]);
  });

  test('a driver cannot take back what another has said, the foreman can', async () => {
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40', { id: 'ticket' });
    expect(await crew.say('ben', 'crew', 'undo', '07:41', { repliesTo: 'ticket' })).toEqual([
      expect.stringMatching(/^That is someone else's entry/),
    ]);
    expect(await crew.say('mateo', 'crew', 'borra eso', '07:42', { repliesTo: 'ticket' })).toHaveLength(1);
    expect(await tonsToday('08:00')).toContain('0 loads');
  });
});

describe('somebody who is on no list', () => {
  test('gets one polite line once, and grower and foreman are told', async () => {
    const polite = 'I do not know you yet. I have told the foreman, who can put you on the list.';
    expect(await crew.say('zed', null, 'tons today?', '07:00')).toContain(polite);
    expect(crew.heardBy('ruth')).toEqual([expect.stringMatching(/^zed \(local\) wrote to me/)]);
    expect(crew.heardBy('mateo')).toHaveLength(1);
    expect(await crew.say('zed', null, 'tons today?', '07:01')).toEqual([]);
    expect(await crew.say('zed', 'crew', 'truck 1 loaded', '07:02')).toEqual([]);
    expect(await kinds()).toEqual(['stranger-heard']);
  });

  test('is answered as most of the crew are', async () => {
    const people = sampleRoster.people.filter(
      ({ language, roles }) => language === 'es' || roles.includes('grower'),
    );
    const spanish = await crewOn(database, {
      roster: { ...sampleRoster, operation: `day-${crypto.randomUUID()}`, people },
    });
    expect(await spanish.say('zed', null, 'tons today?', '07:00')).toContain(
      'Todavía no lo conozco. Ya le avisé al mayordomo, que lo puede poner en la lista.',
    );
  });

  test('is not answered where the crew only talks', async () => {
    expect(await crew.say('zed', 'crew', 'good morning everybody', '07:00')).toEqual([]);
  });

  test('is heard in an emergency all the same', async () => {
    const said = await crew.say('zed', 'crew', 'the digger is on fire', '07:00', { userName: 'Zed' });
    expect(said).toHaveLength(3);
    expect(crew.heardIn('crew')).toEqual([expect.stringMatching(/^Call 911 now/)]);
    expect(crew.heardBy('ruth')).toEqual([
      expect.stringMatching(/Zed wrote at 7:00 AM: "the digger is on fire"$/),
    ]);
    expect(crew.delivered.every((message) => message.urgent && message.said.ring)).toBe(true);
  });

  test('changes nothing by edits and deletions', async () => {
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40', { id: 'ticket' });
    expect(await crew.edit('zed', 'crew', 'ticket', 'loaded', '07:41')).toEqual([]);
    expect(await crew.takeBack('zed', 'crew', 'ticket', '07:42')).toEqual([]);
    expect(await tonsToday('08:00')).toContain(TRUCK_1_TONS);
  });
});

describe('in a room that is not the crew’s', () => {
  test('nothing of the operation is said or taken down', async () => {
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40');
    expect(await crew.say('ruth', 'neighbours', 'tons today?', '08:00', { addressed: true })).toEqual([]);
    expect(await crew.say('ben', 'neighbours', 'loaded', '08:01')).toEqual([]);
    expect(await crew.say('zed', 'neighbours', 'tons today?', '08:02', { addressed: true })).toEqual([]);
    expect(await kinds()).toEqual(['ticket-booked']);
  });

  test('an emergency counts, and only that', async () => {
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40');
    await crew.say('ben', 'neighbours', 'fire in the shop. tons today?', '08:00', { addressed: true });
    expect(crew.heardIn('neighbours')).toEqual([expect.stringMatching(/^Call 911 now/)]);
    expect(crew.heardBy('mateo')).toEqual([expect.stringContaining('fire in the shop')]);
    expect(await crew.say('ben', 'neighbours', 'truck 2 loaded. fire in the shop', '08:01')).toHaveLength(3);
    expect(await kinds()).toEqual(['ticket-booked', 'emergency-called', 'emergency-called']);
  });
});

describe('a fault in the handling', () => {
  const failingClock = () =>
    crewOn(database, {
      bot: {
        clock: {
          ...zoneClock,
          wall: (zone, atMs) => {
            if (atMs === at('07:45')) throw new Error('the clock broke');
            return zoneClock.wall(zone, atMs);
          },
        },
      },
    });
  const parkedReasons = async (operation: string) =>
    (await database.db.select().from(inbox).where(eq(inbox.operation, operation))).map((row) => [
      row.messageId,
      row.parked?.split('\n')[0] ?? null,
    ]);

  test('keeps the message with the reason, owns up with a reference, and the day goes on', async () => {
    crew = await failingClock();
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40', { id: 'ticket' });
    const said = await crew.say('ben', 'crew', 'how long is the line', '07:45', {
      id: 'asked',
      addressed: true,
    });
    expect(said).toEqual([expect.stringMatching(/Your message is kept\. .*: local:asked\.$/)]);
    expect(crew.heardBy('ben')).toEqual(said);
    expect(await parkedReasons(crew.bot.roster.operation)).toEqual([
      ['ticket', null],
      ['asked', 'Error: the clock broke'],
    ]);
    expect(crew.logged).toMatchObject([{ what: { reference: 'local:asked', message: 'asked' } }]);
    expect(await tonsToday('08:00')).toContain(TRUCK_1_TONS);
  });

  test('is not tried for ever: delivered again, the message is known', async () => {
    crew = await failingClock();
    await crew.say('ben', null, 'how long is the line', '07:45', { id: 'asked' });
    expect(await crew.say('ben', null, 'how long is the line', '07:46', { id: 'asked' })).toEqual([]);
  });

  test('half-way through leaves no half work: the facts go with their answers', async () => {
    crew = await failingClock();
    const said = await crew.say('ben', null, 'loaded, how long is the line', '07:45');
    expect(said).toEqual([expect.stringContaining('Your message is kept')]);
    expect(await kinds()).toEqual([]);
    expect(await crew.say('ben', null, 'loaded', '07:46')).toHaveLength(1);
  });
});

describe('two operations in one database', () => {
  test('do not see each other: people, tons, notices, messages', async () => {
    const people = sampleRoster.people.map((person) => ({ ...person, id: `${person.id}-2` }));
    const neighbour = await crewOn(database, {
      roster: { ...sampleRoster, operation: `neighbour-${crypto.randomUUID()}`, people },
    });
    await crew.say('ana', 'crew', TRUCK_1_TICKET, '07:40', { id: 'same id' });
    await crew.say('mateo', 'crew', 'stop digging, mud', '07:41');
    await crew.say('ruth', null, 'add driver Zed truck 4', '07:42');
    expect(await neighbour.deliverAll('07:43')).toEqual([]);

    expect(await neighbour.say('zed', null, 'tons today?', '07:44')).toContain(
      'I do not know you yet. I have told the foreman, who can put you on the list.',
    );
    expect(await neighbour.say('ana', 'crew', TRUCK_1_TICKET, '07:45', { id: 'same id' })).toHaveLength(1);
    expect(await neighbour.say('ruth', null, 'can we dig', '07:46')).toEqual([
      expect.stringMatching(/^Nobody has stopped it/),
    ]);
    expect(await neighbour.say('ruth', null, 'tons today?', '07:47')).toEqual([
      expect.stringContaining('in 1 load.'),
    ]);
    expect(await tonsToday('07:48')).toContain('in 1 load.');
    expect(crew.delivered.every((message) => message.operation === crew.bot.roster.operation)).toBe(true);
  });
});
