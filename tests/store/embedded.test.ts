import { sql } from 'drizzle-orm';
import { readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openDatabase } from '../../src/store/database.ts';
import { DATA_VERSION, VERSION_FILE } from '../../src/store/embedded.ts';
import { openStore } from '../../src/store/open.ts';
import { fact, NOON_MS } from '../contracts/samples.ts';
import { startChild } from '../support/child.ts';
import { temporaryDirectory } from '../support/temporary.ts';

const WRITER = new URL('writer.ts', import.meta.url);

/** Ids of the facts, and keys of the messages, that the directory holds. */
const contentOf = async (directory: string) => {
  const store = await openStore({ embedded: directory }, ['a']);
  const entries = await store.book.inOneGo('a', (page) => page.factsAfter(0));
  const lent = await store.outbox.claim(['local'], NOON_MS, 0, 100_000);
  await store.close();
  return { facts: entries.map((entry) => entry.fact.id), messages: lent.map(({ key }) => key) };
};

// A new PGlite takes seconds, on a busy machine many.
describe('embedded database', { timeout: 240_000 }, () => {
  test('a killed process loses nothing that it had confirmed, and leaves no half work', async () => {
    const directory = temporaryDirectory();
    for (const enough of [5, 17]) {
      const writer = startChild(WRITER, directory);
      await writer.linesAtLeast(enough);
      const confirmed = await writer.kill();
      const { facts, messages } = await contentOf(directory);
      expect(facts).toEqual(facts.map((_, i) => String(i + 1)));
      expect(facts).toEqual(expect.arrayContaining([...confirmed]));
      expect(messages).toEqual(facts);
    }
  });

  test('a second process is refused while the first one writes', async () => {
    const directory = temporaryDirectory();
    const writer = startChild(WRITER, directory);
    await writer.linesAtLeast(1);
    const refusal = openStore({ embedded: directory }, ['a']);
    await expect(refusal).rejects.toThrow(new RegExp(`Process ${writer.pid} .*holds ${directory}`));
    await writer.kill();
  });

  test('a directory of another version is refused before it is touched', async () => {
    const directory = temporaryDirectory();
    writeFileSync(join(directory, VERSION_FILE), 'PGlite 0.4, PostgreSQL 17\n');
    const refusal = openStore({ embedded: directory }, ['a']);
    await expect(refusal).rejects.toThrow(/was written by PGlite 0\.4, PostgreSQL 17, .*Export it/);
  });

  test('the version written beside the data is the one that runs', async () => {
    const directory = temporaryDirectory();
    const database = await openDatabase({ embedded: directory });
    const version = sql<string>`current_setting('server_version')`;
    const [server] = await database.db.select({ version }).from(sql`(select) as nothing`);
    await database.close();
    const manifest = new URL('../../node_modules/@electric-sql/pglite/package.json', import.meta.url);
    const pglite = /"version": "(\d+\.\d+)\./.exec(readFileSync(manifest, 'utf8'))?.[1];
    const running = `PGlite ${pglite ?? '?'}, PostgreSQL ${server?.version.split('.')[0] ?? '?'}`;
    expect(DATA_VERSION).toBe(running);
    expect(readFileSync(join(directory, VERSION_FILE), 'utf8')).toBe(running);
  });

  test('a damaged database is reported with what to do, and stays free for the next try', async () => {
    const directory = temporaryDirectory();
    const store = await openStore({ embedded: directory }, ['a']);
    await store.book.inOneGo('a', (page) => page.write([fact('f1')]));
    await store.close();
    truncateSync(join(directory, 'data', 'global', 'pg_control'), 100);
    const open = () => openStore({ embedded: directory }, ['a']);
    await expect(open()).rejects.toThrow(/does not open .* put the newest backup in its place/);
    await expect(open()).rejects.toThrow(/does not open/);
  });
});
