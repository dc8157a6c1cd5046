/** What people do in Slack, as the payloads that Slack makes of it (https://docs.slack.dev/reference/events/). */
import { randomUUID } from 'node:crypto';
import type { Delivery, Kind } from './delivery.ts';
import type { Conversation, StoredMessage, Workspace } from './workspace.ts';
import { BOT, TEAM } from './workspace.ts';

const delivery = (kind: Kind, payload: Record<string, unknown>): Delivery => ({
  kind,
  payload,
  attempts: 0,
  acked: false,
  answer: null,
});

const CHANNEL_TYPE = { public: 'channel', private: 'group', im: 'im' } as const;

const triggerId = (): string => `${String(Date.now())}.${randomUUID()}`;

export interface SayOptions {
  threadTs?: string;
  /** Said by another app. */
  botId?: string;
  subtype?: string;
}

export const people = (workspace: Workspace) => {
  const event = (inner: Record<string, unknown>): Delivery =>
    delivery('events_api', {
      token: 'verification',
      team_id: TEAM,
      api_app_id: BOT.appId,
      type: 'event_callback',
      event_id: `Ev${randomUUID().replaceAll('-', '').toUpperCase()}`,
      event_time: Math.floor(Date.now() / 1000),
      is_ext_shared_channel: false,
      authorizations: [{ enterprise_id: null, team_id: TEAM, user_id: BOT.user, is_bot: true }],
      event: inner,
    });

  const about = (channel: Conversation) => ({
    channel: channel.id,
    channel_type: CHANNEL_TYPE[channel.kind],
  });

  const say = (channel: Conversation, user: string, text: string, options: SayOptions = {}) => {
    const { threadTs, botId, subtype } = options;
    const message = workspace.put(channel, {
      text,
      ...(botId === undefined ? { user } : { bot_id: botId }),
      ...(threadTs === undefined ? {} : { thread_ts: threadTs }),
      ...(subtype === undefined ? {} : { subtype }),
    });
    const { ts } = message;
    return { message, delivery: event({ ...message, ...about(channel), event_ts: ts, team: TEAM }) };
  };

  const changed = (channel: Conversation, message: StoredMessage, before: StoredMessage): Delivery => {
    const ts = workspace.nextTs();
    const inner = { type: 'message', subtype: 'message_changed', hidden: true, ts, event_ts: ts };
    return event({ ...inner, ...about(channel), message: { ...message }, previous_message: before });
  };

  const edit = (channel: Conversation, message: StoredMessage, text: string): Delivery => {
    const before = { ...message };
    message.text = text;
    message.edited = { user: message.user ?? '', ts: workspace.nextTs() };
    return changed(channel, message, before);
  };

  /** A preview of a link is added: a change without new words. */
  const unfurl = (channel: Conversation, message: StoredMessage): Delivery =>
    changed(channel, message, { ...message });

  const remove = (channel: Conversation, message: StoredMessage): Delivery => {
    channel.messages = channel.messages.filter(({ ts }) => ts !== message.ts);
    const ts = workspace.nextTs();
    const inner = { type: 'message', subtype: 'message_deleted', hidden: true, ts, event_ts: ts };
    return event({ ...inner, ...about(channel), deleted_ts: message.ts, previous_message: message });
  };

  /** A message with replies leaves a tombstone. */
  const entomb = (channel: Conversation, message: StoredMessage): Delivery => {
    const before = { ...message };
    Object.assign(message, { text: 'This message was deleted.', subtype: 'tombstone', user: 'USLACKBOT' });
    return changed(channel, message, before);
  };

  const press = (
    channel: Conversation,
    message: StoredMessage,
    user: string,
    button: { action_id: string; value?: string },
  ): Delivery =>
    delivery('interactive', {
      type: 'block_actions',
      user: { id: user, username: user.toLowerCase(), team_id: TEAM },
      api_app_id: BOT.appId,
      token: 'verification',
      container: { type: 'message', message_ts: message.ts, channel_id: channel.id, is_ephemeral: false },
      trigger_id: triggerId(),
      team: { id: TEAM, domain: 'beets' },
      channel: { id: channel.id, name: channel.kind === 'im' ? 'directmessage' : 'crew' },
      message,
      state: { values: {} },
      response_url: 'http://127.0.0.1/response',
      actions: [{ ...button, block_id: 'b1', type: 'button', action_ts: workspace.nextTs() }],
    });

  const pressHome = (user: string, button: { action_id: string; value?: string }): Delivery =>
    delivery('interactive', {
      type: 'block_actions',
      user: { id: user, username: user.toLowerCase(), team_id: TEAM },
      api_app_id: BOT.appId,
      token: 'verification',
      container: { type: 'view', view_id: `VHOME${user}` },
      trigger_id: triggerId(),
      team: { id: TEAM, domain: 'beets' },
      view: { id: `VHOME${user}`, type: 'home' },
      actions: [{ ...button, block_id: 'b1', type: 'button', action_ts: workspace.nextTs() }],
    });

  const command = (channel: Conversation, user: string, words: string): Delivery =>
    delivery('slash_commands', {
      token: 'verification',
      team_id: TEAM,
      team_domain: 'beets',
      channel_id: channel.id,
      channel_name: 'crew',
      user_id: user,
      user_name: user.toLowerCase(),
      command: '/fieldbell',
      text: words,
      api_app_id: BOT.appId,
      is_enterprise_install: 'false',
      response_url: 'http://127.0.0.1/response',
      trigger_id: triggerId(),
    });

  const submit = (user: string, view: Record<string, unknown>, fields: Record<string, string>): Delivery =>
    delivery('interactive', {
      type: 'view_submission',
      team: { id: TEAM, domain: 'beets' },
      user: { id: user, username: user.toLowerCase(), team_id: TEAM },
      api_app_id: BOT.appId,
      token: 'verification',
      trigger_id: triggerId(),
      view: {
        id: `V${randomUUID()}`,
        ...view,
        state: {
          values: Object.fromEntries(Object.entries(fields).map(([id, value]) => [id, { value: { value } }])),
        },
      },
      response_urls: [],
    });

  const openHome = (user: string, tab: 'home' | 'messages'): Delivery =>
    event({
      type: 'app_home_opened',
      user,
      channel: workspace.direct(user).id,
      tab,
      event_ts: workspace.nextTs(),
    });

  return { say, edit, unfurl, remove, entomb, press, pressHome, command, submit, openHome };
};
