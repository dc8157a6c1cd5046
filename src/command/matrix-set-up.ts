/** Guided set-up of the encryption on Matrix: run once in a terminal while the bot is stopped. */
import { createInterface } from 'node:readline';
import { reasonOf } from '../core/reason.ts';
import { openSession } from '../../adapters/matrix/connect/session.ts';
import { setUpCrypto } from '../../adapters/matrix/set-up-crypto.ts';
import { readEnvironment } from '../settings/environment.ts';
import type { MatrixAccount } from '../settings/matrix.ts';
import { matrixOf } from '../settings/matrix.ts';
import { EXIT_SETTINGS } from './exit-codes.ts';

const accountOrExit = (): MatrixAccount => {
  const read = readEnvironment(process.env);
  const faults = 'faults' in read ? read.faults : [];
  const account = 'faults' in read ? null : matrixOf(read.environment);
  if (account !== null) return account;
  if (faults.length === 0)
    faults.push(
      'There is no account on Matrix to set up: set FIELDBELL_MATRIX_HOMESERVER, FIELDBELL_MATRIX_USER, and ' +
        'FIELDBELL_MATRIX_PASSWORD or FIELDBELL_MATRIX_TOKEN, as for the bot itself.',
    );
  for (const fault of faults) console.error(fault);
  process.exit(EXIT_SETTINGS);
};

/** Asks on the terminal. If its input has ended, that is an error, not an empty answer. */
const terminal = () => {
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  const ended = Promise.withResolvers<never>();
  // It may end while nobody is asking.
  ended.promise.catch(() => undefined);
  let isOver = false;
  lines.once('close', () => {
    isOver = true;
    ended.reject(new Error('Nothing more can be typed: run this in a terminal, and answer what it asks.'));
  });
  return {
    ask: (words: string): Promise<string> => {
      if (isOver) return ended.promise;
      const answer = new Promise<string>((resolve) => {
        lines.question(words, resolve);
      });
      return Promise.race([answer, ended.promise]);
    },
    close: () => {
      lines.close();
    },
  };
};

const next = ({ user, directory, encryption }: MatrixAccount, device: string): string =>
  [
    '',
    `Done: device ${device} of ${user} is signed, and people's apps trust it.`,
    'What to do next:',
    `1. Keep the recovery key where you will find it: it is needed when ${directory} is lost or the homeserver has ` +
      'logged the bot out.',
    `2. Back ${directory} up as a whole, and never run two bots on it.`,
    encryption
      ? '3. Start the bot, and invite it to the room of the crew.'
      : '3. Set FIELDBELL_MATRIX_ENCRYPTION to on: while it is off, the bot reads no encrypted room. Then start the bot.',
    '',
  ].join('\n');

const setUp = async (account: MatrixAccount): Promise<void> => {
  const { ask, close } = terminal();
  const log = (level: string, message: string): void => {
    if (level !== 'info') console.error(message);
  };
  const settings = { ...account, invitesFrom: [], keyWaitMs: 0 };
  const session = await openSession(settings, { closing: new AbortController().signal, log });
  try {
    const password = account.login.by === 'password' ? account.login.password : null;
    await setUpCrypto(session, { ask, password }, log);
    console.log(next(account, session.device));
  } finally {
    session.release();
    close();
  }
};

try {
  await setUp(accountOrExit());
  // The SDK leaves timers running.
  process.exit(0);
} catch (error) {
  console.error(reasonOf(error));
  process.exit(1);
}
