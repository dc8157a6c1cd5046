/** The recorded day of the sample operation, to be said on any platform, and what the book holds after it. */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, vi } from 'vitest';
import { goLive } from '../../src/command/live.ts';
import { operateOn } from '../../src/command/operate.ts';
import type { Operation } from '../../src/command/operate.ts';
import { playLine } from '../../src/command/replay.ts';
import { parseReplayLine } from '../../src/command/replay-line.ts';
import type { ReplayLine } from '../../src/command/replay-line.ts';
import { answer } from '../../src/core/answers/answer.ts';
import { personById } from '../../src/core/roster.ts';
import { LOCAL } from '../../src/core/roster.ts';
import type { Roster } from '../../src/core/roster.ts';
import type { Chat } from '../../src/ports/chat.ts';
import { harvestOn } from '../../src/run/host/bot.ts';
import { isZone } from '../../src/run/host/zone-clock.ts';
import { dataOf } from '../../src/saying/data.ts';
import { loadSettings } from '../../src/settings/load.ts';
import { openDatabase } from '../../src/store/database.ts';
import type { Database } from '../../src/store/database.ts';
import { storeOver } from '../../src/store/open.ts';
import { waitFor } from './wait-for.ts';

const DRAINED_MS = 120_000;
const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };

/** Figures of the day as it was invented. */
export const INVENTED = { loads: 47, tons: 1155.58, withoutTicket: 0, notices: ['stop', 'all-clear'] };

