import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { asc, eq } from 'drizzle-orm';
import type { Heard } from '../../../src/ports/chat.ts';
import { openDatabase } from '../../../src/store/database.ts';
import { inbox } from '../../../src/store/schema.ts';
import type { Child } from '../child.ts';
import { startChild } from '../child.ts';
import type { BotProcess } from './bot-process.ts';

const SCRIPT = new URL('bot-process.ts', import.meta.url);

export const startBotProcess = (bot: BotProcess): Child => {
  mkdirSync(bot.data, { recursive: true });
  const file = join(bot.data, 'bot.json');
  writeFileSync(file, JSON.stringify(bot));
  return startChild(SCRIPT, file);
};

/** What is in the inbox of a bot that no longer runs, oldest first by the sender's time. */
export const inboxOf = async ({ data }: BotProcess): Promise<Heard[]> => {
  const database = await openDatabase({ embedded: join(data, 'database') });
  const rows = await database.db
    .select({ body: inbox.body })
    .from(inbox)
    .where(eq(inbox.operation, 'crew'))
    .orderBy(asc(inbox.heardMs));
  await database.close();
  return rows.map(({ body }) => body);
};
