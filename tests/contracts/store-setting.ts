import type { Store } from '../../src/store/open.ts';

/** What a store contract runs on. */
export interface StoreSetting {
  store: Store;
  /** The same database as another process sees it; PGlite has one user only, and gives the same store again. */
  second: Store;
  /** The same database, opened for an operation of somebody else. */
  neighbour: Store;
  /** Empties all tables. */
  wipe: () => Promise<void>;
}
