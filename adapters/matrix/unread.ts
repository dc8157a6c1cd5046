import type { MatrixClient } from 'matrix-js-sdk';
import { MatrixEvent, MatrixEventEvent } from 'matrix-js-sdk';
import { reasonOf } from '../../src/core/reason.ts';
import type { EpochMs } from '../../src/core/units.ts';
import type { Post, Said } from '../../src/ports/chat.ts';
import type { RawEvent } from './catch-up.ts';
import type { RetryContext } from './patience.ts';
import { pause, persistently } from './patience.ts';
import { isDirect } from './rooms.ts';
import type { Unread } from './unread-list.ts';
import { unreadList } from './unread-list.ts';

/** A notice of the adapter itself; `cause` is the unreadable event. */
export interface UnreadNotice {
  to: Post['to'];
  said: Said;
  cause: string;
}

const cannotRead = (sender: string): Said => ({
  text:
    "I can't read your message: it is encrypted and its key has not reached me. Please send it again.\n" +
    'No puedo leer su mensaje: está cifrado y su clave no me ha llegado. Envíelo otra vez, por favor.',
  table: null,
  buttons: [],
  picture: null,
  ring: false,
  mentions: [sender],
});

export const isUnreadable = (event: MatrixEvent): boolean =>
  event.isDecryptionFailure() || event.getType() === 'm.room.encrypted';

interface UnreadDeps {
  client: MatrixClient;
  directory: string;
  keyWaitMs: number;
  nowMs: () => EpochMs;
  /** A message that has become readable. */
  take: (event: MatrixEvent) => Promise<void>;
  tell: (telling: UnreadNotice) => Promise<void>;
  patience: RetryContext;
}

/**
 * Messages whose key is missing. Each is taken in when its key arrives. If that takes too long, its sender is asked to send
 * it again: once, until everything that the sender wrote in the room can be read.
 */
export const unreadMessages = ({ client, directory, keyWaitMs, nowMs, take, tell, patience }: UnreadDeps) => {
  const list = unreadList(directory, nowMs);

  const quietly = async (work: Promise<void>): Promise<void> => {
    await work.catch((error: unknown) => {
      if (!patience.closing.aborted) patience.log('error', `Unreadable messages: ${reasonOf(error)}.`);
    });
  };

  const takeNow = async (event: MatrixEvent): Promise<void> => {
    const id = event.getId() ?? '';
    if (!list.has(id)) return;
    await persistently(patience, `Storing message ${id}`, () => take(event));
    list.remove(id);
  };

  const takeWhenReadable = (event: MatrixEvent): void => {
    const look = (): void => {
      if (isUnreadable(event)) return;
      event.off(MatrixEventEvent.Decrypted, look);
      void quietly(takeNow(event));
    };
    event.on(MatrixEventEvent.Decrypted, look);
    look();
  };

  const tellLater = async ({ room, raw: { event_id: cause, sender } }: Unread): Promise<void> => {
    await pause(keyWaitMs, patience.closing);
    if (!list.has(cause) || list.markTold(room, sender)) return;
    const to = isDirect(client, room) ? { user: sender } : { room };
    await persistently(patience, 'Reporting an unreadable message', () =>
      tell({ to, said: cannotRead(sender), cause }),
    );
  };

  return {
    add: (room: string, raw: RawEvent, event: MatrixEvent): void => {
      if (!list.has(raw.event_id)) {
        const message = { room, raw, sinceMs: nowMs(), told: false };
        list.add(message);
        void quietly(tellLater(message));
      }
      takeWhenReadable(event);
    },
    /** Its sender has deleted it. */
    forget: (id: string): void => {
      list.remove(id);
    },
    /** Tries again to read what an earlier process could not. */
    resume: async (): Promise<void> => {
      for (const message of list.all()) {
        const event = new MatrixEvent({ ...message.raw, room_id: message.room });
        await client.decryptEventIfNeeded(event);
        if (isUnreadable(event) && !message.told) void quietly(tellLater(message));
        takeWhenReadable(event);
      }
    },
  };
};
