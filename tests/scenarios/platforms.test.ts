/**
 * The same recorded day on each platform, through its real adapter: the terminal, and Slack's own client on a loopback
 * Slack, over Socket Mode and over HTTP. The figures are those of the day as it was invented.
 */
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { slackChat } from '../../adapters/slack/chat.ts';
import type { SlackSettings } from '../../adapters/slack/settings.ts';
import type { Operation } from '../../src/command/operate.ts';
import type { Chat } from '../../src/ports/chat.ts';
import { homeFor } from '../../src/run/out/home.ts';
import { ticketForm } from '../../src/saying/ticket-form.ts';
import { openDatabase } from '../../src/store/database.ts';
import type { Database } from '../../src/store/database.ts';
import { bookOf, INVENTED, play, sampleOn, startOn, startRecordedClock } from '../support/recorded-day.ts';
import { ROOM, shownBy, userOf } from '../support/slack/crew.ts';
import { startSlackFor } from '../support/slack/bench.ts';
import { typedTerminal } from '../support/typed-terminal.ts';
import { waitFor } from '../support/wait-for.ts';

let database: Database;
// The one clock that Slack's client, which checks the age of what is signed, shares with the rest. The database comes
// after it: Postgres does not take it well when its clock is set back by weeks.
beforeAll(async () => {
  startRecordedClock();
  database = await openDatabase({ memory: true });
}, 240_000);
afterAll(async () => {
  vi.useRealTimers();
  await database.close();
});

const onTerminal = async () => {
  const roster = sampleOn(
    `terminal-${crypto.randomUUID()}`,
    { id: 'crew', platform: 'local', room: 'crew' },
    (id) => [{ platform: 'local', user: id }],
  );
  const terminal = typedTerminal({ roster, nowMs: Date.now });
  const bot = await startOn(database, roster, ['local'], () => [terminal.chat]);
  const endMs = await play(bot, async ({ user, room, event }) => {
    if (event.is !== 'message') throw new Error('The terminal is told messages alone.');
    await terminal.type(`/as ${user}`, room === null ? '/dm' : `/in ${room}`, event.text);
  });
  const book = await bookOf(bot.operation, endMs);
  await bot.stop();
  return { book, shown: terminal.text() };
};

const onSlack = async (mode: 'socket' | 'http') => {
  const roster = sampleOn(
    `slack-${crypto.randomUUID()}`,
    { id: 'crew', platform: 'slack', room: ROOM },
    (id) => [{ platform: 'slack', user: userOf(id) }],
  );
  startRecordedClock();
  const { slack, settings, crew } = await startSlackFor(
    mode,
    roster.people.map(({ id }) => userOf(id)),
  );
  const bot = await startOn(database, roster, ['slack'], (operation) => [slackOf(settings, operation)]);
  const cursors = bot.operation.store.cursorsOf(roster.operation);
  await waitFor('first reading of the room', () => cursors.at('slack', ROOM));
  const endMs = await play(bot, async ({ user, room, event }) => {
    if (event.is !== 'message') throw new Error('Slack is told messages alone.');
    const channel = room === null ? slack.workspace.direct(userOf(user)) : crew;
    const { delivery } = slack.people.say(channel, userOf(user), event.text);
    await slack.send(delivery);
    expect(delivery.acked).toBe(true);
  });
  const book = await bookOf(bot.operation, endMs);
  await slack.send(slack.people.openHome(userOf('ana'), 'home'));
  const home = JSON.stringify(await waitFor('home', () => slack.homes.get(userOf('ana'))));
  await bot.stop();
  await slack.close();
  return { book, shown: shownBy(slack), home };
};

const slackOf = (settings: SlackSettings, { bot, store }: Operation): Chat => {
  const cursors = store.cursorsOf(bot.roster.operation);
  return slackChat(settings, {
    cursor: {
      lastSeen: (channel) => cursors.at('slack', channel),
      saw: (channel, ts) => cursors.advance('slack', channel, ts),
    },
    form: ticketForm,
    homeFor: (user) => homeFor(bot, { platform: 'slack', user }, Date.now()),
    draw: null,
    nowMs: Date.now,
    log: () => undefined,
  });
};

