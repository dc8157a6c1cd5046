import { eq } from 'drizzle-orm';
import type { Book, Page } from '../ports/book.ts';
import { explained } from './failure.ts';
import { openPage } from './page.ts';
import { operations } from './schema.ts';
import type { Db, Tx } from './db.ts';

export const bookOver = (db: Db): Book => ({
  inOneGo: (operation, work) =>
    db.transaction(async (tx) => {
      const { page, failures } = watched(openPage(tx, await lock(tx, operation)), operation);
      const result = await work(page);
      // A failed statement dooms the transaction even if the work caught the error: the commit would then roll back
      // silently.
      if (failures[0] !== undefined) throw failures[0];
      return result;
    }),
});

type Row = typeof operations.$inferSelect;

/** Waits until nobody else is writing to the operation's book. */
const lock = async (tx: Tx, operation: string): Promise<Row> => {
  const known = await locked(tx, operation);
  if (known) return known;
  // An insert locks the row as well; if another transaction was faster, its row exists now.
  const [made] = await tx.insert(operations).values({ operation }).onConflictDoNothing().returning();
  const row = made ?? (await locked(tx, operation));
  if (!row) throw new Error(`The row of operation "${operation}" is gone`);
  return row;
};

const locked = async (tx: Tx, operation: string): Promise<Row | undefined> => {
  const [row] = await tx.select().from(operations).where(eq(operations.operation, operation)).for('update');
  return row;
};

const watched = (page: Page, operation: string): { page: Page; failures: readonly Error[] } => {
  const failures: Error[] = [];
  const step = <Args extends unknown[], Result>(doing: string, run: (...args: Args) => Promise<Result>) =>
    explained(`Book of "${operation}", ${doing}`, run, (failure) => failures.push(failure));
  return {
    failures,
    page: {
      receive: step('receiving a message', page.receive),
      versionsOf: step('reading the inbox', page.versionsOf),
      answeredBy: step('reading the outbox', page.answeredBy),
      factsAfter: step('reading facts', page.factsAfter),
      write: step('writing facts', page.write),
      shown: step('reading what is shown', page.shown),
      reach: step('reading who was reached', page.reach),
      showing: step('reading who sees a message', page.showing),
      enqueue: step('queueing messages', page.enqueue),
      owe: step('promising answers', page.owe),
      owed: step('reading promised answers', page.owed),
      settle: step('settling promised answers', page.settle),
      wakeAt: step('setting an alarm', page.wakeAt),
      nextAlarm: step('reading alarms', page.nextAlarm),
      shareTickets: step('sharing tickets', page.shareTickets),
      sharedBy: step('reading shared tickets', page.sharedBy),
      park: step('parking a message', page.park),
    },
  };
};
