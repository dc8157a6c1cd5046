import { sql } from 'drizzle-orm';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import type { MigrationConfig } from 'drizzle-orm/migrator';
import { fileURLToPath } from 'node:url';
import type { Db } from './db.ts';

export const MIGRATIONS = fileURLToPath(new URL('../../migrations', import.meta.url));

/** Any number, the same in every version of this program. */
const LOCK = 742_016;

/**
 * Brings the tables up to date. `db` must have a single connection, which keeps the lock until it closes; drizzle takes no
 * lock. Refuses a database that a newer version of this program has changed.
 */
export const migrateWith = async (
  db: Db,
  migrate: (config: MigrationConfig) => Promise<void>,
  migrationsFolder = MIGRATIONS,
): Promise<void> => {
  await db.execute(sql`select pg_advisory_lock(${LOCK})`);
  const known = readMigrationFiles({ migrationsFolder }).map((migration) => migration.folderMillis);
  refuseNewer(known, await appliedMs(db));
  await migrate({ migrationsFolder });
  refuseSkipped(known, await appliedMs(db));
};

/** Creation times of the migrations applied to the database, from drizzle's own table. */
const appliedMs = async (db: Db): Promise<number[]> => {
  const there = sql<string | null>`to_regclass('drizzle.__drizzle_migrations')::text`;
  const [table] = await db.select({ there }).from(sql`(select) as nothing`);
  if (table?.there == null) return [];
  const rows = await db
    .select({ ms: sql`created_at`.mapWith(Number) })
    .from(sql`drizzle.__drizzle_migrations`);
  return rows.map((row) => row.ms);
};

const refuseNewer = (known: readonly number[], applied: readonly number[]): void => {
  const unknown = applied.filter((ms) => !known.includes(ms));
  if (unknown.length === 0) return;
  throw new Error(
    `The database has ${unknown.length} migration(s) that this program does not know, the newest of ` +
      `${new Date(Math.max(...unknown)).toISOString()}: a newer version has used it. ` +
      `Start that version, or restore a backup from before it.`,
  );
};

/** drizzle compares only with the newest one applied, and skips a migration that was merged late. */
const refuseSkipped = (known: readonly number[], applied: readonly number[]): void => {
  const skipped = known.filter((ms) => !applied.includes(ms));
  if (skipped.length === 0) return;
  throw new Error(
    `The migration(s) of ${skipped.map((ms) => new Date(ms).toISOString()).join(', ')} are older than the newest ` +
      `one in the database and were skipped: generate them again.`,
  );
};
