import { PGlite } from '@electric-sql/pglite';
import { sql } from 'drizzle-orm';
import { drizzle } from 'drizzle-orm/pglite';
import { migrate } from 'drizzle-orm/pglite/migrator';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { openDatabase } from '../../src/store/database.ts';
import type { DatabasePlace } from '../../src/store/database.ts';
import { openStore, storeOver } from '../../src/store/open.ts';
import { MIGRATIONS, migrateWith } from '../../src/store/migrate.ts';
import { NOON_MS, fact } from '../contracts/samples.ts';
import { startPostgres } from '../support/postgres.ts';
import { temporaryDirectory } from '../support/temporary.ts';
import type { Db } from '../../src/store/db.ts';

/** Databases out there have had these files: a change of the tables is a new file, never an edit. */
const RELEASED = {
  '0000_start.sql': '4296e52546992fc266f296318de1629596c9a2dee1088091c816f898f4bea78d',
  '0001_cursors.sql': 'fa6c4d843661d41c623ca41d20062a33edfd38ded6a096805ddd3f2b94286a08',
  '0002_pooled_tickets.sql': '92eba660c65a93b8f1c2bf2ce6d2ae849263bf229c7cc15c0a103a73062fb475',
  '0003_owed_answers.sql': '97f789c135180d2f8ca5842dcad529d5638583166d3ffc34bb4747799fd480cb',
  '0004_look_ups.sql': 'ea687ab7b63dbc8b1490bc1644a88e1701e3bdbb5e9c1760fc75875d35335e9e',
};

const server = await startPostgres();
afterAll(() => server.stop());

const columnsOf = async (place: DatabasePlace) => {
  const { db, close } = await openDatabase(place);
  const columns = await db
    .select({
      column: sql<string>`table_name || '.' || column_name`.as('column'),
      type: sql<string>`data_type`,
      nullable: sql<string>`is_nullable`,
      default: sql<string | null>`column_default`,
      identity: sql<string>`is_identity`,
    })
    .from(sql`information_schema.columns`)
    .where(sql`table_schema = 'public'`)
    .orderBy(sql`table_name, ordinal_position`);
  const indexes = await db
    .select({ definition: sql<string>`indexdef` })
    .from(sql`pg_indexes`)
    .where(sql`schemaname = 'public'`)
    .orderBy(sql`indexname`);
  await close();
  return { columns, indexes };
};

/** Writes down a migration as if another version of the program had made it. */
const pretendMigration = (db: Db, atMs: number) =>
  db.execute(sql`insert into drizzle.__drizzle_migrations (hash, created_at) values ('other', ${atMs})`);

// A new PGlite takes seconds, on a busy machine many.
const SLOW = { timeout: 240_000 };

describe('migrations', SLOW, () => {
  test('released files are never edited', () => {
    const files = readdirSync(MIGRATIONS).filter((file) => file.endsWith('.sql'));
    const hashOf = (file: string) =>
      createHash('sha256')
        .update(readFileSync(join(MIGRATIONS, file)))
        .digest('hex');
    expect(Object.fromEntries(files.map((file) => [file, hashOf(file)]))).toEqual(RELEASED);
  });

  test('a migration merged later with an older date is reported: drizzle skips it silently', async () => {
    const pglite = await PGlite.create();
    const db = drizzle(pglite);
    const install = (folder: string) => migrateWith(db, (config) => migrate(db, config), folder);
    await install(folderWith([{ tag: '0000_start', when: Date.UTC(2026, 1) }]));
    const late = { tag: '0001_late', when: Date.UTC(2026, 0) };
    const merged = install(folderWith([{ tag: '0000_start', when: Date.UTC(2026, 1) }, late]));
    await expect(merged).rejects.toThrow(/of 2026-01-01T00:00:00\.000Z are older .* generate them again/);
    await pglite.close();
  });

  test('a board that was shown before its operation kept a bound is still known', async () => {
    const pglite = await PGlite.create();
    const db = drizzle(pglite);
    const install = (folder: string) => migrateWith(db, (config) => migrate(db, config), folder);
    await install(upTo('0003_owed_answers'));
    await db.execute(sql`insert into operations values ('a'), ('b')`);
    const board = { operation: 'a', lane: 'local/crew', key: 'b1', kind: 'board', slot: 'board en local:m1' };
    const rest = sql`'{"room":"crew"}', 'local', '{"room":"crew"}', 'local:m1', '{}', false, ${NOON_MS}`;
    await db.execute(
      sql`insert into outbox (operation, lane, key, kind, slot, recipient, platform, "to", cause, said, urgent, not_before_ms)
          values (${sql.join(Object.values(board), sql`, `)}, ${rest})`,
    );
    await install(MIGRATIONS);
    const { book } = await storeOver({ db, close: () => pglite.close() }, []);
    const shown = (operation: string) => book.inOneGo(operation, (page) => page.shown('board', NOON_MS));
    expect((await shown('a')).map(({ slot }) => slot)).toEqual([board.slot]);
    expect(await shown('b')).toEqual([]);
    await pglite.close();
  });
});

/** A folder with the migrations up to that one. */
const upTo = (last: string): string => {
  const folder = temporaryDirectory();
  cpSync(MIGRATIONS, folder, { recursive: true });
  const journal = join(folder, 'meta', '_journal.json');
  const { entries, ...kept } = JSON.parse(readFileSync(journal, 'utf8')) as { entries: { tag: string }[] };
  const known = entries.slice(0, entries.findIndex(({ tag }) => tag === last) + 1);
  writeFileSync(journal, JSON.stringify({ ...kept, entries: known }));
  return folder;
};

/** A folder of migrations as drizzle-kit lays it out; each makes a table of its own. */
const folderWith = (entries: readonly { tag: string; when: number }[]): string => {
  const folder = temporaryDirectory();
  mkdirSync(join(folder, 'meta'));
  writeFileSync(join(folder, 'meta', '_journal.json'), JSON.stringify({ entries }));
  for (const { tag } of entries)
    writeFileSync(join(folder, `${tag}.sql`), `create table "${tag}" (n integer)`);
  return folder;
};

describe.skipIf(server.missing !== null)('migrations on Postgres', SLOW, () => {
  test('both databases get the same tables', async () => {
    const onPostgres = await columnsOf({ url: await server.emptyDatabase() });
    expect(onPostgres.columns.length).toBeGreaterThan(40);
    expect(await columnsOf({ memory: true })).toEqual(onPostgres);
  });

  test('several processes may install at once, and again: nothing is lost', async () => {
    const url = await server.emptyDatabase();
    const stores = await Promise.all(Array.from({ length: 4 }, () => openStore({ url }, ['a', 'b'])));
    await stores[0]?.book.inOneGo('a', (page) => page.write([fact('f1')]));
    const again = await openStore({ url }, ['a']);
    const facts = await again.book.inOneGo('a', (page) => page.factsAfter(0));
    expect(facts.map((entry) => entry.fact.id)).toEqual(['f1']);
    await Promise.all([...stores, again].map((store) => store.close()));
  });

  test('a database that a newer version has changed is refused', async () => {
    const url = await server.emptyDatabase();
    const { db, close } = await openDatabase({ url });
    await pretendMigration(db, Date.UTC(2126, 0, 1));
    await close();
    await expect(openDatabase({ url })).rejects.toThrow(
      /newest of 2126-01-01T00:00:00.000Z: a newer version/,
    );
  });

  test('a server that is not there is an error, not a wait', async () => {
    await expect(openDatabase({ url: 'postgres://postgres@127.0.0.1:1/none' })).rejects.toThrow();
  });
});
