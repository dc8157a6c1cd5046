import type { webApi } from '@slack/bolt';
import { z } from 'zod';
import { MS_PER_DAY } from '../../src/core/units.ts';
import type { EpochMs } from '../../src/core/units.ts';
import { messageId, tsFromMs } from './ids.ts';

/** Marks the bot's own messages with the outbox key (https://docs.slack.dev/messaging/message-metadata/). */
const EVENT_TYPE = 'fieldbell_outbox';

export const keyMetadata = (key: string) => ({ event_type: EVENT_TYPE, event_payload: { key } });

/** Older messages are not looked up: by then outbox messages have expired. Grade: chosen. */
const LOOK_BACK_MS = MS_PER_DAY;
const PAGE = 200;
const KEYS_KEPT = 2000;

const keyedMessage = z.object({
  ts: z.string(),
  metadata: z.object({ event_type: z.literal(EVENT_TYPE), event_payload: z.object({ key: z.string() }) }),
});

/** Where a message goes: in the channel, or in one of its threads. */
export interface Lane {
  channel: string;
  threadTs: string | null;
}

/**
 * Which outbox keys a lane already shows. chat.postMessage has no idempotency key, and its answer can be lost after the
 * message was shown; so the bot's own messages in the lane are read before the first post of this process (an earlier one
 * may have died between posting and recording it), and again after every failed post.
 */
export const postedKeys = (web: webApi.WebClient, nowMs: () => EpochMs) => {
  const known = new Map<string, Map<string, string>>();
  const nameOf = (lane: Lane): string => `${lane.channel}:${lane.threadTs ?? ''}`;

  const page = async (lane: Lane, cursor: string | undefined) => {
    const args = {
      channel: lane.channel,
      oldest: tsFromMs(nowMs() - LOOK_BACK_MS),
      include_all_metadata: true,
      limit: PAGE,
      ...(cursor === undefined ? {} : { cursor }),
    };
    // The history of a channel does not contain replies in threads.
    return lane.threadTs === null
      ? await web.conversations.history(args)
      : await web.conversations.replies({ ...args, ts: lane.threadTs });
  };

  const read = async (lane: Lane): Promise<Map<string, string>> => {
    const keys = new Map<string, string>();
    let cursor: string | undefined;
    do {
      const { messages = [], response_metadata: next } = await page(lane, cursor);
      for (const message of messages) {
        const { success, data } = keyedMessage.safeParse(message);
        if (success) keys.set(data.metadata.event_payload.key, messageId({ ...lane, ts: data.ts }));
      }
      cursor = next?.next_cursor === '' ? undefined : next?.next_cursor;
    } while (cursor !== undefined);
    return keys;
  };

  return {
    find: async (lane: Lane, key: string): Promise<string | null> => {
      const keys = known.get(nameOf(lane)) ?? (await read(lane));
      known.set(nameOf(lane), keys);
      return keys.get(key) ?? null;
    },
    add: (lane: Lane, key: string, id: string): void => {
      const keys = known.get(nameOf(lane));
      keys?.set(key, id);
      if (keys !== undefined && keys.size > KEYS_KEPT) keys.delete(keys.keys().next().value ?? '');
    },
    /** The post failed, but Slack may have shown it. */
    doubt: (lane: Lane): void => {
      known.delete(nameOf(lane));
    },
  };
};
