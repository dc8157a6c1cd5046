/**
 * The Web API methods that the bot may call, each with its documented arguments and scopes
 * (https://docs.slack.dev/reference/methods/NAME). Stricter than Slack, which ignores arguments that it does not know.
 */
import { messageBlocks, view } from './blocks.ts';
import { Refused } from './refused.ts';
import type { Uploads } from './uploads.ts';
import type { ChannelKind, Conversation, StoredMessage, Workspace } from './workspace.ts';
import { BOT, TEAM } from './workspace.ts';

export type Args = Record<string, unknown>;
export type Answer = Record<string, unknown>;

export interface Method {
  token: 'bot' | 'app';
  /** One scope, or one for each kind of conversation. */
  scopes: string | Record<ChannelKind, string> | null;
  required: readonly string[];
  optional: readonly string[];
  run: (args: Args, world: World) => Answer;
}

export interface World {
  workspace: Workspace;
  socketUrl: () => string;
  uploads: Uploads;
  homes: Map<string, unknown>;
  forms: { triggerId: string; view: unknown }[];
}

const PAGING = ['cursor', 'limit'] as const;
const HISTORY = { public: 'channels:history', private: 'groups:history', im: 'im:history' } as const;
const READ = { public: 'channels:read', private: 'groups:read', im: 'im:read' } as const;
const POST_OPTIONS = [
  'text',
  'blocks',
  'thread_ts',
  'reply_broadcast',
  'metadata',
  'unfurl_links',
  'unfurl_media',
];

/** A channel that the bot can see; to others Slack says that there is none. */
export const channelOf = (args: Args, { workspace }: World): Conversation => {
  const found = workspace.channels.get(String(args['channel'] ?? args['channel_id']));
  if (found === undefined || (!found.member && found.kind !== 'public'))
    throw new Refused('channel_not_found');
  if (!found.member) throw new Refused('not_in_channel');
  return found;
};

const checkContent = ({ text, blocks }: Args): { text: string; blocks?: unknown[] } => {
  if (typeof text !== 'string' || text === '') throw new Refused('no_text');
  if (text.length > 40_000) throw new Refused('msg_too_long');
  if (blocks === undefined) return { text };
  const checked = messageBlocks.safeParse(blocks);
  if (!checked.success) throw new Refused('invalid_blocks');
  return { text, blocks: checked.data };
};

const writable = (args: Args, world: World): Conversation => {
  const channel = channelOf(args, world);
  if (channel.archived) throw new Refused('is_archived');
  return channel;
};

const postMessage = (args: Args, world: World): Answer => {
  const channel = writable(args, world);
  const thread = args['thread_ts'];
  const message = world.workspace.put(channel, {
    ...checkContent(args),
    bot_id: BOT.botId,
    user: BOT.user,
    ...(typeof thread === 'string' ? { thread_ts: thread } : {}),
    ...(args['metadata'] === undefined ? {} : { metadata: args['metadata'] }),
  });
  return { channel: channel.id, ts: message.ts, message };
};

const updateMessage = (args: Args, world: World): Answer => {
  const channel = writable(args, world);
  const message = world.workspace.find(channel.id, String(args['ts']));
  if (message === undefined) throw new Refused('message_not_found');
  if (message.bot_id !== BOT.botId) throw new Refused('cant_update_message');
  Object.assign(message, checkContent(args));
  return { channel: channel.id, ts: message.ts, text: message.text };
};

/** `oldest` itself is left out, as `inclusive` is false by default. */
const since = (messages: readonly StoredMessage[], args: Args): StoredMessage[] =>
  messages.filter(({ ts }) => typeof args['oldest'] !== 'string' || ts > args['oldest']);

const page = <T>(
  items: readonly T[],
  args: Args,
): { items: T[]; response_metadata: { next_cursor: string } } => {
  const from = Number(args['cursor'] ?? 0);
  const to = from + Number(args['limit'] ?? 100);
  return {
    items: items.slice(from, to),
    response_metadata: { next_cursor: to < items.length ? String(to) : '' },
  };
};

const messagePage = (messages: readonly StoredMessage[], args: Args): Answer => {
  const { items, response_metadata } = page(messages, args);
  const bare = items.map(({ metadata, ...rest }) =>
    args['include_all_metadata'] === true && metadata !== undefined ? { ...rest, metadata } : rest,
  );
  return { messages: bare, has_more: response_metadata.next_cursor !== '', response_metadata };
};

const isReply = (message: StoredMessage): boolean =>
  message.thread_ts !== undefined && message.thread_ts !== message.ts;

/** Newest first, without what stands in threads only. */
const history = (args: Args, world: World): Answer => {
  const { messages } = channelOf(args, world);
  const shown = messages.filter((message) => !isReply(message) || message.subtype === 'thread_broadcast');
  return messagePage(since(shown, args).toReversed(), args);
};

