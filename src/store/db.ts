import type { PgDatabase, PgQueryResultHKT } from 'drizzle-orm/pg-core';

/** drizzle over either driver. */
export type Db = PgDatabase<PgQueryResultHKT>;

/** An open transaction. */
export type Tx = Parameters<Parameters<Db['transaction']>[0]>[0];
