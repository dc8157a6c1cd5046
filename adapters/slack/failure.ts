import { webApi } from '@slack/bolt';
import { reasonOf as plainReason } from '../../src/core/reason.ts';
import { MS_PER_SECOND } from '../../src/core/units.ts';
import type { PostResult } from '../../src/ports/chat.ts';

/**
 * Slack's errors after which the same message can never be delivered
 * (https://docs.slack.dev/reference/methods/chat.postMessage/#errors and the errors of conversations.open).
 * Faults of the installation, such as a revoked token, are not among them: they can be corrected.
 */
const NEVER: Record<string, string> = {
  channel_not_found: 'no such channel, or the bot is not in it',
  not_in_channel: 'the bot is not in that channel: invite it',
  is_archived: 'the channel is archived',
  user_not_found: 'no such user',
  users_not_found: 'no such user',
  user_disabled: 'the account is closed',
  cannot_dm_bot: 'that user is a bot',
  restricted_action: 'the workspace lets only some people post there',
  restricted_action_read_only_channel: 'the channel is read-only',
  thread_not_found: 'the thread is gone',
  msg_too_long: 'the text is too long',
  msg_blocks_too_long: 'the text is too long',
  no_text: 'there is no text',
  invalid_blocks: 'Slack refuses the layout',
};

export const errorCode = (error: unknown): string | null =>
  error instanceof webApi.WebAPIPlatformError ? error.data.error : null;

export const reasonOf = (error: unknown): string => {
  const code = errorCode(error);
  return code === null ? plainReason(error) : `Slack answered ${code}`;
};

/** What a failed Web API call means for the message that should be posted. */
export const failureOf = (error: unknown): PostResult => {
  if (error instanceof webApi.WebAPIRateLimitedError)
    return { result: 'retry-after', waitMs: error.retryAfter * MS_PER_SECOND };
  const code = errorCode(error);
  const never = code === null ? undefined : NEVER[code];
  return never === undefined
    ? { result: 'unknown', why: reasonOf(error) }
    : { result: 'gone', why: `${never} (${String(code)})` };
};
