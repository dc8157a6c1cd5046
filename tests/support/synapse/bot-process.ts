/**
 * The adapter in a process of its own, with the real inbox on the disk. Argument: a JSON file of `BotProcess`. Prints a
 * line when it listens, and one for each message that is safe: its id and whether it was new.
 */
import { readFileSync } from 'node:fs';
import { matrixChat } from '../../../adapters/matrix/chat.ts';
import { readWhole, writeWhole } from '../../../adapters/matrix/connect/files.ts';
import type { MatrixSettings } from '../../../adapters/matrix/settings.ts';
import { openStore } from '../../../src/store/open.ts';

export interface BotProcess {
  settings: MatrixSettings;
  /** A folder for the database and the sync token. */
  data: string;
}

const print = (...words: string[]): void => {
  process.stdout.write(`${words.join(' ')}\n`);
};

const { settings, data } = JSON.parse(readFileSync(process.argv[2] ?? '', 'utf8')) as BotProcess;
const store = await openStore({ embedded: `${data}/database` }, ['crew']);
const token = `${data}/token`;

const chat = matrixChat(settings, {
  cursor: {
    load: async () => readWhole(token),
    save: async (next) => {
      writeWhole(token, next);
    },
  },
  tell: async ({ cause }) => {
    print('told', cause);
  },
  declined: () => undefined,
  nowMs: Date.now,
  log: () => undefined,
});
await chat.listen(async (heard) => {
  const known = await store.book.inOneGo('crew', (page) => page.receive(heard));
  print(known, heard.id);
});
print('listening');
