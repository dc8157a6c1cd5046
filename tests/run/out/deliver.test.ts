import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { EpochMs } from '../../../src/core/units.ts';
import type { PostResult } from '../../../src/ports/chat.ts';
import type { Claimed, Outgoing } from '../../../src/ports/outbox.ts';
import { counted, deliver, overChats } from '../../../src/run/out/deliver.ts';
import { createMetrics } from '../../../src/run/host/metrics.ts';
import { freshDatabase } from '../../support/database.ts';
import type { Database } from '../../../src/store/database.ts';
import { storeOver } from '../../../src/store/open.ts';
import type { Store } from '../../../src/store/open.ts';
import { NOON_MS, outgoing } from '../../contracts/samples.ts';

const SECOND_MS = 1_000;
const MINUTE_MS = 60_000;
const SENT: PostResult = { result: 'sent', messageId: 'posted' };
const UNKNOWN: PostResult = { result: 'unknown', why: 'no answer within 10 s' };
const OTHER_ROOM: Partial<Outgoing> = { to: { room: 'C2' } };

let database: Database;
let store: Store;
let operation: string;
let logged: { what: object; message: string }[];
beforeAll(async () => {
  database = await freshDatabase();
});
afterAll(() => database.close());
beforeEach(async () => {
  operation = `deliver-${crypto.randomUUID()}`;
  store = await storeOver(database, [operation]);
  logged = [];
});

const note = (what: object, message: string) => logged.push({ what, message });
const log = { info: note, warn: note, error: note };
const enqueue = (...messages: readonly Outgoing[]) =>
  store.book.inOneGo(operation, (page) => page.enqueue(messages));

/** One pass at that time with a platform that answers so; gives the keys in the order of sending. */
const pass = async (
  nowMs: EpochMs,
  answer: (message: Claimed) => PostResult = () => SENT,
): Promise<string[]> => {
  const keys: string[] = [];
  await deliver(
    store.outbox,
    ['local'],
    async (message) => {
      keys.push(message.key);
      return answer(message);
    },
    () => nowMs,
    log,
  );
  return keys;
};

