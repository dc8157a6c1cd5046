/** The tables. Except in one, every row belongs to an operation, and every composite key starts with it. */
import { isNotNull, isNull, sql } from 'drizzle-orm';
import { bigint, boolean, index, integer, pgTable, primaryKey, text, unique } from 'drizzle-orm/pg-core';
import type { Fact } from '../core/book/facts.ts';
import type { Heard, Said } from '../ports/chat.ts';
import type { OwedAnswer } from '../ports/book.ts';
import type { Outgoing, Recipient } from '../ports/outbox.ts';
import { document, epochMs } from './columns.ts';

const serial = (name: string) => bigint(name, { mode: 'number' }).generatedAlwaysAsIdentity();

/** A writer to the operation's book locks its row. */
export const operations = pgTable('operations', {
  operation: text().primaryKey(),
  /** No message with a slot is due later; null = there is none. Read with the lock, it saves looking for them. */
  slotsUntilMs: epochMs('slots_until_ms'),
});

/** Messages heard, so that one that is delivered twice is handled once. */
export const inbox = pgTable(
  'inbox',
  {
    operation: text().notNull(),
    platform: text().notNull(),
    messageId: text('message_id').notNull(),
    heardMs: epochMs('heard_ms').notNull(),
    body: document().$type<Heard>().notNull(),
    /** Why it could not be handled; null = it was. */
    parked: text(),
  },
  (t) => [
    primaryKey({ columns: [t.operation, t.platform, t.messageId] }),
    index('inbox_edits')
      .on(t.operation, t.platform, sql`(${t.body} -> 'event' ->> 'of')`)
      .where(sql`${t.body} -> 'event' ->> 'is' = 'edit'`),
  ],
);

/** The book. `seq` grows in the order of writing, because an operation has one writer at a time. */
export const facts = pgTable(
  'facts',
  {
    operation: text().notNull(),
    seq: serial('seq').notNull(),
    id: text().notNull(),
    kind: text().notNull(),
    atMs: epochMs('at_ms').notNull(),
    heardMs: epochMs('heard_ms').notNull(),
    cause: text().notNull(),
    body: document().$type<Fact>().notNull(),
  },
  (t) => [primaryKey({ columns: [t.operation, t.seq] }), unique('facts_id').on(t.operation, t.id)],
);

/** Messages to be delivered, and what became of them. Open = `done_ms` is null. */
export const outbox = pgTable(
  'outbox',
  {
    id: serial('id').primaryKey(),
    operation: text().notNull(),
    lane: text().notNull(),
    key: text().notNull(),
    recipient: document().$type<Recipient>().notNull(),
    platform: text().notNull(),
    to: document().$type<Outgoing['to']>().notNull(),
    kind: text().notNull(),
    cause: text().notNull(),
    data: document(),
    said: document().$type<Said>().notNull(),
    repliesTo: text('replies_to'),
    slot: text(),
    urgent: boolean().notNull(),
    notBeforeMs: epochMs('not_before_ms').notNull(),
    expiresMs: epochMs('expires_ms'),
    attempts: integer().notNull().default(0),
    leaseUntilMs: epochMs('lease_until_ms'),
    doneMs: epochMs('done_ms'),
    outcome: text({ enum: ['sent', 'gave-up', 'expired', 'superseded'] }),
    /** Why it was last given back or given up. */
    why: text(),
    messageId: text('message_id'),
  },
  (t) => [
    unique('outbox_key').on(t.operation, t.key),
    index('outbox_open').on(t.operation, t.lane, t.id).where(isNull(t.doneMs)),
    index('outbox_message').on(t.operation, t.platform, t.messageId).where(isNotNull(t.messageId)),
    index('outbox_slot').on(t.operation, t.lane, t.slot, t.id).where(isNotNull(t.slot)),
  ],
);

/** Answers that the transaction of a message promised, and that are given in another transaction. */
export const owedAnswers = pgTable(
  'owed_answers',
  {
    operation: text().notNull(),
    key: text().notNull(),
    heardMs: epochMs('heard_ms').notNull(),
    body: document().$type<OwedAnswer>().notNull(),
  },
  (t) => [primaryKey({ columns: [t.operation, t.key] })],
);

/** Lanes that must wait. */
export const lanes = pgTable(
  'lanes',
  {
    operation: text().notNull(),
    lane: text().notNull(),
    notBeforeMs: epochMs('not_before_ms').notNull(),
  },
  (t) => [primaryKey({ columns: [t.operation, t.lane] })],
);

export const alarms = pgTable(
  'alarms',
  {
    operation: text().notNull(),
    name: text().notNull(),
    dueMs: epochMs('due_ms').notNull(),
  },
  (t) => [primaryKey({ columns: [t.operation, t.name] })],
);

/**
 * Tickets that operations share. The one table without an operation: `id` is a digest of operation, pool and serial, by
 * which an operation finds its own tickets, while nobody can see who the others belong to.
 */
export const pooledTickets = pgTable(
  'pooled_tickets',
  {
    pool: text().notNull(),
    id: text().notNull(),
    serial: text().notNull(),
    joinedMs: epochMs('joined_ms'),
    firstWeighedMs: epochMs('first_weighed_ms'),
    secondWeighedMs: epochMs('second_weighed_ms'),
    heardMs: epochMs('heard_ms').notNull(),
  },
  (t) => [primaryKey({ columns: [t.pool, t.id] }), index('pooled_tickets_heard').on(t.pool, t.heardMs)],
);

/** How far each stream of a platform has been read. */
export const cursors = pgTable(
  'cursors',
  {
    operation: text().notNull(),
    platform: text().notNull(),
    stream: text().notNull(),
    position: text().notNull(),
  },
  (t) => [primaryKey({ columns: [t.operation, t.platform, t.stream] })],
);