export const recordedLines = (): ReplayLine[] =>
  readFileSync(new URL('../fixtures/sample-day.ndjson', import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line !== '')
    .map((text) => {
      const parsed = parseReplayLine(text);
      if ('fault' in parsed) throw new Error(parsed.fault);
      return parsed.line;
    });

/** From here on `Date` goes on from the beginning of the recorded day: a database waits for ever on one that stands. */
export const startRecordedClock = (): void => {
  const now = recordedLines()[0]?.atMs ?? 0;
  vi.useFakeTimers({ toFake: ['Date'], now, shouldAdvanceTime: true });
};

/** A database for the tests of a file, which run on the clock of the recorded day. */
export const recordedDatabase = (): { now: () => Database } => {
  let database: Database;
  // The one clock that Slack's client, which checks the age of what is signed, shares with the rest. The database comes
  // after it: Postgres does not take it well when its clock is set back by weeks.
  beforeAll(async () => {
    startRecordedClock();
    database = await openDatabase({ memory: true });
  }, 240_000);
  afterAll(async () => {
    vi.useRealTimers();
    await database.close();
  });
  return { now: () => database };
};

/** The sample operation, its crew where `addressOf` says; null = not there. */
export const sampleOn = (
  operation: string,
  room: Roster['rooms'][number],
  addressesOf: (person: string) => Roster['people'][number]['addresses'],
): Roster => {
  const loaded = loadSettings({}, isZone);
  if ('faults' in loaded) throw new Error(loaded.faults.join('\n'));
  const { roster } = loaded.settings;
  const people = roster.people.map((person) => ({ ...person, addresses: addressesOf(person.id) }));
  return { ...roster, operation, rooms: [room], people };
};

/** The sample operation with its crew in the terminal. */
export const onLocal = (operation: string): Roster =>
  sampleOn(operation, { id: 'crew', platform: LOCAL, room: 'crew' }, (id) => [{ platform: LOCAL, user: id }]);

/** Loads and tons by field on the day of `nowMs`, the notices, and how many entries there are of each kind. */
export const bookOf = async ({ bot }: Operation, nowMs: number) => {
  const { harvest, facts } = await bot.book.inOneGo(bot.roster.operation, async (page) => ({
    harvest: await harvestOn(page, bot),
    facts: (await page.factsAfter(0)).map(({ fact }) => fact),
  }));
  const asker = personById(harvest.roster, 'ruth');
  if (!asker) throw new Error('The sample has no Ruth.');
  const asking = { asker, nowMs, clock: bot.clock };
  const question = { about: 'tons', field: null, truck: null, span: 'today' } as const;
  const { loads, tons, byField, byTruck, withoutTicket } = dataOf(answer(question, harvest, asking), bot.iso);
  const kinds: Record<string, number> = {};
  for (const { kind } of facts) kinds[kind] = (kinds[kind] ?? 0) + 1;
  return {
    loads,
    tons,
    byField,
    byTruck,
    withoutTicket,
    kinds,
    notices: harvest.notices.flatMap(({ steps }) => steps.map(({ step }) => step.stage)),
  };
};

/** The same chat, which counts the posts that are under way. */
const counted = (chat: Chat, underWay: { posts: number }): Chat => ({
  ...chat,
  post: async (post) => {
    underWay.posts += 1;
    try {
      return await chat.post(post);
    } finally {
      underWay.posts -= 1;
    }
  },
});

/** The bot under way on a database that outlives it. */
export const startOn = async (
  database: Database,
  roster: Roster,
  platforms: readonly string[],
  chats: (operation: Operation) => Chat[],
) => {
  const live: { wake: () => void } = { wake: () => undefined };
  const store = await storeOver(database, [roster.operation]);
  const means = {
    platforms,
    log: quiet,
    wakeDeliverer: () => {
      live.wake();
    },
  };
  // The database outlives the operation: it is shared.
  const operation = { ...(await operateOn(store, roster, means)), close: async () => undefined };
  const underWay = { posts: 0 };
  const posting = chats(operation).map((chat) => counted(chat, underWay));
  const started = goLive(operation, posting, null, quiet);
  await started.listening;
  live.wake = started.wake;
  /** Resolves when all that is due has been delivered. */
  const drained = async (): Promise<void> => {
    const isDue = async () => ((await store.outbox.nextMs()) ?? Infinity) <= Date.now();
    // In this order: what has been lent by then is being posted.
    await waitFor('delivery of all', async () => !(await isDue()) && underWay.posts === 0, DRAINED_MS);
  };
  return { operation, drained, stop: started.stop, wake: started.wake };
};

export type Bot = Awaited<ReturnType<typeof startOn>>;

type Heard = Extract<ReplayLine, { is: 'heard' }>['heard'];
/** Says a line there, and resolves when it is in the book. */
type Say = (heard: Heard) => Promise<void>;

/**
 * Plays the day, with the machine's clock as it was then, and gives the time at which it ends. The clock moves on when all
 * has been delivered: a post that took minutes by it would be taken for lost.
 */
export const play = async ({ operation, drained, wake }: Bot, say: Say): Promise<number> => {
  const deliverAt = async (): Promise<void> => {
    wake();
    await drained();
  };
  let nowMs = 0;
  for (const line of recordedLines()) {
    nowMs = Math.max(nowMs, line.atMs);
    vi.setSystemTime(nowMs);
    if (line.is === 'heard') {
      await playLine({ is: 'tick', atMs: nowMs }, nowMs, operation, deliverAt);
      await say(line.heard);
    } else await playLine(line, nowMs, operation, deliverAt);
    await deliverAt();
  }
  return nowMs;
};

/** The book of the day as it is replayed, without a platform: what each platform must come to. */
export const replayedBook = async (database: Database) => {
  const roster = onLocal(`replayed-${crypto.randomUUID()}`);
  const store = await storeOver(database, [roster.operation]);
  const means = { platforms: [LOCAL], log: quiet, wakeDeliverer: () => undefined };
  const operation = await operateOn(store, roster, means);
  let nowMs = 0;
  for (const line of recordedLines()) {
    nowMs = Math.max(nowMs, line.atMs);
    await playLine(line, nowMs, operation, () => Promise.resolve());
  }
  return bookOf(operation, nowMs);
};
