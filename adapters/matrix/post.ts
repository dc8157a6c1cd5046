import type { MatrixClient, Room } from 'matrix-js-sdk';
import { EventStatus } from 'matrix-js-sdk';
import type { Post, PostResult } from '../../src/ports/chat.ts';
import { errorCode, failureOf } from './failure.ts';
import { choicesOf } from './reactions.ts';
import { rendered } from './render.ts';
import type { DirectRooms } from './rooms.ts';
import { isMember } from './rooms.ts';
import type { EventsSeen } from './seen.ts';

const KEPT = 2000;

export const poster = (client: MatrixClient, direct: DirectRooms, seen: EventsSeen) => {
  /** Event ids of what this process has sent, by key. */
  const sent = new Map<string, string>();

  const keep = (key: string, id: string): string => {
    sent.set(key, id);
    if (sent.size > KEPT) sent.delete(sent.keys().next().value ?? '');
    return id;
  };

  /**
   * The key is the transaction id, under which the homeserver shows an event once, also after a restart. The SDK refuses
   * a transaction id that it knows (`addPendingEvent` in its src/models/room.ts), so a failed event is sent again as it is.
   */
  const sendOnce = async (room: Room, type: string, content: object, key: string): Promise<string> => {
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

  /** Nobody can answer a reaction: what answers a press goes under the message with the choices. */
  const answered = async (room: Room, id: string | null): Promise<string | null> =>
    id === null ? null : ((await seen.find(room.roomId, id))?.reactsTo ?? id);

  /** The bot reacts first, so that a press is one tap. */
  const offerChoices = async (room: Room, shown: string, post: Post): Promise<void> => {
    for (const { key } of choicesOf(post.said.buttons)) {
      const content = { 'm.relates_to': { rel_type: 'm.annotation', event_id: shown, key } };
      try {
        await sendOnce(room, 'm.reaction', content, `${post.key} ${key}`);
      } catch (error) {
        // An earlier state of the message had the same number.
        if (errorCode(error) !== 'M_DUPLICATE_ANNOTATION') throw error;
      }
    }
  };

  return async (post: Post): Promise<PostResult> => {
    try {
      const roomId = 'room' in post.to ? post.to.room : await direct.with(post.to.user);
      const room = client.getRoom(roomId);
      if (!isMember(room)) return { result: 'gone', why: `the bot is not in ${roomId}: invite it` };
      const relations = { repliesTo: await answered(room, post.repliesTo), replaces: post.replaces };
      const id = await sendOnce(room, 'm.room.message', rendered(post.said, relations), post.key);
      // An edit can't be edited: the message keeps the id of its first state.
      const shown = post.replaces ?? id;
      await offerChoices(room, shown, post);
      return { result: 'sent', messageId: shown };
    } catch (error) {
      return failureOf(error);
    }
  };
};
