/** The recorded day on Slack, through its real adapter and Slack's own client on a loopback Slack. */
import { expect } from 'vitest';
import { slackChat } from '../../../adapters/slack/chat.ts';
import type { SlackSettings } from '../../../adapters/slack/settings.ts';
import type { Operation } from '../../../src/command/operate.ts';
import type { Chat } from '../../../src/ports/chat.ts';
import { homeFor } from '../../../src/run/out/home.ts';
import { ticketForm } from '../../../src/saying/ticket-form.ts';
import type { Database } from '../../../src/store/database.ts';
import { bookOf, play, replayedBook, sampleOn, startOn, startRecordedClock } from '../recorded-day.ts';
import { waitFor } from '../wait-for.ts';
import { startSlackFor } from './bench.ts';
import { ROOM, shownBy, userOf } from './crew.ts';

export const slackOf = (settings: SlackSettings, { bot, store }: Operation): Chat => {
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

/** What the book holds after the day, and what is to be seen on Slack. */
const onSlack = async (database: Database, mode: 'socket' | 'http') => {
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

/** The day gives the same book over Slack as it does replayed, and Slack shows of it what it should. */
export const expectSameDay = async (database: Database, mode: 'socket' | 'http'): Promise<void> => {
  const { book, shown, home } = await onSlack(database, mode);
  expect(book).toEqual(await replayedBook(database));
  // The room, the grower and the three who must act, each of the two notices once.
  const notices = shown.map(({ key }) => key).filter((key) => key.startsWith('notice:'));
  expect(notices).toHaveLength(10);
  expect(new Set(notices).size).toBe(10);
  // Mateo asked once where everybody is: one message, as it stood in the end.
  const boards = shown.filter(({ message }) => /Trocas a las? /.test(message.text));
  expect(boards).toHaveLength(1);
  expect(boards[0]?.message.text).not.toContain('PARO POR CALOR');
  expect(home).toMatch(/Troca 1/);
};
