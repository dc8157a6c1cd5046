import { and, eq, inArray, isNull, sql } from 'drizzle-orm';
import type { EpochMs } from '../core/units.ts';
import type { Outbox } from '../ports/outbox.ts';
import { claimRows } from './claim.ts';
import { storable } from './columns.ts';
import { explained } from './failure.ts';
import { lanes, outbox } from './schema.ts';
import type { Db } from './db.ts';

/** Ignores messages of other operations in the same database: they go out over other accounts. */
export const outboxOver = (db: Db, ofOperations: readonly string[]): Outbox => ({
  claim: explained('Outbox, leasing messages', (platforms, nowMs, leaseMs, limit) =>
    claimRows(db, { ofOperations, platforms, nowMs }, leaseMs, limit),
  ),
  sent: explained('Outbox, noting a delivery', async (id, messageId, nowMs) => {
    // Mark as sent even if the row expired or was superseded meanwhile; people have seen it.
    await db.update(outbox).set({ doneMs: nowMs, outcome: 'sent', messageId }).where(eq(outbox.id, id));
  }),
  later: explained('Outbox, giving a message back', (id, untilMs, why) => giveBack(db, id, untilMs, why)),
  again: explained('Outbox, putting a message off', async (id, untilMs, why) => {
    await db
      .update(outbox)
      .set({ leaseUntilMs: null, notBeforeMs: untilMs, why: storable(why) })
      .where(and(eq(outbox.id, id), isNull(outbox.doneMs)));
  }),
  giveUp: explained('Outbox, giving up a message', async (id, why, nowMs) => {
    await db
      .update(outbox)
      .set({ doneMs: nowMs, outcome: 'gave-up', why: storable(why) })
      .where(and(eq(outbox.id, id), isNull(outbox.doneMs)));
  }),
  returnLeases: explained('Outbox, returning leases', async () => {
    await db
      .update(outbox)
      .set({ leaseUntilMs: null })
      .where(and(isNull(outbox.doneMs), inArray(outbox.operation, [...ofOperations])));
  }),
  nextMs: explained('Outbox, looking ahead', () => earliestMs(db, ofOperations)),
});

const giveBack = (db: Db, id: number, untilMs: EpochMs, why: string): Promise<void> =>
  db.transaction(async (tx) => {
    const [row] = await tx
      .update(outbox)
      .set({ leaseUntilMs: null, why: storable(why) })
      .where(and(eq(outbox.id, id), isNull(outbox.doneMs)))
      .returning({ operation: outbox.operation, lane: outbox.lane });
    if (row === undefined) return;
    await tx
      .insert(lanes)
      .values({ ...row, notBeforeMs: untilMs })
      .onConflictDoUpdate({
        target: [lanes.operation, lanes.lane],
        set: { notBeforeMs: sql`greatest(${lanes.notBeforeMs}, excluded.not_before_ms)` },
      });
  });

const earliestMs = async (db: Db, ofOperations: readonly string[]): Promise<EpochMs | null> => {
  // `greatest` ignores nulls.
  const lentUntil = sql`max(${outbox.leaseUntilMs}) over (partition by ${outbox.operation}, ${outbox.lane})`;
  const open = db
    .select({ ms: sql`greatest(${outbox.notBeforeMs}, ${lanes.notBeforeMs}, ${lentUntil})`.as('ms') })
    .from(outbox)
    .leftJoin(lanes, and(eq(lanes.operation, outbox.operation), eq(lanes.lane, outbox.lane)))
    .where(and(isNull(outbox.doneMs), inArray(outbox.operation, [...ofOperations])))
    .as('open');
  const [next] = await db.select({ ms: sql<number | null>`min(${open.ms})`.mapWith(Number) }).from(open);
  return next?.ms ?? null;
};
