import type { MatrixClient, Room } from 'matrix-js-sdk';
import { EventStatus } from 'matrix-js-sdk';
import type { Post, PostResult } from '../../src/ports/chat.ts';
import type { DrawPicture } from '../../src/ports/picture.ts';
import { errorCode, failureOf, reasonOf } from './failure.ts';
import type { Log } from './log.ts';
import { pictureContent } from './picture.ts';
import { choicesOf } from './reactions.ts';
import { rendered } from './render.ts';
import type { DirectRooms } from './rooms.ts';
import { isMember } from './rooms.ts';
import type { EventsSeen } from './seen.ts';

const KEPT = 2000;

interface Pen {
  client: MatrixClient;
  direct: DirectRooms;
  seen: EventsSeen;
  /** Null = pictures are left out. */
  draw: DrawPicture | null;
  log: Log;
}

export const poster = ({ client, direct, seen, draw, log }: Pen) => {
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

  /** The message says everything without it. So it is left out where it can never be shown, and not where it failed once. */
  const beside = async (what: string, show: () => Promise<unknown>): Promise<void> => {
    try {
      await show();
    } catch (error) {
      if (failureOf(error).result !== 'gone') throw error;
      log('warn', `${what} is left out: ${reasonOf(error)}.`);
    }
  };

  /** The bot reacts first, so that a press is one tap. */
  const offerChoice = async (room: Room, shown: string, key: string, postKey: string): Promise<void> => {
    const content = { 'm.relates_to': { rel_type: 'm.annotation', event_id: shown, key } };
    try {
      await sendOnce(room, 'm.reaction', content, `${postKey} ${key}`);
    } catch (error) {
      // An earlier state of the message had the same number.
      if (errorCode(error) !== 'M_DUPLICATE_ANNOTATION') throw error;
    }
  };

  const drawn = async (svg: string): Promise<Uint8Array | null> => {
    try {
      return draw === null ? null : await draw(svg);
    } catch (error) {
      log('error', `A picture can't be drawn and is left out: ${reasonOf(error)}.`);
      return null;
    }
  };

  /** Under the words. A message that takes another's place has its words changed alone. */
  const showPicture = async (room: Room, { key, said: { picture }, replaces }: Post): Promise<void> => {
    const pictureKey = `${key} picture`;
    if (picture === null || replaces !== null || sent.has(pictureKey)) return;
    const png = await drawn(picture.svg);
    if (png === null) return;
    const content = await pictureContent(client, room, png, picture.altText);
    await sendOnce(room, 'm.room.message', content, pictureKey);
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
      for (const { key } of choicesOf(post.said.buttons))
        await beside(`Choice ${key} of ${shown}`, () => offerChoice(room, shown, key, post.key));
      await beside(`The picture of ${shown}`, () => showPicture(room, post));
      return { result: 'sent', messageId: shown };
    } catch (error) {
      return failureOf(error);
    }
  };
};
