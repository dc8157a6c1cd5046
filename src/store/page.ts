import { and, asc, desc, eq, gt, gte, isNotNull, lte, max, or, sql } from 'drizzle-orm';
import type { Fact } from '../core/book/facts.ts';
import type { EpochMs } from '../core/units.ts';
import type { Page, Shown } from '../ports/book.ts';
import type { Heard } from '../ports/chat.ts';
import { storable } from './columns.ts';
import { completed } from './earlier-facts.ts';
import { owedOn } from './owed-answers.ts';
import { rowFrom } from './outbox-row.ts';
import { sharedTicketsOn } from './shared-tickets.ts';
import { alarms, facts, inbox, outbox } from './schema.ts';
import type { Tx } from './db.ts';

/** The page of one operation in an open transaction that holds the operation's lock. */
export const openPage = (tx: Tx, operation: string): Page => ({
  receive: async (heard) => {
    const rows = await tx
      .insert(inbox)
      .values(inboxRow(operation, heard))
      .onConflictDoNothing()
      .returning({ messageId: inbox.messageId });
    return rows.length > 0 ? 'new' : 'known';
  },

  versionsOf: (platform, id) => versionsOf(tx, operation, platform, id),

  answeredBy: (platform, id) => answeredBy(tx, operation, platform, id),

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

  shown: (kind, sinceMs) => shown(tx, operation, kind, sinceMs),

  enqueue: async (messages) => {
    if (messages.length === 0) return;
    await tx
      .insert(outbox)
      .values(messages.map((message) => rowFrom(operation, message)))
      .onConflictDoNothing();
  },

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

/** Leaves out messages that were never delivered. */
const shown = async (tx: Tx, operation: string, kind: string, sinceMs: EpochMs): Promise<Shown[]> => {
  const { lane, slot, recipient, platform, to, notBeforeMs, outcome } = outbox;
  const isOfKind = and(eq(outbox.operation, operation), eq(outbox.kind, kind), gte(notBeforeMs, sinceMs));
  const rows = await tx
    .selectDistinctOn([lane], { slot, recipient, platform, to, notBeforeMs, outcome })
    .from(outbox)
    .where(and(isOfKind, isNotNull(slot)))
    .orderBy(asc(lane), desc(outbox.id));
  return rows.flatMap(({ slot: known, outcome: became, ...row }) =>
    known === null || became === 'gave-up' || became === 'expired' ? [] : [{ ...row, slot: known }],
  );
};

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

const versionsOf = async (tx: Tx, operation: string, platform: string, id: string): Promise<Heard[]> => {
  const isEdit = sql`${inbox.body} -> 'event' ->> 'is' = 'edit' and ${inbox.body} -> 'event' ->> 'of' = ${id}`;
  const isMessage = eq(inbox.messageId, id);
  const rows = await tx
    .select({ body: inbox.body })
    .from(inbox)
    .where(and(eq(inbox.operation, operation), eq(inbox.platform, platform), or(isMessage, isEdit)))
    // In a replayed day, a message and its edit may be heard at the same instant.
    .orderBy(asc(inbox.heardMs), desc(isMessage));
  return rows.map((row) => row.body);
};

const answeredBy = async (
  tx: Tx,
  operation: string,
  platform: string,
  id: string,
): Promise<string | null> => {
  const [answer] = await tx
    .select({ repliesTo: outbox.repliesTo })
    .from(outbox)
    .where(and(eq(outbox.operation, operation), eq(outbox.platform, platform), eq(outbox.messageId, id)))
    .limit(1);
  return answer?.repliesTo ?? null;
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
