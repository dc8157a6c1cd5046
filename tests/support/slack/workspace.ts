/** What a Slack workspace knows: conversations and their messages, in the shapes of its Web API. */

export type ChannelKind = 'public' | 'private' | 'im';

export interface StoredMessage {
  type: 'message';
  ts: string;
  text: string;
  user?: string;
  bot_id?: string;
  subtype?: string;
  thread_ts?: string;
  latest_reply?: string;
  reply_count?: number;
  edited?: { user: string; ts: string };
  blocks?: unknown[];
  metadata?: unknown;
  files?: { id: string; title: string }[];
}

export interface Conversation {
  id: string;
  kind: ChannelKind;
  archived: boolean;
  /** The bot was invited. */
  member: boolean;
  /** The person on the other side of a direct message. */
  user: string | null;
  messages: StoredMessage[];
}

export const TEAM = 'T0BEETS01';
export const BOT = { user: 'U0BOT0001', botId: 'B0BOT0001', appId: 'A0BEETS01' } as const;

export interface Workspace {
  channels: Map<string, Conversation>;
  /** People with an account; closed ones are in `closedAccounts`. */
  users: Set<string>;
  closedAccounts: Set<string>;
  addChannel: (id: string, kind: ChannelKind) => Conversation;
  /** The direct conversation of a person with the bot, opened when first needed. */
  direct: (user: string) => Conversation;
  /** A fresh ts: unique, growing, microseconds after the dot. */
  nextTs: () => string;
  put: (conversation: Conversation, message: Omit<StoredMessage, 'type' | 'ts'>) => StoredMessage;
  find: (channel: string, ts: string) => StoredMessage | undefined;
}

export const makeWorkspace = (nowMs: () => number): Workspace => {
  const channels = new Map<string, Conversation>();
  const users = new Set<string>();
  let lastMicros = 0;

  const nextTs = (): string => {
    lastMicros = Math.max(lastMicros + 1, Math.floor(nowMs() * 1000));
    const micros = String(lastMicros);
    return `${micros.slice(0, -6)}.${micros.slice(-6)}`;
  };
  const add = (id: string, kind: ChannelKind, user: string | null): Conversation => {
    const conversation = { id, kind, archived: false, member: true, user, messages: [] };
    channels.set(id, conversation);
    return conversation;
  };
  const find = (channel: string, ts: string) => channels.get(channel)?.messages.find((m) => m.ts === ts);

  const put: Workspace['put'] = (conversation, message) => {
    const stored: StoredMessage = { type: 'message', ts: nextTs(), ...message };
    conversation.messages.push(stored);
    const parent = stored.thread_ts === undefined ? undefined : find(conversation.id, stored.thread_ts);
    if (parent !== undefined) {
      parent.thread_ts = parent.ts;
      parent.latest_reply = stored.ts;
      parent.reply_count = (parent.reply_count ?? 0) + 1;
    }
    return stored;
  };

  return {
    channels,
    users,
    closedAccounts: new Set(),
    addChannel: (id, kind) => add(id, kind, null),
    direct: (user) => channels.get(`D${user.slice(1)}`) ?? add(`D${user.slice(1)}`, 'im', user),
    nextTs,
    put,
    find,
  };
};
