import type { MatrixClient, Room } from 'matrix-js-sdk';
import { reasonOf } from '../../src/core/reason.ts';
import type { Post } from '../../src/ports/chat.ts';
import type { DrawPicture } from '../../src/ports/picture.ts';
import type { LogLine } from '../../src/ports/log.ts';
import { errorCode, failureOf } from './failure.ts';
import { pictureContent } from './picture.ts';
import { choicesOf } from './reactions.ts';
import type { EventSender } from './send.ts';

export interface ExtrasDeps {
  client: MatrixClient;
  send: EventSender;
  /** Null = pictures are left out. */
  draw: DrawPicture | null;
  log: LogLine;
}

/** Adds choices to tap, and a picture, to a message that says everything without them. */
export const extras = ({ client, send, draw, log }: ExtrasDeps) => {
  /** Leaves an extra out only if it can never be shown, not if it failed once. */
  const beside = async (what: string, show: () => Promise<void>): Promise<void> => {
    try {
      await show();
    } catch (error) {
      if (failureOf(error).result !== 'gone') throw error;
      log('warn', `${what} is left out: ${reasonOf(error)}.`);
    }
  };

  /** The bot reacts first, so that people need only tap. */
  const offerChoice = async (room: Room, shown: string, key: string, postKey: string): Promise<void> => {
    const content = { 'm.relates_to': { rel_type: 'm.annotation', event_id: shown, key } };
    try {
      await send.once(room, 'm.reaction', content, `${postKey} ${key}`);
    } catch (error) {
      // An earlier state of the message had this choice already.
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

  /** Posts the picture after the words; if the message replaces another, only the words change. */
  const showPicture = async (room: Room, { key, said: { picture }, replaces }: Post): Promise<void> => {
    const pictureKey = `${key} picture`;
    if (picture === null || replaces !== null || send.has(pictureKey)) return;
    const png = await drawn(picture.svg);
    if (png === null) return;
    const content = await pictureContent(client, room, png, picture.altText);
    await send.once(room, 'm.room.message', content, pictureKey);
  };

  /** `shown`: the id of the message. */
  return async (room: Room, shown: string, post: Post): Promise<void> => {
    for (const { key } of choicesOf(post.said.buttons))
      await beside(`Choice ${key} of ${shown}`, () => offerChoice(room, shown, key, post.key));
    await beside(`The picture of ${shown}`, () => showPicture(room, post));
  };
};
