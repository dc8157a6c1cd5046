import { and, asc, eq, inArray } from 'drizzle-orm';
import type { Page } from '../ports/book.ts';
import type { Tx } from './db.ts';
import { owedAnswers } from './schema.ts';

/** What a page can do with answers that are to be given later. */
export const owedOn = (tx: Tx, operation: string): Pick<Page, 'owe' | 'owed' | 'settle'> => ({
  owe: async (answers) => {
    if (answers.length === 0) return;
    const rows = answers.map((body) => ({ operation, key: body.key, heardMs: body.heardMs, body }));
    await tx.insert(owedAnswers).values(rows).onConflictDoNothing();
  },
  owed: async () => {
    const rows = await tx
      .select({ body: owedAnswers.body })
      .from(owedAnswers)
      .where(eq(owedAnswers.operation, operation))
      .orderBy(asc(owedAnswers.heardMs), asc(owedAnswers.key));
    return rows.map(({ body }) => body);
  },
  settle: async (keys) => {
    if (keys.length === 0) return;
    await tx
      .delete(owedAnswers)
      .where(and(eq(owedAnswers.operation, operation), inArray(owedAnswers.key, [...keys])));
  },
});
