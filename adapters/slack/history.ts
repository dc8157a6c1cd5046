import type { webApi } from '@slack/bolt';
import type { SlackMessage } from './messages.ts';
import { slackMessage } from './messages.ts';

const PAGE = 200;

type Pages = (cursor: { cursor?: string }) => Promise<{
  messages?: unknown[];
  channels?: { id?: string }[];
  response_metadata?: { next_cursor?: string };
}>;

const allPages = async function* (call: Pages) {
  let cursor: string | undefined;
  do {
    const page = await call(cursor === undefined ? {} : { cursor });
    yield page;
    const next = page.response_metadata?.next_cursor;
    cursor = next === '' ? undefined : next;
  } while (cursor !== undefined);
};

const messagesOf = async (call: Pages): Promise<SlackMessage[]> => {
  const messages: SlackMessage[] = [];
  for await (const page of allPages(call))
    for (const message of page.messages ?? []) {
      const { success, data } = slackMessage.safeParse(message);
      if (success) messages.push(data);
    }
  return messages.sort((a, b) => (a.ts < b.ts ? -1 : 1));
};

/** Slack's history over all pages, oldest first, without `oldest` itself. */
export const slackHistory = (web: webApi.WebClient) => ({
  /** The conversations that the bot is in. */
  channels: async (): Promise<string[]> => {
    const found: string[] = [];
    const types = 'public_channel,private_channel,im';
    for await (const page of allPages((next) =>
      web.users.conversations({ types, exclude_archived: true, limit: PAGE, ...next }),
    ))
      for (const { id } of page.channels ?? []) if (id !== undefined) found.push(id);
    return found;
  },

  /** Without the replies in threads. */
  messages: (channel: string, oldest: string): Promise<SlackMessage[]> =>
    messagesOf((next) => web.conversations.history({ channel, oldest, limit: PAGE, ...next })),

  replies: async (channel: string, threadTs: string, oldest: string): Promise<SlackMessage[]> => {
    const thread = await messagesOf((next) =>
      web.conversations.replies({ channel, ts: threadTs, oldest, limit: PAGE, ...next }),
    );
    // The thread's first message is always included.
    return thread.filter(({ ts }) => ts !== threadTs);
  },
});
