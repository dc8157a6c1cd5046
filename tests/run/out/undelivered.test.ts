/** A stop that does not reach somebody: it waits and is tried again, and foreman and grower hear of it, with the reason. */
import { describe, expect, test } from 'vitest';
import type { Roster } from '../../../src/core/roster.ts';
import type { PostResult } from '../../../src/ports/chat.ts';
import type { Claimed } from '../../../src/ports/outbox.ts';
import { crewForEachTest, crewOn } from '../../support/crew.ts';
import type { Crew } from '../../support/crew.ts';
import type { Database } from '../../../src/store/database.ts';
import { memberOf, sampleRoster } from '../../support/roster.ts';

let database: Database;
crewForEachTest((_, shared) => {
  database = shared;
});

const NOT_IN: PostResult = { result: 'gone', why: 'the bot is not in that channel: invite it' };
const onSlack = (change: Partial<Roster> = {}): Roster => ({
  ...sampleRoster,
  operation: `gone-${crypto.randomUUID()}`,
  people: sampleRoster.people.map((person) => ({
    ...person,
    addresses: [{ platform: 'slack', user: person.id }],
  })),
  rooms: [{ id: 'crew', platform: 'slack', room: 'crew' }],
  ...change,
});
const crewWith = (
  post: (message: Claimed) => PostResult | null,
  roster = onSlack(),
  platforms = ['slack'],
): Promise<Crew> =>
  crewOn(database, { roster, bot: { platforms, editable: ['slack'] }, platform: 'slack', post });

const isRoom = ({ to }: Claimed): boolean => 'room' in to;
const isNotice = ({ kind }: Claimed): boolean => kind === 'notice';
const undelivered = (crew: Crew): [string, string][] =>
  crew.delivered.flatMap(({ kind, recipient, said }) =>
    kind === 'undelivered' && 'person' in recipient ? [[recipient.person, said.text]] : [],
  );

describe('a room that the bot cannot write in', () => {
  test('is named to foreman and grower with the reason, once; the order waits and is posted when it can be', async () => {
    const state = { invited: false };
    const crew = await crewWith((message) => (isRoom(message) && !state.invited ? NOT_IN : null));
    await crew.say('ruth', null, 'stop digging, mud', '09:00');
    await crew.deliverAll('09:01');
    await crew.deliverAll('09:02');
    expect(undelivered(crew)).toEqual([
      [
        'ruth',
        'NOT DELIVERED: MUD HOLD. I cannot write in crew: the bot is not in that channel: invite it. I go on trying.',
      ],
      ['mateo', expect.stringMatching(/^NO ENTREGADO: PARO POR LODO\. No puedo escribir en crew: the bot/)],
    ]);
    state.invited = true;
    await crew.deliverAll('09:03');
    const inRoom = crew.delivered.filter((message) => isRoom(message) && isNotice(message));
    expect(inRoom.map(({ said }) => said.text)).toEqual([expect.stringMatching(/^MUD HOLD/)]);
  });

  test('gets no stop that has ended meanwhile', async () => {
    const state = { invited: false };
    const crew = await crewWith((message) => (isRoom(message) && !state.invited ? NOT_IN : null));
    await crew.say('ruth', null, 'stop digging, mud', '09:00');
    await crew.say('ruth', null, 'dig again', '09:30');
    state.invited = true;
    await crew.deliverAll('09:35');
    const inRoom = crew.delivered.filter((message) => isRoom(message) && isNotice(message));
    expect(inRoom.map(({ said }) => said.text)).toEqual([expect.stringMatching(/^ALL-CLEAR/)]);
  });
});

describe('a person', () => {
  test('who has no address is named at once', async () => {
    const gus = { ...memberOf(sampleRoster, 'gus'), addresses: [{ platform: 'matrix', user: '@gus:x' }] };
    const people = onSlack().people.map((one) => (one.id === 'gus' ? gus : one));
    const crew = await crewWith(() => null, onSlack({ people }));
    await crew.say('ruth', null, 'stop digging, mud', '09:00');
    expect(undelivered(crew)).toContainEqual([
      'ruth',
      'NOT DELIVERED: MUD HOLD. Gus has no address that I can reach.',
    ]);
    expect(await crew.say('ruth', null, 'who has not seen it', '09:01')).toEqual([
      'MUD HOLD, not confirmed yet: Mateo, Fritz, Gus. Confirmed by 1 of 4.\nNot delivered to: Gus.',
    ]);
  });

  test('whose account is closed is tried by the other address, and only a person who has none left is missing', async () => {
    const people = onSlack().people.map((one) =>
      one.id === 'gus'
        ? { ...one, addresses: [...one.addresses, { platform: 'matrix', user: '@gus:x' }] }
        : one,
    );
    const closed = (message: Claimed): PostResult | null =>
      message.platform === 'slack' && 'user' in message.to && ['gus', 'fritz'].includes(message.to.user)
        ? { result: 'gone', why: 'the account is closed' }
        : null;
    const crew = await crewWith(closed, onSlack({ people }), ['slack', 'matrix']);
    await crew.say('ruth', null, 'stop digging, mud', '09:00');
    await crew.deliverAll('09:01');
    expect(crew.delivered.filter(isNotice).map(({ platform, to }) => [platform, to])).toContainEqual([
      'matrix',
      { user: '@gus:x' },
    ]);
    expect(undelivered(crew).map(([who, text]) => [who, text.split('. ')[1]])).toContainEqual([
      'ruth',
      'I cannot write to Fritz: the account is closed',
    ]);
    expect((await crew.say('ruth', null, 'who has not seen it', '09:02'))[0]).toMatch(
      /\nNot delivered to: Fritz\.$/,
    );
  });

  test('whose chat does not answer for minutes is named too', async () => {
    const crew = await crewWith((message) =>
      'user' in message.to && message.to.user === 'gus' ? { result: 'unknown', why: 'no answer' } : null,
    );
    await crew.say('ruth', null, 'stop digging, mud', '09:00');
    await crew.deliverAll('09:01');
    expect(undelivered(crew)).toEqual([]);
    for (let second = 0; second < 300; second += 5)
      await crew.deliverAll(`09:0${1 + Math.floor(second / 60)}:${String(second % 60).padStart(2, '0')}`);
    expect(undelivered(crew)).toHaveLength(2);
  });
});

describe('the fault of something else delays no stop', () => {
  test('a receipt that is not delivered and an urgent message that never is', async () => {
    const crew = await crewWith((message) =>
      message.kind === 'notice' ? null : { result: 'unknown', why: 'no answer' },
    );
    await crew.say('ben', 'crew', 'loaded', '08:59:58');
    await crew.say('ana', 'crew', 'estoy herida, ayuda', '08:59:59');
    await crew.say('ruth', null, 'stop digging, mud', '09:00:00');
    expect(crew.delivered.filter(isNotice)).toHaveLength(5);
  });

  test('a board that cannot be found', async () => {
    const crew = await crewWith(() => null);
    const { book } = crew.bot;
    const shown = () => Promise.reject(new Error('no such table'));
    crew.bot.book = {
      inOneGo: (operation, work) => book.inOneGo(operation, (page) => work({ ...page, shown })),
    };
    await crew.say('ruth', null, 'stop digging, mud', '09:00');
    expect(crew.delivered.filter(isNotice)).toHaveLength(5);
    expect(crew.logged.map(({ message }) => message)).toContain('What is shown already could not be changed');
  });
});
