/** PGlite in its own directory: the default database, without a server. */
import { PGlite } from '@electric-sql/pglite';
import { existsSync, mkdirSync, readFileSync, realpathSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { lockDirectory } from './directory-lock.ts';

/**
 * Data directories cannot be read by another PGlite minor or PostgreSQL major version
 * (https://pglite.dev/docs/upgrade).
 */
export const DATA_VERSION = 'PGlite 0.5, PostgreSQL 18';
export const VERSION_FILE = 'version.txt';

/**
 * Opens the directory for this process alone, and creates it if it is missing.
 *
 * PGlite does not sync to disk (https://github.com/electric-sql/pglite/issues/1107): commits survive the process, however
 * it ends, but not a power cut.
 */
export const openEmbedded = async (path: string): Promise<{ pglite: PGlite; close: () => Promise<void> }> => {
  mkdirSync(path, { recursive: true });
  const directory = realpathSync(path);
  const unlock = lockDirectory(directory);
  try {
    checkVersion(directory);
    const pglite = await started(join(directory, 'data'));
    return { pglite, close: () => closed(pglite).finally(unlock) };
  } catch (error) {
    unlock();
    throw error;
  }
};

const checkVersion = (directory: string): void => {
  const file = join(directory, VERSION_FILE);
  if (!existsSync(file)) writeFileSync(file, DATA_VERSION);
  const written = readFileSync(file, 'utf8').trim();
  if (written === DATA_VERSION) return;
  throw new Error(
    `${directory} was written by ${written}, and this program reads ${DATA_VERSION} only. ` +
      `Export it with the program that wrote it, and import that into a new directory.`,
  );
};

const started = async (data: string): Promise<PGlite> => {
  try {
    return await PGlite.create(data);
  } catch (error) {
    // A damaged directory gives a bare "Aborted()" (https://github.com/electric-sql/pglite/issues/884).
    throw new Error(
      `The database in ${data} does not open (${String(error)}): it is probably damaged. ` +
        `Move it away and put the newest backup in its place; without a backup the bot starts with an empty book.`,
      { cause: error },
    );
  }
};

/** PGlite runs no checkpointer: without this the next start replays the whole log. */
const closed = async (pglite: PGlite): Promise<void> => {
  try {
    await pglite.exec('checkpoint');
  } finally {
    await pglite.close();
  }
};
