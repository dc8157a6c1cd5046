/** Databases for tests that only need one. How a database is made anew has tests of its own in tests/store. */
import { PGlite } from '@electric-sql/pglite';
import { databaseOver } from '../../src/store/database.ts';
import type { Database } from '../../src/store/database.ts';

const made: { image: Promise<Blob> | null } = { image: null };

const imageOfNew = async (): Promise<Blob> => {
  const pglite = await PGlite.create();
  await databaseOver(pglite, () => pglite.close());
  const image = await pglite.dumpDataDir('none');
  await pglite.close();
  return image;
};

/** A database of its own in memory, with empty tables: a copy of one that is made once, in a quarter of the time. */
export const freshDatabase = async (): Promise<Database> => {
  made.image ??= imageOfNew();
  const pglite = await PGlite.create({ loadDataDir: await made.image });
  return databaseOver(pglite, () => pglite.close());
};
