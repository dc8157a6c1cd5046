import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { asc, eq } from 'drizzle-orm';
import { onTestFinished } from 'vitest';
import type { Heard } from '../../../src/ports/chat.ts';
import { openDatabase } from '../../../src/store/database.ts';
import { inbox } from '../../../src/store/schema.ts';
import { waitFor } from '../wait-for.ts';
import type { BotProcess } from './bot-process.ts';

const SLOW_MS = 240_000;

export interface Told {
  lines: readonly string[];
  /** Waits for so many lines that begin with the word, and gives the last of them without it. */
  until: (word: string, count?: number) => Promise<string>;
  /** Ends it without a chance to tidy up. */
  kill: () => Promise<void>;
}

/** Runs one of the scripts beside this file; its argument is a JSON file. */
const startScript = (name: string, folder: string, argument: object): Told => {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${name}.json`);
  writeFileSync(file, JSON.stringify(argument));
  const script = new URL(name, import.meta.url).pathname;
  const child = spawn(process.execPath, [script, file], { stdio: ['ignore', 'pipe', 'inherit'] });
  const lines: string[] = [];
  createInterface({ input: child.stdout }).on('line', (line) => lines.push(line));
  const closed = once(child, 'close');
  const kill = async (): Promise<void> => {
    child.kill('SIGKILL');
    await closed;
  };
  onTestFinished(kill);
  return {
    lines,
    kill,
    until: async (word, count = 1) => {
      const fitting = (): string[] => lines.filter((line) => line.startsWith(word));
      const isDone = () => fitting().length >= count || child.exitCode !== null;
      await waitFor(`${count} "${word}" of ${name}`, isDone, SLOW_MS);
      const found = fitting()[count - 1];
      if (found === undefined) throw new Error(`${name} ended after ${lines.join(', ')}`);
      return found.slice(word.length).trim();
    },
  };
};

export const startBotProcess = (bot: BotProcess): Told => startScript('bot-process.ts', bot.data, bot);

/** What is in the inbox of a bot that no longer runs, in the order it was heard. */
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
