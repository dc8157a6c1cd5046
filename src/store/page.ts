import { and, asc, eq, gt, lte, max } from 'drizzle-orm';
import type { Fact } from '../core/book/facts.ts';
import type { EpochMs } from '../core/units.ts';
import type { Page } from '../ports/book.ts';
import type { Heard } from '../ports/chat.ts';
import { storable } from './columns.ts';
import { completed } from './earlier-facts.ts';
import { foundAgainOn } from './found-again.ts';
import { owedOn } from './owed-answers.ts';
import { sharedTicketsOn } from './shared-tickets.ts';
import { slotsOn } from './slots.ts';
import { alarms, facts, inbox } from './schema.ts';
import type { operations } from './schema.ts';
import type { Tx } from './db.ts';

/** The page of one operation in an open transaction that holds the operation's lock, with the row that it locks. */
export const openPage = (tx: Tx, { operation, slotsUntilMs }: typeof operations.$inferSelect): Page => ({
  receive: async (heard) => {
    const rows = await tx
      .insert(inbox)
      .values(inboxRow(operation, heard))
      .onConflictDoNothing()
      .returning({ messageId: inbox.messageId });
    return rows.length > 0 ? 'new' : 'known';
  },

  ...foundAgainOn(tx, operation),

  factsAfter: async (seq) => {
    const rows = await tx
      .select({ seq: facts.seq, fact: facts.body })
      .from(facts)
      .where(and(eq(facts.operation, operation), gt(facts.seq, seq)))
      .orderBy(asc(facts.seq));
    return rows.map((row) => ({ seq: row.seq, fact: completed(row.fact) }));
  },

  write: async (added) => {
    if (added.length === 0) return lastSeq(tx, operation);
    const rows = added.map((fact) => factRow(operation, fact));
    const written = await tx.insert(facts).values(rows).returning({ seq: facts.seq });
    return Math.max(...written.map((row) => row.seq));
  },

  ...slotsOn(tx, operation, slotsUntilMs),

  ...owedOn(tx, operation),

  wakeAt: (name, dueMs) => wakeAt(tx, operation, name, dueMs),

  nextAlarm: async (nowMs) => {
    const [alarm] = await tx
      .select({ name: alarms.name, dueMs: alarms.dueMs })
      .from(alarms)
      .where(and(eq(alarms.operation, operation), lte(alarms.dueMs, nowMs)))
      .orderBy(asc(alarms.dueMs), asc(alarms.name))
      .limit(1);
    return alarm ?? null;
  },

  ...sharedTicketsOn(tx, operation),

  park: async (heard, why) => {
    const parked = storable(why);
    await tx
      .insert(inbox)
      .values({ ...inboxRow(operation, heard), parked })
      .onConflictDoUpdate({ target: [inbox.operation, inbox.platform, inbox.messageId], set: { parked } });
  },
});

const wakeAt = async (tx: Tx, operation: string, name: string, dueMs: EpochMs | null): Promise<void> => {
  if (dueMs === null) {
    await tx.delete(alarms).where(and(eq(alarms.operation, operation), eq(alarms.name, name)));
    return;
  }
  await tx
    .insert(alarms)
    .values({ operation, name, dueMs })
    .onConflictDoUpdate({ target: [alarms.operation, alarms.name], set: { dueMs } });
};

const inboxRow = (operation: string, heard: Heard) => ({
  operation,
  platform: heard.platform,
  messageId: heard.id,
  heardMs: heard.heardMs,
  body: heard,
});

const factRow = (operation: string, fact: Fact) => ({
  operation,
  id: fact.id,
  kind: fact.kind,
  atMs: fact.atMs,
  heardMs: fact.heardMs,
  cause: fact.cause,
  body: fact,
});

const lastSeq = async (tx: Tx, operation: string): Promise<number> => {
  const [last] = await tx
    .select({ seq: max(facts.seq) })
    .from(facts)
    .where(eq(facts.operation, operation));
  return last?.seq ?? 0;
};
