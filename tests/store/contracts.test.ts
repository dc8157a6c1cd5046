import { getTableName, sql } from 'drizzle-orm';
import type { SQL } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openDatabase } from '../../src/store/database.ts';
import type { Database } from '../../src/store/database.ts';
import type { Tx } from '../../src/store/db.ts';
import { answeredQuery, versionsQuery } from '../../src/store/found-again.ts';
import { storeOver } from '../../src/store/open.ts';
import * as schema from '../../src/store/schema.ts';
import { bookContract } from '../contracts/book.ts';
import { cursorsContract } from '../contracts/cursors.ts';
import { outboxContract } from '../contracts/outbox.ts';
import { poolContract } from '../contracts/shared-tickets.ts';
import { fact } from '../contracts/samples.ts';
import type { StoreSetting } from '../contracts/store-setting.ts';
import { startPostgres } from '../support/postgres.ts';

const server = await startPostgres();
afterAll(() => server.stop());

const wipe = async ({ db }: Database): Promise<void> => {
  const names = Object.values(schema).map((table) => sql.identifier(getTableName(table)));
  await db.execute(sql`truncate ${sql.join(names, sql`, `)}`);
};

const OPERATIONS = ['a', 'b', 'fresh operation'];

const settingOver = async (database: Database, second: Database): Promise<StoreSetting> => ({
  store: await storeOver(database, OPERATIONS),
  second: await storeOver(second, OPERATIONS),
  neighbour: await storeOver(database, ['elsewhere']),
  wipe: () => wipe(database),
});

/** How the database goes about a query, as it would with many rows. */
const planOf = (database: Database, query: (tx: Tx) => { getSQL: () => SQL }): Promise<string> =>
  database.db.transaction(async (tx) => {
    await tx.execute(sql`set local enable_seqscan = off`);
    const lines: unknown = await tx.execute(sql`explain ${query(tx).getSQL()}`);
    return JSON.stringify(lines);
  });

const findsByIndex = (of: () => Database): void => {
  test('messages are found again by their ids and not by a look at all, at which a season takes long', async () => {
    const versions = await planOf(of(), (tx) => versionsQuery(tx, 'a', 'local', 'm1'));
    expect(versions).toMatch(/Index Scan using inbox_operation_platform_message_id_pk.*message_id = /);
    expect(versions).toMatch(/Index Scan using inbox_edits.*'of'::text\) = /);
    const answered = await planOf(of(), (tx) => answeredQuery(tx, 'a', 'local', 'm1'));
    expect(answered).toMatch(/Index Scan using outbox_message .*message_id = /);
    expect(versions + answered).not.toMatch(/Seq Scan|Filter/);
  });
};

describe('PGlite', () => {
  let database: Database;
  beforeAll(async () => {
    database = await openDatabase({ memory: true });
  });
  afterAll(() => database.close());
  bookContract(() => settingOver(database, database));
  outboxContract(() => settingOver(database, database));
  cursorsContract(() => settingOver(database, database));
  poolContract(() => settingOver(database, database));
  findsByIndex(() => database);
});

describe.skipIf(server.missing !== null)('Postgres', () => {
  let database: Database;
  let second: Database;
  beforeAll(async () => {
    const url = await server.emptyDatabase();
    database = await openDatabase({ url });
    second = await openDatabase({ url });
  });
  afterAll(() => Promise.all([database.close(), second.close()]));
  bookContract(() => settingOver(database, second));
  outboxContract(() => settingOver(database, second));
  cursorsContract(() => settingOver(database, second));
  poolContract(() => settingOver(database, second));
  findsByIndex(() => database);

  test('operations do not wait for each other: a neighbour’s long replay must not hold up a stop', async () => {
    const { book } = await storeOver(database, ['a', 'b']);
    await book.inOneGo('a', async (page) => {
      await page.write([fact('f1')]);
      await book.inOneGo('b', (other) => other.write([fact('f1')]));
    });
    const entries = await book.inOneGo('b', (page) => page.factsAfter(0));
    expect(entries.map((entry) => entry.fact.id)).toContain('f1');
  });
});