describe('delivery', () => {
  test('sends all that waits, in order in each room, and each once', async () => {
    await enqueue(outgoing('k1'), outgoing('other', OTHER_ROOM), outgoing('k2'), outgoing('k3'));
    const keys = await pass(NOON_MS);
    expect(keys.filter((key) => key !== 'other')).toEqual(['k1', 'k2', 'k3']);
    expect(keys).toContain('other');
    expect(await pass(NOON_MS + MINUTE_MS)).toEqual([]);
  });

  test('a stop whose lease runs out while it is posted is not posted beside itself: the machine may have slept', async () => {
    await enqueue(outgoing('stop'));
    const [arrived, answer] = [Promise.withResolvers<null>(), Promise.withResolvers<PostResult>()];
    const posted: string[] = [];
    const send = overChats([
      {
        platform: 'local',
        post: ({ key }) => {
          posted.push(key);
          arrived.resolve(null);
          return answer.promise;
        },
      },
    ]);
    const passAt = (nowMs: EpochMs) => deliver(store.outbox, ['local'], send, () => nowMs, log);
    const first = passAt(NOON_MS);
    await arrived.promise;
    const second = passAt(NOON_MS + 9 * MINUTE_MS);
    // Behind it in the database, which does one thing at a time: the message has been lent again by then.
    await store.outbox.nextMs();
    answer.resolve(SENT);
    expect(await Promise.all([first, second])).toEqual([1, 1]);
    expect(posted).toEqual(['stop']);
    expect(await pass(NOON_MS + 20 * MINUTE_MS)).toEqual([]);
  });

  test('sends a stop notice ahead of what was there before', async () => {
    await enqueue(outgoing('receipt'), outgoing('board'), outgoing('stop', { urgent: true }));
    expect(await pass(NOON_MS)).toEqual(['stop', 'receipt', 'board']);
  });

  test('tries again after 1, 2, 4 ... 10 s, and after a whole day still', async () => {
    await enqueue(outgoing('stop'));
    let nowMs = NOON_MS;
    const waitsSeconds: number[] = [];
    for (let attempt = 0; attempt < 9; attempt += 1) {
      expect(await pass(nowMs, () => UNKNOWN)).toEqual(['stop']);
      const nextMs = (await store.outbox.nextMs()) ?? 0;
      expect(await pass(nextMs - 1)).toEqual([]);
      waitsSeconds.push((nextMs - nowMs) / SECOND_MS);
      nowMs = nextMs;
    }
    expect(waitsSeconds).toEqual([1, 2, 4, 8, 10, 10, 10, 10, 10]);
    expect(logged.map(({ what }) => what)).toMatchObject(
      [1, 2, 4, 8].map((attempts) => ({ key: 'stop', attempts })),
    );
    expect(await pass(NOON_MS + 24 * 60 * MINUTE_MS)).toEqual(['stop']);
  });

  test('keeps the order where a message has to be tried again', async () => {
    await enqueue(outgoing('stop'), outgoing('all-clear'));
    expect(await pass(NOON_MS, () => UNKNOWN)).toEqual(['stop']);
    expect(await pass(NOON_MS + SECOND_MS)).toEqual(['stop', 'all-clear']);
  });

  test('waits as long as the platform asks, in that room alone', async () => {
    await enqueue(outgoing('k1'), outgoing('k2'), outgoing('other', OTHER_ROOM));
    const throttled = ({ key }: Claimed): PostResult =>
      key === 'k1' ? { result: 'retry-after', waitMs: 30 * SECOND_MS } : SENT;
    expect((await pass(NOON_MS, throttled)).sort()).toEqual(['k1', 'other']);
    await enqueue(outgoing('late', OTHER_ROOM));
    expect(await pass(NOON_MS + 29 * SECOND_MS)).toEqual(['late']);
    expect(await pass(NOON_MS + 30 * SECOND_MS)).toEqual(['k1', 'k2']);
  });

  test('puts aside what can never be delivered, says so, and goes on with the room', async () => {
    await enqueue(outgoing('k1'), outgoing('k2'));
    const gone = ({ key }: Claimed): PostResult =>
      key === 'k1' ? { result: 'gone', why: 'account closed' } : SENT;
    expect(await pass(NOON_MS, gone)).toEqual(['k1', 'k2']);
    expect(await pass(NOON_MS + MINUTE_MS)).toEqual([]);
    expect(logged).toEqual([
      {
        what: { key: 'k1', platform: 'local', why: 'account closed' },
        message: 'A message can never be delivered and is put aside',
      },
    ]);
  });

  test('leaves what another deliverer has under way, and takes it when that one is dead for a minute', async () => {
    await enqueue(outgoing('k1'), outgoing('other', OTHER_ROOM));
    const hangs = Promise.withResolvers<PostResult>();
    const started = Promise.withResolvers<undefined>();
    const slow = deliver(
      store.outbox,
      ['local'],
      (message) => {
        if (message.key !== 'k1') return Promise.resolve(SENT);
        started.resolve(undefined);
        return hangs.promise;
      },
      () => NOON_MS,
      log,
    );
    await started.promise;
    await enqueue(outgoing('stop', { ...OTHER_ROOM, urgent: true }));
    expect(await pass(NOON_MS + SECOND_MS)).toEqual(['stop']);
    expect(await pass(NOON_MS + MINUTE_MS)).toEqual(['k1']);
    hangs.resolve(SENT);
    await slow;
    expect(await pass(NOON_MS + 2 * MINUTE_MS)).toEqual([]);
  });
});

describe('sending over chats', () => {
  const message = (platform: string): Claimed => ({
    ...outgoing('k1', { platform }),
    id: 1,
    operation: 'a',
    attempts: 1,
    replaces: null,
  });
  const failing = {
    platform: 'local',
    post: () => Promise.reject(new Error('socket hang up')),
  };

  test('an adapter that fails leaves it open whether the message was shown', async () => {
    expect(await overChats([failing])(message('local'))).toEqual({
      result: 'unknown',
      why: 'socket hang up',
    });
  });

  test('a platform without an adapter is named', async () => {
    expect(await overChats([failing])(message('slack'))).toEqual({
      result: 'gone',
      why: 'no adapter for slack is running',
    });
  });

  test('is counted by what became of it', async () => {
    const metrics = createMetrics();
    await counted(async () => SENT, metrics)(message('local'));
    await counted(async () => UNKNOWN, metrics)(message('local'));
    const text = await metrics.registry.metrics();
    expect(text).toContain('fieldbell_messages_delivered_total{platform="local"} 1');
    expect(text).toContain('fieldbell_delivery_failures_total{platform="local",result="unknown"} 1');
  });
});
