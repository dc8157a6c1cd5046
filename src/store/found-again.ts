/** Messages found again by the platform's ids, each by an index: a season has tens of thousands. */
import { and, eq, sql } from 'drizzle-orm';
import type { SQL } from 'drizzle-orm';
import { unionAll } from 'drizzle-orm/pg-core';
import type { Heard } from '../ports/chat.ts';
import type { Page } from '../ports/book.ts';
import { inbox, outbox } from './schema.ts';
import type { Tx } from './db.ts';

/** What a page can find again. */
export const foundAgainOn = (tx: Tx, operation: string): Pick<Page, 'versionsOf' | 'answeredBy'> => ({
  versionsOf: async (platform, id) => {
    const rows = await versionsQuery(tx, operation, platform, id);
    const isMessage = (one: Heard): number => Number(one.id === id);
    // In a replayed day, a message and its edit may be heard at the same instant.
    return rows.map((row) => row.body).sort((a, b) => a.heardMs - b.heardMs || isMessage(b) - isMessage(a));
  },
  answeredBy: async (platform, id) => {
    const [answer] = await answeredQuery(tx, operation, platform, id);
    return answer?.repliesTo ?? null;
  },
});

/** The message of that id and its edits. One condition with "or" would read every message of the platform. */
export const versionsQuery = (tx: Tx, operation: string, platform: string, id: string) => {
  const heardWith = (such: SQL) =>
    tx
      .select({ body: inbox.body })
      .from(inbox)
      .where(and(eq(inbox.operation, operation), eq(inbox.platform, platform), such));
  const event = sql`${inbox.body} -> 'event'`;
  const isEdit = sql`${event} ->> 'is' = 'edit' and ${event} ->> 'of' = ${id}`;
  return unionAll(heardWith(eq(inbox.messageId, id)), heardWith(isEdit));
};

/** What the delivered message of that id replies to. */
export const answeredQuery = (tx: Tx, operation: string, platform: string, id: string) =>
  tx
    .select({ repliesTo: outbox.repliesTo })
    .from(outbox)
    .where(and(eq(outbox.operation, operation), eq(outbox.platform, platform), eq(outbox.messageId, id)))
    .limit(1);
