/**
 * The adapter in a process of its own, with the real inbox on the disk. Argument: a JSON file of `BotProcess`. Prints a
 * line when it listens, and one for each message that is safe: its id and whether it was new. Where it `answers`, it says
 * each message again with one choice under it, and a picture where it is asked for one, and prints the id of that.
 */
import { readFileSync } from 'node:fs';
import { matrixChat } from '../../../adapters/matrix/chat.ts';
import { readWhole, writeWhole } from '../../../adapters/matrix/connect/files.ts';
import type { MatrixSettings } from '../../../adapters/matrix/settings.ts';
import type { Heard } from '../../../src/ports/chat.ts';
import { openStore } from '../../../src/store/open.ts';
import { bars, drawPicture } from '../picture.ts';

export interface BotProcess {
  settings: MatrixSettings;
  /** A folder for the database and the sync token. */
  data: string;
  answers: boolean;
}

const print = (...words: string[]): void => {
  process.stdout.write(`${words.join(' ')}\n`);
};

const { settings, data, answers } = JSON.parse(readFileSync(process.argv[2] ?? '', 'utf8')) as BotProcess;
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
  draw: drawPicture,
  nowMs: Date.now,
  log: () => undefined,
});
const listening = Promise.withResolvers<true>();

const answer = async ({ id, user, room, event }: Heard): Promise<void> => {
  if (event.is !== 'message') return;
  await listening.promise;
  const picture = event.text === 'picture' ? bars : null;
  const said = { text: `heard ${event.text}`, table: null, picture, ring: false, mentions: [] };
  const buttons = [{ label: 'Yes', words: 'yes' }];
  const to = room === null ? { user } : { room };
  const result = await chat.post({
    key: id,
    to,
    said: { ...said, buttons },
    repliesTo: null,
    replaces: null,
  });
  print(...(result.result === 'sent' ? ['sent', result.messageId] : ['failed', JSON.stringify(result)]));
};

await chat.listen(async (heard) => {
  const known = await store.book.inOneGo('crew', (page) => page.receive(heard));
  print(known, heard.id);
  if (answers && known === 'new') void answer(heard);
});
listening.resolve(true);
print('listening');
