import { createHash } from 'node:crypto';
import { and, asc, eq, gte, inArray, lt, sql } from 'drizzle-orm';
import type { EpochMs } from '../core/units.ts';
import type { Page } from '../ports/book.ts';
import { pooledTickets } from './schema.ts';
import type { SharedTicket } from '../core/harvest/harvest.ts';
import type { Tx } from './db.ts';

const idOf = (operation: string, { pool, serial }: SharedTicket): string =>
  createHash('sha256')
    .update(JSON.stringify([operation, pool, serial]))
    .digest('hex');

/** The methods of a page for tickets that operations share. */
export const sharedTicketsOn = (tx: Tx, operation: string): Pick<Page, 'shareTickets' | 'sharedBy'> => ({
  shareTickets: (changes, forgetMs) => shareTickets(tx, operation, changes, forgetMs),
  sharedBy: (pools, fromMs, beforeMs) => sharedBy(tx, operation, pools, fromMs, beforeMs),
});

const shareTickets = async (
  tx: Tx,
  operation: string,
  { put, withdrawn }: Parameters<Page['shareTickets']>[0],
  forgetMs: EpochMs,
): Promise<void> => {
  for (const ticket of withdrawn)
    await tx
      .delete(pooledTickets)
      .where(and(eq(pooledTickets.pool, ticket.pool), eq(pooledTickets.id, idOf(operation, ticket))));
  if (put.length === 0) return;
  const rows = put.map((ticket) => ({ id: idOf(operation, ticket), ...ticket }));
  await tx
    .insert(pooledTickets)
    .values(rows)
    .onConflictDoUpdate({
      target: [pooledTickets.pool, pooledTickets.id],
      set: {
        joinedMs: sql`excluded.joined_ms`,
        firstWeighedMs: sql`excluded.first_weighed_ms`,
        secondWeighedMs: sql`excluded.second_weighed_ms`,
        heardMs: sql`excluded.heard_ms`,
      },
    });
  const pools = [...new Set(put.map(({ pool }) => pool))];
  // Two operations that clean up at once must not wait for each other's rows.
  const old = tx
    .select({ id: pooledTickets.id })
    .from(pooledTickets)
    .where(and(inArray(pooledTickets.pool, pools), lt(pooledTickets.heardMs, forgetMs)))
    .for('update', { skipLocked: true });
  await tx.delete(pooledTickets).where(inArray(pooledTickets.id, old));
};

const sharedBy = async (
  tx: Tx,
  operation: string,
  pools: readonly string[],
  fromMs: EpochMs,
  beforeMs: EpochMs,
): Promise<SharedTicket[]> => {
  if (pools.length === 0) return [];
  const { heardMs } = pooledTickets;
  const rows = await tx
    .select()
    .from(pooledTickets)
    .where(and(inArray(pooledTickets.pool, [...pools]), gte(heardMs, fromMs), lt(heardMs, beforeMs)))
    .orderBy(asc(heardMs), asc(pooledTickets.id));
  return rows.flatMap(({ id, ...ticket }) => (id === idOf(operation, ticket) ? [] : [ticket]));
};
