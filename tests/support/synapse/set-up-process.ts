/** The guided set-up of the encryption, in a process of its own. Argument: a JSON file of `SetUp`; prints what it asks. */
import { readFileSync } from 'node:fs';
import { openSession } from '../../../adapters/matrix/connect/session.ts';
import type { MatrixSettings } from '../../../adapters/matrix/settings.ts';
import { setUpCrypto } from '../../../adapters/matrix/set-up-crypto.ts';

export interface SetUp {
  settings: MatrixSettings;
  /** What the operator types, in turn. */
  typed: string[];
}

const { settings, typed } = JSON.parse(readFileSync(process.argv[2] ?? '', 'utf8')) as SetUp;
const log = (): void => undefined;
const session = await openSession(settings, { closing: new AbortController().signal, log });
const ask = async (words: string): Promise<string> => {
  process.stdout.write(`${JSON.stringify(words)}\n`);
  return typed.shift() ?? '';
};
await setUpCrypto(session, { ask, password: null }, log);
session.release();
process.stdout.write(`device ${session.device}\n`);
