import { z } from 'zod';
import type { EpochMs } from '../../src/core/units.ts';
import type { Heard } from '../../src/ports/chat.ts';
import { messageId, msFromTs, placeIn, PLATFORM, roomOf } from './ids.ts';
import { plainWords } from './text.ts';

/** The bot's ids in its workspace, from auth.test. */
export interface SlackIdentity {
  userId: string;
  botId: string;
}

/** A message in events and in the channel's history. */
export const slackMessage = z.object({
  ts: z.string(),
  text: z.string().nullish(),
  user: z.string().nullish(),
  bot_id: z.string().nullish(),
  subtype: z.string().nullish(),
  thread_ts: z.string().nullish(),
  latest_reply: z.string().nullish(),
  edited: z.object({ ts: z.string() }).nullish(),
});
export type SlackMessage = z.infer<typeof slackMessage>;

const spokenEvent = slackMessage.extend({ type: z.literal('message'), channel: z.string() });
/** Neither kind has a user at its top level, but its message has (https://docs.slack.dev/reference/events/message/message_changed/). */
const changedEvent = z.object({
  type: z.literal('message'),
  subtype: z.literal('message_changed'),
  channel: z.string(),
  ts: z.string(),
  message: slackMessage,
  previous_message: slackMessage.nullish(),
});
const deletedEvent = z.object({
  type: z.literal('message'),
  subtype: z.literal('message_deleted'),
  channel: z.string(),
  ts: z.string(),
  previous_message: slackMessage,
});
export const messageEvent = z.union([changedEvent, deletedEvent, spokenEvent]);
type MessageEvent = z.infer<typeof messageEvent>;

const PERSONS_SUBTYPES = new Set([undefined, null, 'file_share', 'thread_broadcast']);

/**
 * The person who wrote the message; null = nobody. Bots that answer bots never stop, and Bolt's ignoreSelf lets other bots
 * and the bot's own changed messages through (https://github.com/slackapi/bolt-js/blob/main/src/middleware/builtin.ts), so
 * everything that is not from a person is ignored here. Joins, topics and the like are subtypes too.
 */
const authorOf = (message: SlackMessage, me: SlackIdentity): string | null =>
  message.bot_id != null ||
  message.user === me.userId ||
  message.user === 'USLACKBOT' ||
  !PERSONS_SUBTYPES.has(message.subtype)
    ? null
    : (message.user ?? null);

const heard = (
  channel: string,
  user: string,
  id: string,
  sentTs: string,
  heardMs: EpochMs,
  event: Heard['event'],
): Heard => ({
  platform: PLATFORM,
  id,
  user,
  userName: null,
  room: roomOf(channel),
  sentMs: msFromTs(sentTs),
  heardMs,
  event,
});

/** A person's message; null = it is not from a person. */
export const heardMessage = (
  channel: string,
  message: SlackMessage,
  me: SlackIdentity,
  heardMs: EpochMs,
): Heard | null => {
  const user = authorOf(message, me);
  if (user === null) return null;
  const place = placeIn(channel, message);
  const { text, addressed } = plainWords(message.text ?? '', me.userId);
  return heard(channel, user, messageId(place), place.ts, heardMs, {
    is: 'message',
    text,
    addressed: addressed || roomOf(channel) === null,
    repliesTo: place.threadTs === null ? null : messageId({ channel, ts: place.threadTs, threadTs: null }),
  });
};

/** A person's change of an earlier message. Its id has the time of the change, which the history has too. */
export const heardEdit = (
  channel: string,
  message: SlackMessage,
  me: SlackIdentity,
  heardMs: EpochMs,
): Heard | null => {
  const user = authorOf(message, me);
  if (user === null || message.edited == null) return null;
  const of = messageId(placeIn(channel, message));
  const { text } = plainWords(message.text ?? '', me.userId);
  const editedTs = message.edited.ts;
  return heard(channel, user, `edit:${of}:${editedTs}`, editedTs, heardMs, { is: 'edit', of, text });
};

const heardDeletion = (
  channel: string,
  message: SlackMessage,
  me: SlackIdentity,
  deletedTs: string,
  heardMs: EpochMs,
): Heard | null => {
  const user = authorOf(message, me);
  if (user === null) return null;
  const of = messageId(placeIn(channel, message));
  return heard(channel, user, `deletion:${of}`, deletedTs, heardMs, { is: 'deletion', of });
};

const heardChange = (
  event: z.infer<typeof changedEvent>,
  me: SlackIdentity,
  heardMs: EpochMs,
): Heard | null => {
  const { channel, message, previous_message: before } = event;
  // A deleted message with replies is changed into a tombstone. Grade: from memory.
  if (message.subtype === 'tombstone')
    return before == null ? null : heardDeletion(channel, before, me, event.ts, heardMs);
  // Link previews and the bot's own chat.update are message_changed too; without new words they are not edits.
  return before?.text === message.text ? null : heardEdit(channel, message, me, heardMs);
};

/** What a `message` event of any kind says; null = nothing. */
export const heardEvent = (event: MessageEvent, me: SlackIdentity, heardMs: EpochMs): Heard | null => {
  if ('message' in event) return heardChange(event, me, heardMs);
  return 'previous_message' in event
    ? heardDeletion(event.channel, event.previous_message, me, event.ts, heardMs)
    : heardMessage(event.channel, event, me, heardMs);
};
