import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import setGlobalVars from 'indexeddbshim';
import type { MatrixClient } from 'matrix-js-sdk';
import type { Session } from './connect/session.ts';

let openedIn: string | null = null;

/**
 * The SDK stores its keys in IndexedDB or not at all (https://github.com/matrix-org/matrix-js-sdk/issues/4769).
 * indexeddbshim provides IndexedDB on SQLite files; it is global, so one process has one directory.
 */
const openStore = (directory: string): void => {
  if (openedIn === directory) return;
  if (openedIn !== null)
    throw new Error(
      `The encryption keys in ${openedIn} are open already: run each account in its own process.`,
    );
  mkdirSync(directory, { recursive: true, mode: 0o700 });
  // Null = the global object, which the types do not allow.
  setGlobalVars(null as never, { checkOrigin: false, databaseBasePath: directory, addNonIDBGlobals: false });
  openedIn = directory;
};

/** Public only on the class behind the SDK's interface (its src/common-crypto/CryptoBackend.ts). */
interface TracksUsers {
  markAllTrackedUsersAsDirty: () => Promise<void>;
}

const tracksUsers = (crypto: object): crypto is TracksUsers => 'markAllTrackedUsersAsDirty' in crypto;

/** Opens the keys of the session, so that what was readable before a restart stays readable. */
export const startCrypto = async (client: MatrixClient, session: Session): Promise<void> => {
  openStore(join(session.directory, 'keys'));
  await client.initRustCrypto({
    cryptoDatabasePrefix: 'fieldbell',
    storageKey: new Uint8Array(Buffer.from(session.storageKey, 'base64')),
  });
  // A fresh sync does not list devices that were added while the bot was down; they would get no keys.
  const crypto = client.getCrypto();
  if (crypto !== undefined && tracksUsers(crypto)) await crypto.markAllTrackedUsersAsDirty();
};
