import type { MatrixEvent } from 'matrix-js-sdk';
import { z } from 'zod';
import type { Heard } from '../../src/ports/chat.ts';
import { wordsFor } from './reactions.ts';
import type { SeenEvent } from './seen.ts';
import { afterName, withoutQuote } from './text.ts';

export interface MatrixIdentity {
  user: string;
  /** Names at the start of a message that address the bot. */
  names: () => readonly string[];
}

type Find = (room: string, id: string) => Promise<SeenEvent | null>;

/** m.notice is for messages of bots, and is never answered. */
const words = z.object({ msgtype: z.enum(['m.text', 'm.emote']), body: z.string() });
const edited = z.object({ 'm.new_content': words });
const mentions = z.object({ 'm.mentions': z.object({ user_ids: z.array(z.string()) }) });

/** What a person's event says to the bot; null = nothing. The event must be decrypted and not the bot's own. */
export const eventOf = async (
  event: MatrixEvent,
  me: MatrixIdentity,
  find: Find,
): Promise<Heard['event'] | null> => {
  switch (event.getType()) {
    case 'm.room.message':
      return event.getRelation()?.rel_type === 'm.replace'
        ? await editOf(event, me, find)
        : messageOf(event, me);
    case 'm.reaction':
      return await pressOf(event, me, find);
    case 'm.room.redaction':
      return await deletionOf(event, find);
    default:
      return null;
  }
};

const textOf = (body: string, me: MatrixIdentity): string => afterName(body, me.names()) ?? body;

const messageOf = (event: MatrixEvent, me: MatrixIdentity): Heard['event'] | null => {
  const { data } = words.safeParse(event.getContent());
  if (data === undefined) return null;
  const mentioned = mentions.safeParse(event.getContent()).data?.['m.mentions'].user_ids ?? [];
  const answered = event.replyEventId ?? null;
  const body = answered === null ? data.body : withoutQuote(data.body);
  return {
    is: 'message',
    text: textOf(body, me),
    addressed: mentioned.includes(me.user) || afterName(body, me.names()) !== null,
    // In a thread, a plain message refers to the one before it, for clients without threads.
    repliesTo: event.getWireContent()['m.relates_to']?.is_falling_back === true ? null : answered,
  };
};

/** The homeserver does not check that edits and deletions come from the sender of the message. */
const isOwn = async (event: MatrixEvent, of: string, find: Find): Promise<boolean> =>
  (await find(event.getRoomId() ?? '', of))?.sender === event.getSender();

const editOf = async (event: MatrixEvent, me: MatrixIdentity, find: Find): Promise<Heard['event'] | null> => {
  const of = event.getRelation()?.event_id;
  const { data } = edited.safeParse(event.getContent());
  if (of === undefined || data === undefined || !(await isOwn(event, of, find))) return null;
  return { is: 'edit', of, text: textOf(withoutQuote(data['m.new_content'].body), me) };
};

const deletionOf = async (event: MatrixEvent, find: Find): Promise<Heard['event'] | null> => {
  // Rooms of version 11 and later have it in the content.
  const of =
    event.getAssociatedId() ?? z.object({ redacts: z.string() }).safeParse(event.getContent()).data?.redacts;
  return of !== undefined && (await isOwn(event, of, find)) ? { is: 'deletion', of } : null;
};

/** A reaction with the number of a choice means the words of that choice. */
const pressOf = async (
  event: MatrixEvent,
  me: MatrixIdentity,
  find: Find,
): Promise<Heard['event'] | null> => {
  const { event_id: on, key } = event.getRelation() ?? {};
  if (on === undefined || key === undefined) return null;
  const message = await find(event.getRoomId() ?? '', on);
  if (message?.sender !== me.user) return null;
  const said = wordsFor(message.choices, key);
  return said === null ? null : { is: 'message', text: said, addressed: true, repliesTo: on };
};
