import { spawn } from 'node:child_process';
import { copyFileSync, mkdirSync } from 'node:fs';
import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { onTestFinished } from 'vitest';
import { z } from 'zod';
import { waitFor } from '../wait-for.ts';
import { SYNAPSE_ROOT } from './root.ts';
import type { Account } from './synapse.ts';

type Line = Record<string, unknown>;

const message = z.object({
  heard: z.string(),
  sender: z.string(),
  room: z.string(),
  text: z.string(),
  encrypted: z.boolean(),
});
type Message = z.output<typeof message>;

const SLOW_MS = 400_000;

/** A person who writes and reads encrypted messages; see nio-user.py. Each is a device of its own. */
export const nioUser = async (url: string, { user, password }: Account) => {
  const home = `/srv/${randomBytes(6).toString('hex')}`;
  const outside = join(SYNAPSE_ROOT, home);
  mkdirSync(outside, { recursive: true });
  copyFileSync(new URL('nio-user.py', import.meta.url), join(outside, 'user.py'));
  const args = [SYNAPSE_ROOT, 'python3', '-W', 'ignore', `${home}/user.py`, url, user, password, home];
  const child = spawn('chroot', args, { stdio: ['pipe', 'pipe', 'pipe'] });
  const told: Line[] = [];
  let errors = '';
  createInterface({ input: child.stdout }).on('line', (line) => told.push(JSON.parse(line) as Line));
  child.stderr.on('data', (data: Buffer) => (errors += data.toString()));
  onTestFinished(() => {
    child.kill('SIGKILL');
  });

  const until = (what: string, fits: (line: Line) => boolean): Promise<Line> =>
    waitFor(
      `${what} from ${user}`,
      () => {
        if (child.exitCode !== null) throw new Error(`${user} ended: ${errors}`);
        return told.find(fits);
      },
      SLOW_MS,
    );
  const obey = async (order: Line): Promise<string> => {
    const before = told.length;
    child.stdin.write(`${JSON.stringify(order)}\n`);
    const line = await until('an event', (each) => told.indexOf(each) >= before && 'sent' in each);
    if (typeof line['sent'] !== 'string') throw new Error(`${user} can't send: ${String(line['why'])}`);
    return line['sent'];
  };

  /** One at a time: an answer does not say which order it is for. */
  let turn: Promise<unknown> = Promise.resolve();
  const command = (order: Line): Promise<string> => {
    const done = turn.then(() => obey(order));
    turn = done.catch(() => undefined);
    return done;
  };

  await until('a sync', (line) => line['synced'] === true);
  return {
    user,
    /** Resolves when it knows a device of the other one in the room: what it says from then on can be read there. */
    meets: async (room: string, to: string): Promise<void> => {
      child.stdin.write(`${JSON.stringify({ do: 'meet', room, to })}\n`);
      await until(`${to} in ${room}`, (line) => line['met'] === to && line['room'] === room);
    },
    say: (room: string, text: string) => command({ do: 'say', room, text }),
    react: (room: string, to: string, text: string) => command({ do: 'react', room, to, text }),
    /** The text of an event, once it has been read; null = it was sent in the clear. */
    read: async (id: string): Promise<{ text: unknown; encrypted: unknown }> => {
      const { text, encrypted } = await until(`word of ${id}`, (line) => line['heard'] === id);
      return { text, encrypted };
    },
    /** Waits until a message with that text has come. */
    hears: (text: string) => until(`"${text}"`, (line) => line['text'] === text),
    /** The hash (SHA-256) of a file that came encrypted, with these words, after it was opened. */
    opened: async (text: string): Promise<unknown> =>
      (await until(`file "${text}"`, (line) => 'opened' in line && line['text'] === text))['opened'],
    /** All messages that it has read, its own too, in the order they came. */
    messages: (): Message[] => told.flatMap((line) => message.safeParse(line).data ?? []),
    cannotRead: () => told.filter((line) => 'unreadable' in line),
  };
};

export type NioUser = Awaited<ReturnType<typeof nioUser>>;
