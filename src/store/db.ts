import type { PgDatabase, PgQueryResultHKT } from 'drizzle-orm/pg-core';

/** drizzle over PGlite or Postgres. */
export type Db = PgDatabase<PgQueryResultHKT>;

/** An open transaction. */
export type Tx = Parameters<Parameters<Db['transaction']>[0]>[0];
