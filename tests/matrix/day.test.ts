/** The recorded day on Matrix: a real homeserver, the crew with apps of their own, and the same book as elsewhere. */
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { matrixChat } from '../../adapters/matrix/chat.ts';
import { tellFromAdapter } from '../../src/run/in/from-adapter.ts';
import { openDatabase } from '../../src/store/database.ts';
import type { Database } from '../../src/store/database.ts';
import { bookOf, INVENTED, play, sampleOn, startOn, startRecordedClock } from '../support/recorded-day.ts';
import { depsWith, settingsFor } from '../support/synapse/crew.ts';
import { rawUser } from '../support/synapse/raw-user.ts';
import { describeWithSynapse } from '../support/synapse/suite.ts';
import type { Synapse } from '../support/synapse/synapse.ts';
import { startSynapse } from '../support/synapse/synapse.ts';
import { waitFor } from '../support/wait-for.ts';

const HEARD_MS = 60_000;

describeWithSynapse('the recorded day', () => {
  let synapse: Synapse;
  let database: Database;
  beforeAll(async () => {
    synapse = await startSynapse();
    startRecordedClock();
    database = await openDatabase({ memory: true });
  });
  afterAll(async () => {
    vi.useRealTimers();
    await database.close();
    await synapse.dispose();
  });

  const gather = async () => {
    const ids = sampleOn('names', { id: 'crew', platform: 'matrix', room: '' }, () => []).people.map(
      ({ id }) => id,
    );
    const bot = await synapse.register('daybell');
    const device = await rawUser(synapse.url, bot);
    const people = new Map<string, Awaited<ReturnType<typeof rawUser>>>();
    for (const id of ids) people.set(id, await rawUser(synapse.url, await synapse.register(`day-${id}`)));
    const personOf = (id: string) => {
      const person = people.get(id);
      if (!person) throw new Error(`There is no ${id} on Matrix.`);
      return person;
    };
    const all = [...people.values()];
    const [first, ...others] = all;
    if (!first) throw new Error('The crew is empty.');
    const room = await first.createRoom([bot.user, ...others.map(({ user }) => user)]);
    for (const person of [...others, device]) await person.join(room);
    const alone = new Map<string, string>();
    for (const id of ids) {
      const direct = await personOf(id).createRoom([bot.user], { is_direct: true });
      await device.join(direct);
      alone.set(id, direct);
    }
    return { bot, room, personOf, aloneOf: (id: string) => alone.get(id) ?? '' };
  };

  test('gives the loads and tons of its tickets', { timeout: 900_000 }, async () => {
    const { bot: account, room, personOf, aloneOf } = await gather();
    const roster = sampleOn(
      `matrix-${crypto.randomUUID()}`,
      { id: 'crew', platform: 'matrix', room },
      (id) => [{ platform: 'matrix', user: personOf(id).user }],
    );
    const bot = await startOn(database, roster, ['matrix'], ({ bot, store }) => {
      const cursors = store.cursorsOf(roster.operation);
      const cursor = {
        load: () => cursors.at('matrix', ''),
        save: (token: string) => cursors.set('matrix', '', token),
      };
      const tell = (telling: Parameters<typeof tellFromAdapter>[2]) =>
        tellFromAdapter(bot, 'matrix', telling, Date.now());
      return [matrixChat(settingsFor(synapse.url, account), depsWith({ cursor, tell }))];
    });
    const isHeard = (id: string) => async () => {
      const versions = await bot.operation.bot.book.inOneGo(roster.operation, (page) =>
        page.versionsOf('matrix', id),
      );
      return versions.length > 0;
    };
    const endMs = await play(bot, async ({ user, room: where, event }) => {
      if (event.is !== 'message') throw new Error('Matrix is told messages alone.');
      const id = await personOf(user).say(where === null ? aloneOf(user) : room, event.text);
      await waitFor(`message "${event.text}"`, isHeard(id), HEARD_MS);
    });
    const book = await bookOf(bot.operation, endMs);
    await bot.stop();
    expect(book).toMatchObject(INVENTED);
    const shown = await personOf('ruth').history(room);
    // Who has seen it grows in the message itself, by edits.
    const stops = shown.filter(
      ({ sender, content }) =>
        sender === account.user &&
        content['m.relates_to'] === undefined &&
        String(content['body']).includes('HEAT STOP for '),
    );
    expect(stops).toHaveLength(1);
  });
});
