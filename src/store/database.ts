import { PGlite } from '@electric-sql/pglite';
import { drizzle as drizzleOverPglite } from 'drizzle-orm/pglite';
import { migrate as migratePglite } from 'drizzle-orm/pglite/migrator';
import { drizzle as drizzleOverPostgres } from 'drizzle-orm/postgres-js';
import { migrate as migratePostgres } from 'drizzle-orm/postgres-js/migrator';
import postgres from 'postgres';
import { MS_PER_MINUTE } from '../core/units.ts';
import { openEmbedded } from './embedded.ts';
import { migrateWith } from './migrate.ts';
import type { Db } from './db.ts';

/** `embedded`: PGlite in that directory. `memory`: PGlite without one. `url`: a Postgres server, postgres://... */
export type DatabasePlace = { embedded: string } | { memory: true } | { url: string };

export interface Database {
  db: Db;
  close: () => Promise<void>;
}

/** Opens the database with its tables up to date. */
export const openDatabase = (place: DatabasePlace): Promise<Database> => {
  if ('url' in place) return openPostgres(place.url);
  return 'embedded' in place ? openDirectory(place.embedded) : openMemory();
};

const openMemory = async (): Promise<Database> => {
  const pglite = await PGlite.create();
  return databaseOver(pglite, () => pglite.close());
};

const openDirectory = async (directory: string): Promise<Database> => {
  const { pglite, close } = await openEmbedded(directory);
  return databaseOver(pglite, close);
};

/** The database in a PGlite that is open, with its tables up to date. */
export const databaseOver = async (pglite: PGlite, close: () => Promise<void>): Promise<Database> => {
  const db = drizzleOverPglite(pglite);
  try {
    await migrateWith(db, (config) => migratePglite(db, config));
  } catch (error) {
    await close();
    throw error;
  }
  return { db, close };
};

const openPostgres = async (url: string): Promise<Database> => {
  await migratePostgresAt(url);
  const client = postgres(url, connection);
  return { db: drizzleOverPostgres(client), close: () => client.end({ timeout: CLOSE_TIMEOUT_S }) };
};

const migratePostgresAt = async (url: string): Promise<void> => {
  const client = postgres(url, { ...connection, max: 1 });
  const db = drizzleOverPostgres(client);
  try {
    await migrateWith(db, (config) => migratePostgres(db, config));
  } finally {
    await client.end();
  }
};

/** A connection lost in a transaction never ends by itself, because its rollback cannot be sent (lost-connection.ts). */
const CLOSE_TIMEOUT_S = 2;

const connection = {
  // Otherwise each "already exists, skipping" of a migration is printed.
  onnotice: () => undefined,
  connection: {
    application_name: 'fieldbell',
    // A process cut off in a transaction would keep its operation's lock until TCP gives up, after some 2 h.
    idle_in_transaction_session_timeout: MS_PER_MINUTE,
  },
};
