import { z } from 'zod';
import type { EpochMs } from '../../src/core/units.ts';
import type { Heard } from '../../src/ports/chat.ts';
import { messageId, msFromTs, placeIn, PLATFORM, roomOf } from './ids.ts';
import type { SlackIdentity } from './messages.ts';
import { ticketFormValues, ticketWords } from './modal.ts';
import { plainWords } from './text.ts';

const person = z.object({ id: z.string(), username: z.string().nullish() });

/** A press has no event id; user, message, action and time identify it. */
export const pressBody = z.object({
  type: z.literal('block_actions'),
  user: person,
  trigger_id: z.string(),
  channel: z.object({ id: z.string() }).nullish(),
  /** The pressed message, or the App Home. */
  container: z.object({ message_ts: z.string().nullish(), view_id: z.string().nullish() }),
  message: z.object({ thread_ts: z.string().nullish() }).nullish(),
  // Bolt forwards only the first action; a pressed button sends just one.
  actions: z.tuple([z.object({ action_id: z.string(), action_ts: z.string(), value: z.string().nullish() })]),
});
type Press = z.infer<typeof pressBody>;

export const commandBody = z.object({
  command: z.string(),
  text: z.string().default(''),
  user_id: z.string(),
  user_name: z.string().nullish(),
  trigger_id: z.string(),
});
type Command = z.infer<typeof commandBody>;

export const submissionBody = z.object({
  type: z.literal('view_submission'),
  user: person,
  view: z.object({
    id: z.string(),
    callback_id: z.string(),
    private_metadata: z.string().default(''),
    state: z.object({ values: ticketFormValues }),
  }),
});
export type Submission = z.infer<typeof submissionBody>;

/** A press, command or form: always addressed to the bot. */
const said = (text: string, repliesTo: string | null): Heard['event'] => ({
  is: 'message',
  text,
  addressed: true,
  repliesTo,
});

export const heardPress = (press: Press, heardMs: EpochMs): Heard => {
  const [action] = press.actions;
  const { message_ts: ts, view_id: viewId } = press.container;
  const channel = press.channel?.id ?? null;
  const pressed =
    channel === null || ts == null
      ? null
      : messageId(placeIn(channel, { ts, thread_ts: press.message?.thread_ts }));
  return {
    platform: PLATFORM,
    id: ['press', press.user.id, pressed ?? viewId ?? '', action.action_id, action.action_ts].join(':'),
    user: press.user.id,
    userName: press.user.username ?? null,
    room: channel === null ? null : roomOf(channel),
    sentMs: msFromTs(action.action_ts),
    heardMs,
    event: said(action.value ?? '', pressed),
  };
};

/** A command counts as a direct message, wherever it was typed. Its trigger id is unique; Slack sends no time. */
export const heardCommand = (command: Command, me: SlackIdentity, heardMs: EpochMs): Heard => ({
  platform: PLATFORM,
  id: `command:${command.trigger_id}`,
  user: command.user_id,
  userName: command.user_name ?? null,
  room: null,
  sentMs: heardMs,
  heardMs,
  event: said(plainWords(command.text, me.userId).text || 'help', null),
});

/** If the answer to a submission is lost, the form stays open and is sent again: same view, same words, same id. */
export const heardSubmission = ({ user, view }: Submission, heardMs: EpochMs): Heard => {
  const words = ticketWords(view.state.values);
  return {
    platform: PLATFORM,
    id: `form:${view.id}:${words}`,
    user: user.id,
    userName: user.username ?? null,
    room: view.private_metadata === '' ? null : view.private_metadata,
    sentMs: heardMs,
    heardMs,
    event: said(words, null),
  };
};
