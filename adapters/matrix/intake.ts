import type { MatrixClient } from 'matrix-js-sdk';
import { MatrixEvent } from 'matrix-js-sdk';
import { reasonOf } from '../../src/core/reason.ts';
import type { Batch, RawEvent } from './catch-up.ts';
import { eventsOf } from './catch-up.ts';
import type { SyncCursor } from './cursor.ts';
import type { RetryContext } from './patience.ts';
import { backoffMs, pause, persistently } from './patience.ts';
import { isUnreadable } from './unread.ts';

type Hear = (event: MatrixEvent) => Promise<void>;

/** After this many failures in a row the fault is not one message's: the others wait for the next try. Grade: chosen. */
const FAILURES_ON_END = 3;

/**
 * Messages that are not stored yet. One that can't be stored does not delay later messages, only the token, which is saved
 * when everything before it is stored. After a crash the same events come again, and the inbox knows them by their ids.
 */
const unsafeMessages = (cursor: SyncCursor, hear: Hear, { closing, log }: RetryContext) => {
  let unsafe: MatrixEvent[] = [];
  let token: string | null = null;
  let saved: string | null = null;
  let failures = 0;
  let nextTry: Promise<void> | null = null;
  let turn: Promise<void> = Promise.resolve();

  const storeAll = async (): Promise<void> => {
    const failed: MatrixEvent[] = [];
    const store = async (event: MatrixEvent): Promise<void> => {
      await hear(event).catch((error: unknown) => {
        failed.push(event);
        log('warn', `Message ${event.getId() ?? ''} can't be stored yet: ${reasonOf(error)}.`);
      });
    };
    for (const event of unsafe) {
      if (closing.aborted || failed.length >= FAILURES_ON_END) failed.push(event);
      else await store(event);
    }
    unsafe = failed;
    if (unsafe.length > 0) throw new Error(`${unsafe.length} messages wait to be stored`);
    if (token !== null && token !== saved) await cursor.save(token);
    saved = token;
  };

  const tryLater = (waitMs: number): Promise<void> =>
    pause(waitMs, closing).then(
      () => {
        nextTry = null;
        void inTurn();
      },
      () => undefined,
    );

  const storeOrTryLater = async (): Promise<void> => {
    try {
      await storeAll();
      failures = 0;
    } catch (error) {
      if (closing.aborted) return;
      failures += 1;
      const waitMs = backoffMs(failures);
      log('warn', `${reasonOf(error)}: trying again in ${waitMs / 1000} s, or with the next message.`);
      nextTry ??= tryLater(waitMs);
    }
  };

  const inTurn = (): Promise<void> => (turn = turn.then(storeOrTryLater));

  return {
    /** `upTo`: the sync token after the events. */
    store: (events: readonly MatrixEvent[], upTo: string): Promise<void> => {
      unsafe.push(...events);
      token = upTo;
      return inTurn();
    },
    idle: (): Promise<void> => turn,
  };
};

interface IntakeDeps {
  client: MatrixClient;
  cursor: SyncCursor;
  hear: Hear;
  unreadable: (room: string, raw: RawEvent, event: MatrixEvent) => void;
  patience: RetryContext;
}

/** Takes in one sync after the other; the SDK waits for each before it requests the next. */
export const intake = ({ client, cursor, hear, unreadable, patience }: IntakeDeps) => {
  const messages = unsafeMessages(cursor, hear, patience);
  let since: string | null = null;
  let isFirst = true;

  const readable = async (room: string, raw: RawEvent): Promise<MatrixEvent[]> => {
    // Not the SDK's own object for the event, which later edits and redactions change.
    const event = new MatrixEvent({ ...raw, room_id: room });
    if (event.isRedacted()) return [];
    await client.decryptEventIfNeeded(event);
    if (!isUnreadable(event)) return [event];
    if (raw.sender !== client.getUserId()) unreadable(room, raw, event);
    return [];
  };

  const read = async (batch: Batch): Promise<MatrixEvent[]> => {
    if (isFirst) since = await cursor.load();
    const events: MatrixEvent[] = [];
    for (const { room, events: raws } of await eventsOf(client, batch, since, isFirst, patience)) {
      for (const raw of raws) events.push(...(await readable(room, raw)));
    }
    return events;
  };

  return {
    take: async (batch: Batch): Promise<void> => {
      const events = await persistently(patience, 'Reading a sync', () => read(batch));
      await messages.store(events, batch.next_batch);
      since = batch.next_batch;
      isFirst = false;
    },
    idle: messages.idle,
  };
};
