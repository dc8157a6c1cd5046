import type { MatrixClient, Room } from 'matrix-js-sdk';
import { EventStatus } from 'matrix-js-sdk';

const KEPT = 2000;

export interface EventSender {
  /** Resolves with the event's id. Rejects if it can't be shown, or if it is unknown whether it was. */
  once: (room: Room, type: string, content: object, key: string) => Promise<string>;
  /** Whether this process has sent it. */
  has: (key: string) => boolean;
}

export const sender = (client: MatrixClient): EventSender => {
  /** Event ids of what this process has sent, by key. */
  const sent = new Map<string, string>();

  const keep = (key: string, id: string): string => {
    sent.set(key, id);
    if (sent.size > KEPT) sent.delete(sent.keys().next().value ?? '');
    return id;
  };

  /**
   * The key is the transaction id, for which the homeserver shows an event once, even after a restart. The SDK refuses
   * a transaction id that it knows (`addPendingEvent` in its src/models/room.ts), so a failed event is sent again as it is.
   */
  const once = async (room: Room, type: string, content: object, key: string): Promise<string> => {
    const earlier = sent.get(key);
    if (earlier !== undefined) return earlier;
    const failed = room.getEventForTxnId(key);
    const { event_id: id } =
      failed?.status === EventStatus.NOT_SENT
        ? await client.resendEvent(failed, room)
        : // The SDK's types know neither the choices nor a plain type name.
          await client.sendEvent(room.roomId, type as never, content as never, key);
    return keep(key, id);
  };

  return { once, has: (key) => sent.has(key) };
};
