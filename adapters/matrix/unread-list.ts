import { join } from 'node:path';
import { z } from 'zod';
import { MS_PER_DAY } from '../../src/core/units.ts';
import type { EpochMs } from '../../src/core/units.ts';
import { rawEvent } from './catch-up.ts';
import { readWhole, writeWhole } from './connect/files.ts';

const unreadMessage = z.object({ room: z.string(), raw: rawEvent, sinceMs: z.number(), told: z.boolean() });
export type Unread = z.output<typeof unreadMessage>;

/** Nobody needs the message after this. Grade: chosen. */
const KEPT_MS = 7 * MS_PER_DAY;
const KEPT = 500;

/** The messages that can't be read yet; on disk, because the sync token moves past them. */
export const unreadList = (directory: string, nowMs: () => EpochMs) => {
  const file = join(directory, 'unread.json');
  let unread: readonly Unread[] = z.array(unreadMessage).parse(JSON.parse(readWhole(file) ?? '[]'));

  const save = (list: readonly Unread[]): void => {
    unread = list.filter(({ sinceMs }) => sinceMs > nowMs() - KEPT_MS).slice(-KEPT);
    writeWhole(file, JSON.stringify(unread));
  };
  const has = (id: string): boolean => unread.some(({ raw }) => raw.event_id === id);

  return {
    all: (): readonly Unread[] => unread,
    has,
    add: (message: Unread): void => {
      save([...unread, message]);
    },
    remove: (id: string): void => {
      if (has(id)) save(unread.filter(({ raw }) => raw.event_id !== id));
    },
    /** Marks all of that sender in that room as reported to the sender; true = one of them was already. */
    markTold: (room: string, sender: string): boolean => {
      const isTheirs = (each: Unread) => each.room === room && each.raw.sender === sender;
      const wasTold = unread.some((each) => isTheirs(each) && each.told);
      save(unread.map((each) => (isTheirs(each) ? { ...each, told: true } : each)));
      return wasTold;
    },
  };
};