/** The thread's first message, then its replies, oldest first. */
const replies = (args: Args, world: World): Answer => {
  const { messages } = channelOf(args, world);
  const parent = messages.find(({ ts }) => ts === args['ts']);
  if (parent === undefined) throw new Refused('thread_not_found');
  const answers = messages.filter((message) => isReply(message) && message.thread_ts === parent.ts);
  return messagePage([parent, ...since(answers, args)], args);
};

const openConversation = (args: Args, { workspace }: World): Answer => {
  const user = String(args['users']);
  if (workspace.closedAccounts.has(user)) throw new Refused('user_disabled');
  if (!workspace.users.has(user)) throw new Refused('user_not_found');
  return { channel: { id: workspace.direct(user).id } };
};

export const kindsOf = (types: unknown): ChannelKind[] =>
  String(types)
    .split(',')
    .map((type) => {
      if (type === 'public_channel') return 'public';
      if (type === 'private_channel') return 'private';
      if (type === 'im') return 'im';
      throw new Refused('invalid_types');
    });

const listConversations = (args: Args, { workspace }: World): Answer => {
  const kinds = kindsOf(args['types']);
  const joined = [...workspace.channels.values()].filter(
    (channel) =>
      channel.member &&
      kinds.includes(channel.kind) &&
      !(args['exclude_archived'] === true && channel.archived),
  );
  const { items, response_metadata } = page(joined, args);
  return { channels: items.map(({ id, kind }) => ({ id, is_im: kind === 'im' })), response_metadata };
};

/** The file becomes a message of the bot; Slack does not tell which. */
const completeUpload = (args: Args, world: World): Answer => {
  const channel = writable(args, world);
  const files = world.uploads.complete(args['files']);
  const thread = args['thread_ts'];
  world.workspace.put(channel, {
    text: '',
    subtype: 'file_share',
    bot_id: BOT.botId,
    user: BOT.user,
    files,
    ...(typeof thread === 'string' ? { thread_ts: thread } : {}),
  });
  return { files };
};

const checkedView = (args: Args): unknown => {
  const checked = view.safeParse(args['view']);
  if (!checked.success) throw new Refused('invalid_arguments');
  return checked.data;
};

export const METHODS: Record<string, Method> = {
  'auth.test': {
    token: 'bot',
    scopes: null,
    required: [],
    optional: [],
    run: () => ({ url: 'http://127.0.0.1/', team_id: TEAM, user_id: BOT.user, bot_id: BOT.botId }),
  },
  'apps.connections.open': {
    token: 'app',
    scopes: 'connections:write',
    required: [],
    optional: [],
    run: (_, world) => ({ url: world.socketUrl() }),
  },
  'chat.postMessage': {
    token: 'bot',
    scopes: 'chat:write',
    required: ['channel'],
    optional: POST_OPTIONS,
    run: postMessage,
  },
  'chat.update': {
    token: 'bot',
    scopes: 'chat:write',
    required: ['channel', 'ts'],
    optional: ['text', 'blocks', 'metadata'],
    run: updateMessage,
  },
  'conversations.history': {
    token: 'bot',
    scopes: HISTORY,
    required: ['channel'],
    optional: [...PAGING, 'oldest', 'latest', 'inclusive', 'include_all_metadata'],
    run: history,
  },
  'conversations.replies': {
    token: 'bot',
    scopes: HISTORY,
    required: ['channel', 'ts'],
    optional: [...PAGING, 'oldest', 'latest', 'inclusive', 'include_all_metadata'],
    run: replies,
  },
  'conversations.open': {
    token: 'bot',
    scopes: 'im:write',
    required: [],
    optional: ['users', 'channel', 'return_im', 'prevent_creation'],
    run: openConversation,
  },
  'files.getUploadURLExternal': {
    token: 'bot',
    scopes: 'files:write',
    required: ['filename', 'length'],
    optional: ['alt_text', 'snippet_type'],
    run: (args, world) => world.uploads.announce(args),
  },
  'files.completeUploadExternal': {
    token: 'bot',
    scopes: 'files:write',
    required: ['files'],
    optional: ['channel_id', 'channels', 'thread_ts', 'initial_comment', 'blocks'],
    run: completeUpload,
  },
  'users.conversations': {
    token: 'bot',
    scopes: READ,
    required: [],
    optional: [...PAGING, 'types', 'exclude_archived', 'user', 'team_id'],
    run: listConversations,
  },
  'views.open': {
    token: 'bot',
    scopes: null,
    required: ['view'],
    optional: ['trigger_id', 'interactivity_pointer'],
    run: (args, world) => {
      world.forms.push({ triggerId: String(args['trigger_id']), view: checkedView(args) });
      return { view: { id: `V${String(world.forms.length)}` } };
    },
  },
  'views.publish': {
    token: 'bot',
    scopes: null,
    required: ['user_id', 'view'],
    optional: ['hash'],
    run: (args, world) => {
      world.homes.set(String(args['user_id']), checkedView(args));
      return { view: { id: `VHOME${String(args['user_id'])}` } };
    },
  },
};
