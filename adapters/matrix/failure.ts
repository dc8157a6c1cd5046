import { HTTPError, MatrixError } from 'matrix-js-sdk';
import { reasonOf } from '../../src/core/reason.ts';
import type { PostResult } from '../../src/ports/chat.ts';

type PostFailure = Exclude<PostResult, { result: 'sent' }>;

/** If the server gives no time. Grade: chosen. */
const DEFAULT_WAIT_MS = 5000;

/**
 * Errors after which the same request can never succeed (https://spec.matrix.org/latest/client-server-api/, "Common
 * error codes" and "Other error codes"). Faults that can be corrected, such as a revoked token, are not among them.
 */
const NEVER: Record<string, string> = {
  M_FORBIDDEN: 'the bot is not in that room, or may not write there',
  M_NOT_FOUND: 'no such room',
  M_TOO_LARGE: 'the message is too long',
  M_BAD_JSON: 'the homeserver refuses the form of the message',
  M_INVALID_PARAM: 'the homeserver refuses an address in it',
  M_UNSUPPORTED_ROOM_VERSION: 'the homeserver does not know that kind of room',
};

export const errorCode = (error: unknown): string | null =>
  error instanceof MatrixError ? (error.errcode ?? null) : null;

/** The token is no longer valid; waiting does not help. */
export const isLoggedOut = (error: unknown): boolean =>
  ['M_UNKNOWN_TOKEN', 'M_MISSING_TOKEN', 'M_USER_DEACTIVATED'].includes(errorCode(error) ?? '');

/** `Retry-After`, or the older `retry_after_ms`. The SDK throws on a malformed one. */
const waitMs = (error: HTTPError): number => {
  try {
    return Math.max(error.getRetryAfterMs() ?? DEFAULT_WAIT_MS, 0);
  } catch {
    return DEFAULT_WAIT_MS;
  }
};

/** What a failed request means for the message that should be posted. */
export const failureOf = (error: unknown): PostFailure => {
  if (error instanceof HTTPError && error.isRateLimitError())
    return { result: 'retry-after', waitMs: waitMs(error) };
  const never = NEVER[errorCode(error) ?? ''];
  return never === undefined
    ? { result: 'unknown', why: reasonOf(error) }
    : { result: 'gone', why: `${never} (${reasonOf(error)})` };
};
