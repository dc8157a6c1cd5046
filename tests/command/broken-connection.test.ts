import postgres from 'postgres';
import { afterAll, describe, expect, test } from 'vitest';
import { startFieldbell } from '../support/fieldbell.ts';
import { startPostgres } from '../support/postgres.ts';
import { waitFor } from '../support/wait-for.ts';

const server = await startPostgres();
afterAll(() => server.stop());

describe.skipIf(server.missing)('a database connection that breaks in the middle of a message', () => {
  test('costs a second try: not the message, and not the bot', { timeout: 120_000 }, async () => {
    const url = await server.emptyDatabase();
    const bot = startFieldbell([], { FIELDBELL_DATABASE: url, FIELDBELL_HEALTH_PORT: '0' });
    bot.type('/as ben', 'loaded');
    await bot.shows('Truck 2: loaded');

    const administrator = postgres(url, { max: 2 });
    await administrator.begin(async (holding) => {
      await holding`select * from operations for update`;
      bot.type('in line');
      const pid = await waitFor('session of the bot that waits for the lock', async () => {
        const [waiting] = await administrator<{ pid: number }[]>`
          select pid from pg_stat_activity
          where application_name = 'fieldbell' and wait_event_type = 'Lock' and datname = current_database()`;
        return waiting?.pid;
      });
      await administrator`select pg_terminate_backend(${pid})`;
    });
    await administrator.end();

    await bot.shows('Truck 2: in the scale line');
    const { code, out, err } = await bot.end();
    expect(code).toBe(0);
    expect(out).not.toContain('Your message is kept');
    expect(err).not.toContain('A message could not be handled');
  });
});
