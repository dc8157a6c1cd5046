import type { MatrixClient } from 'matrix-js-sdk';
import { ClientEvent, MatrixError } from 'matrix-js-sdk';
import type { CryptoApi, CryptoCallbacks } from 'matrix-js-sdk/lib/crypto-api/index.js';
import { decodeRecoveryKey } from 'matrix-js-sdk/lib/crypto-api/index.js';
import type { LogLine } from '../../src/ports/log.ts';
import { clientOf, startSyncing } from './connect/client.ts';
import type { Session } from './connect/session.ts';
import { startCrypto } from './crypto.ts';

/** Shows the words to the operator and resolves with what was typed. */
type AskOperator = (words: string) => Promise<string>;

interface Operator {
  ask: AskOperator;
  /** The account's password; null = ask for it if the homeserver wants it. */
  password: string | null;
}

type RecoveryKey = Uint8Array<ArrayBuffer>;

/**
 * Signs the bot's device with the account's own keys, so that people's apps trust it, and stores those keys and a backup of
 * the message keys on the homeserver, encrypted with a recovery key. The first time the recovery key is created and shown
 * once; later, such as for a new device, it is asked for. Repeating this does no harm. The bot must not be running.
 */
export const setUpCrypto = async (session: Session, operator: Operator, log: LogLine): Promise<void> => {
  const keys = keyRing();
  const client = clientOf(session, log, async () => undefined, keys.callbacks);
  try {
    await startCrypto(client, session);
    await synced(client, session);
    const crypto = client.getCrypto();
    if (crypto === undefined) throw new Error('The encryption did not start.');
    if (await client.secretStorage.hasKey()) await takeUp(client, crypto, keys, operator, session);
    else await makeNew(crypto, operator, session);
    await crypto.checkKeyBackupAndEnable();
  } finally {
    client.stopClient();
  }
};

/** Keeps the recovery key while the keys that it decrypts are in use. */
const keyRing = () => {
  let key: RecoveryKey | null = null;
  const callbacks: CryptoCallbacks = {
    getSecretStorageKey: async ({ keys }) => {
      const [id] = Object.keys(keys);
      return id === undefined || key === null ? null : [id, key];
    },
    cacheSecretStorageKey: (_id, _info, made) => {
      key = made;
    },
  };
  return {
    callbacks,
    hold: (held: RecoveryKey): void => {
      key = held;
    },
  };
};

const synced = async (client: MatrixClient, session: Session): Promise<void> => {
  const first = Promise.withResolvers<true>();
  client.once(ClientEvent.Sync, () => {
    first.resolve(true);
  });
  await startSyncing(client, session);
  await first.promise;
};

/** Some homeservers want the password only if keys are replaced, some always: it is asked for when they do. */
const uploadFor =
  (session: Session, { ask, password: known }: Operator) =>
  async <T>(request: (auth: Record<string, unknown> | null) => Promise<T>): Promise<T> => {
    try {
      return await request(null);
    } catch (error) {
      if (!(error instanceof MatrixError) || error.httpStatus !== 401) throw error;
      const password =
        known ?? (await ask(`The homeserver wants the password of ${session.user} to publish the keys: `));
      const identifier = { type: 'm.id.user', user: session.user };
      return await request({
        type: 'm.login.password',
        identifier,
        password,
        session: error.data['session'],
      });
    }
  };

const makeNew = async (crypto: CryptoApi, operator: Operator, session: Session): Promise<void> => {
  const made = await crypto.createRecoveryKeyFromPassphrase();
  await operator.ask(
    `The recovery key of ${session.user} is\n\n    ${made.encodedPrivateKey ?? ''}\n\n` +
      'It is shown only once. Keep it where only people who run the bot can find it: it opens all that the bot can read. ' +
      'Press Enter when you have it. ',
  );
  await crypto.bootstrapCrossSigning({ authUploadDeviceSigningKeys: uploadFor(session, operator) });
  await crypto.bootstrapSecretStorage({ createSecretStorageKey: async () => made, setupNewKeyBackup: true });
};

const takeUp = async (
  client: MatrixClient,
  crypto: CryptoApi,
  keys: ReturnType<typeof keyRing>,
  operator: Operator,
  session: Session,
): Promise<void> => {
  keys.hold(await recoveryKey(client, operator.ask, session));
  // Fetches the account's public keys: without them the private ones can't be used.
  await crypto.userHasCrossSigningKeys();
  await crypto.bootstrapCrossSigning({ authUploadDeviceSigningKeys: uploadFor(session, operator) });
  await crypto.loadSessionBackupPrivateKeyFromSecretStorage();
};

/** Asks until it is the right one. */
const recoveryKey = async (
  client: MatrixClient,
  ask: AskOperator,
  session: Session,
): Promise<RecoveryKey> => {
  const info = (await client.secretStorage.getKey())?.[1];
  for (let words = ''; ; words = 'That is not it. ') {
    const typed = await ask(`${words}The recovery key of ${session.user}, made at the first set-up: `);
    try {
      const key = decodeRecoveryKey(typed);
      if (info !== undefined && (await client.secretStorage.checkKey(key, info))) return key;
    } catch {
      // Mistyped: the check digits are wrong.
    }
  }
};