// Slack's client takes each jump of the clock for a lost pong and connects anew, which costs seconds and must cost no more.
describe('the recorded day', { timeout: 900_000 }, () => {
  let terminal: Awaited<ReturnType<typeof onTerminal>>;

  test('in the terminal gives the loads and tons of its tickets', async () => {
    terminal = await onTerminal();
    expect(terminal.book).toMatchObject(INVENTED);
  });

  test.each(['socket', 'http'] as const)('on Slack over %s gives the same book', async (mode) => {
    const { book, shown, home } = await onSlack(mode);
    expect(book).toEqual(terminal.book);
    // Nine people and the room, each of the two notices once.
    const notices = shown.map(({ key }) => key).filter((key) => key.startsWith('notice:'));
    expect(notices).toHaveLength(20);
    expect(new Set(notices).size).toBe(20);
    // Mateo asked once where everybody is: one message, as it stood in the end.
    const boards = shown.filter(({ message }) => /Trocas a las? /.test(message.text));
    expect(boards).toHaveLength(1);
    expect(boards[0]?.message.text).not.toContain('PARO POR CALOR');
    expect(home).toMatch(/Troca 1/);
  });
});

test(
  'one operation in the terminal and on Slack: one board, and a stop reaches each address once',
  { timeout: 240_000 },
  async () => {
    startRecordedClock();
    const inTerminal = (id: string) => ({ platform: 'local', user: id });
    const there = (id: string) => ({ platform: 'slack', user: userOf(id) });
    const sample = sampleOn(
      `both-${crypto.randomUUID()}`,
      { id: 'crew', platform: 'slack', room: ROOM },
      (id) => {
        if (id === 'ruth') return [inTerminal(id), there(id)];
        return id === 'ben' ? [inTerminal(id)] : [there(id)];
      },
    );
    const rooms = [...sample.rooms, { id: 'shop', platform: 'local', room: 'shop' }];
    const roster = { ...sample, rooms };
    const { slack, settings, crew } = await startSlackFor(
      'socket',
      roster.people.map(({ id }) => userOf(id)),
    );
    const terminal = typedTerminal({ roster, nowMs: Date.now });
    const bot = await startOn(database, roster, ['local', 'slack'], (operation) => [
      terminal.chat,
      slackOf(settings, operation),
    ]);
    const say = (who: string, words: string) =>
      slack.send(slack.people.say(crew, userOf(who), words).delivery);

    await say('ana', 'cargado');
    await terminal.type('/as ruth', '/dm', 'where is everybody');
    await terminal.shows('Trucks at');
    expect(terminal.text()).toMatch(/Truck 1 +hauling/);
    await terminal.type('/as ben', '/in shop', 'loaded');
    await say('mateo', 'donde estan todos');
    const boardOnSlack = () => shownBy(slack).find(({ message }) => /Trocas a las? /.test(message.text));
    expect((await waitFor('board', boardOnSlack)).message.text).toMatch(
      /Troca 2: en camino|Troca 2: .*cargad/i,
    );

    await say('mateo', 'stop digging, mud');
    await bot.drained();
    await bot.stop();
    const told = shownBy(slack)
      .filter(({ key }) => key.startsWith('notice:'))
      .map(({ channel }) => channel);
    const onSlackToo = roster.people
      .filter(({ id }) => id !== 'ben')
      .map(({ id }) => slack.workspace.direct(userOf(id)).id);
    expect(told.sort()).toEqual([ROOM, ...onSlackToo].sort());
    // Ruth, Ben and the room of the terminal.
    expect(terminal.text().match(/MUD HOLD: /g)).toHaveLength(3);
    await slack.close();
  },
);
