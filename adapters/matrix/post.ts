import type { Room } from 'matrix-js-sdk';
import type { Post, PostResult } from '../../src/ports/chat.ts';
import type { ExtrasDeps } from './extras.ts';
import { extras } from './extras.ts';
import { failureOf } from './failure.ts';
import { rendered } from './render.ts';
import type { DirectRooms } from './rooms.ts';
import { isMember } from './rooms.ts';
import type { EventsSeen } from './seen.ts';
import { sender } from './send.ts';

interface MatrixPostDeps extends Omit<ExtrasDeps, 'send'> {
  direct: DirectRooms;
  seen: EventsSeen;
}

export const poster = ({ client, direct, seen, draw, log }: MatrixPostDeps) => {
  const send = sender(client);
  const showExtras = extras({ client, send, draw, log });

  /** A reaction cannot be answered: the answer to a press refers to the message with the choices. */
  const answered = async (room: Room, id: string | null): Promise<string | null> =>
    id === null ? null : ((await seen.find(room.roomId, id))?.reactsTo ?? id);

  return async (post: Post): Promise<PostResult> => {
    try {
      const roomId = 'room' in post.to ? post.to.room : await direct.with(post.to.user);
      const room = client.getRoom(roomId);
      if (!isMember(room)) return { result: 'gone', why: `the bot is not in ${roomId}: invite it` };
      const relations = { repliesTo: await answered(room, post.repliesTo), replaces: post.replaces };
      const id = await send.once(room, 'm.room.message', rendered(post.said, relations), post.key);
      // Edits refer to the original: the message keeps the id of its first state.
      const shown = post.replaces ?? id;
      await showExtras(room, shown, post);
      return { result: 'sent', messageId: shown };
    } catch (error) {
      return failureOf(error);
    }
  };
};
