import type { Book } from '../ports/book.ts';
import type { Cursors } from '../ports/cursor.ts';
import type { UnreadPhrases } from '../ports/phrases.ts';
import { phrasesOver } from './phrases.ts';
import type { Outbox } from '../ports/outbox.ts';
import { bookOver } from './book.ts';
import { cursorsOver } from './cursors.ts';
import { openDatabase } from './database.ts';
import type { Database, DatabasePlace } from './database.ts';
import { outboxOver } from './outbox.ts';
import { operations } from './schema.ts';

export interface Store {
  book: Book;
  outbox: Outbox;
  phrases: UnreadPhrases;
  cursorsOf: (operation: string) => Cursors;
  close: () => Promise<void>;
}

/** Opens the book and outbox of this installation's operations, and creates or updates the tables first. */
export const openStore = async (place: DatabasePlace, ofOperations: readonly string[]): Promise<Store> => {
  const store = await storeOver(await openDatabase(place), ofOperations);
  // Nobody else can have the directory open, so who leased messages is gone: they need not wait for the leases to end.
  if ('embedded' in place) await store.outbox.returnLeases();
  return store;
};

export const storeOver = async (database: Database, ofOperations: readonly string[]): Promise<Store> => {
  const rows = ofOperations.map((operation) => ({ operation }));
  if (rows.length > 0) await database.db.insert(operations).values(rows).onConflictDoNothing();
  return {
    book: bookOver(database.db),
    outbox: outboxOver(database.db, ofOperations),
    phrases: phrasesOver(database.db),
    cursorsOf: (operation) => cursorsOver(database.db, operation),
    close: database.close,
  };
};
