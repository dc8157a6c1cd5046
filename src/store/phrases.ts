import { and, eq, inArray } from 'drizzle-orm';
import type { UnreadPhrases } from '../ports/phrases.ts';
import { explained } from './failure.ts';
import { outbox } from './schema.ts';
import type { Db } from './db.ts';

const saidIn = (kind: string, data: unknown): string[] => {
  if (typeof data !== 'object' || data === null || !('said' in data) || typeof data.said !== 'string')
    return [];
  const isUnread = kind === 'offer' || ('problem' in data && data.problem === 'not-understood');
  return isUnread ? [data.said] : [];
};

/** They stand in what was sent back: "I did not get that", or which of these was meant. */
export const phrasesOver = (db: Db): UnreadPhrases => ({
  unread: explained('Outbox, looking for what was not understood', async (operation) => {
    const rows = await db
      .select({ kind: outbox.kind, data: outbox.data })
      .from(outbox)
      .where(and(eq(outbox.operation, operation), inArray(outbox.kind, ['question', 'offer'])))
      .orderBy(outbox.id);
    return rows.flatMap(({ kind, data }) => saidIn(kind, data));
  }),
});
