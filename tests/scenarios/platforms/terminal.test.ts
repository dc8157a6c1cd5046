/** The recorded day in the terminal; the figures are those of the day as it was invented. */
import { expect, test } from 'vitest';
import type { Database } from '../../../src/store/database.ts';
import {
  bookOf,
  INVENTED,
  onLocal,
  play,
  recordedDatabase,
  replayedBook,
  startOn,
} from '../../support/recorded-day.ts';
import { typedTerminal } from '../../support/typed-terminal.ts';

const database = recordedDatabase();

const onTerminal = async (database: Database) => {
  const roster = onLocal(`terminal-${crypto.randomUUID()}`);
  const terminal = typedTerminal({ roster, nowMs: Date.now });
  const bot = await startOn(database, roster, ['local'], () => [terminal.chat]);
  const endMs = await play(bot, async ({ user, room, event }) => {
    if (event.is !== 'message') throw new Error('The terminal is told messages alone.');
    await terminal.type(`/as ${user}`, room === null ? '/dm' : `/in ${room}`, event.text);
  });
  const book = await bookOf(bot.operation, endMs);
  await bot.stop();
  return book;
};

test(
  'the recorded day in the terminal gives the loads and tons of its tickets',
  { timeout: 900_000 },
  async () => {
    const book = await onTerminal(database.now());
    expect(book).toMatchObject(INVENTED);
    expect(book).toEqual(await replayedBook(database.now()));
  },
);
