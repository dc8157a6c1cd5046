/** Messages go out: the only place that sends. */
import { reasonOf } from '../../core/reason.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Chat, PostResult } from '../../ports/chat.ts';
import type { Claimed, Outbox } from '../../ports/outbox.ts';
import type { Metrics } from '../host/metrics.ts';
import type { Log } from '../../ports/log.ts';

/** Longer than any platform's own time limit for a post, so that no second deliverer takes a message that is under way. */
const LEASE_MS = 60_000;
const BATCH = 20;
const FIRST_RETRY_MS = 1_000;
/** A chat that is back after an outage gets a stop notice within this; a request every ten seconds is no burden to it. */
const LONGEST_RETRY_MS = 10_000;

/** So often a refused stop is tried again. Grade: chosen: no burden, and soon after an invitation. */
const REFUSED_RETRY_MS = 60_000;

export type Send = (message: Claimed) => Promise<PostResult>;

type Poster = Pick<Chat, 'platform' | 'post'>;

const post = async (
  chats: readonly Poster[],
  { platform, key, to, said, repliesTo, replaces, urgent }: Claimed,
): Promise<PostResult> => {
  const chat = chats.find((c) => c.platform === platform);
  if (!chat) return { result: 'gone', why: `no adapter for ${platform} is running` };
  try {
    return await chat.post({ key, to, said, repliesTo, replaces, urgent });
  } catch (error) {
    return { result: 'unknown', why: reasonOf(error) };
  }
};

/**
 * Sends over the adapter of the message's platform. A message whose lease ran out while it is being posted, because the
 * machine slept or its clock was set, is not posted beside itself: whoever takes it over waits for the same answer.
 */
export const overChats = (chats: readonly Poster[]): Send => {
  const underWay = new Map<number, Promise<PostResult>>();
  return (message) => {
    const { id } = message;
    const posting = underWay.get(id) ?? post(chats, message).finally(() => underWay.delete(id));
    underWay.set(id, posting);
    return posting;
  };
};

/** Sends, and counts what became of it. */
export const counted =
  (send: Send, { delivered, deliveryFailures }: Metrics): Send =>
  async (message) => {
    const { platform } = message;
    const posted = await send(message);
    if (posted.result === 'sent') delivered.inc({ platform });
    else deliveryFailures.inc({ platform, result: posted.result });
    return posted;
  };

/** Waits double from a second to ten. A message is never dropped for failing often: a lost stop notice is the worst. */
const retryMs = (attempts: number): number =>
  Math.min(LONGEST_RETRY_MS, FIRST_RETRY_MS * 2 ** Math.max(0, attempts - 1));

/** The 1st, 2nd, 4th, 8th ...: a night without the chat must not fill the log. */
const isLogged = (attempts: number): boolean => Number.isInteger(Math.log2(attempts));

/** A stop is tried until a newer word of it goes out: somebody may invite the bot. Anything else is put aside. */
const refused = async (
  outbox: Outbox,
  { id, key, platform, attempts, kind }: Claimed,
  why: string,
  nowMs: EpochMs,
  log: Log,
): Promise<void> => {
  if (kind === 'notice') {
    if (isLogged(attempts)) log.error({ key, platform, why }, 'A notice is refused; it is tried again');
    await outbox.again(id, nowMs + REFUSED_RETRY_MS, why);
    return;
  }
  log.error({ key, platform, why }, 'A message can never be delivered and is put aside');
  await outbox.giveUp(id, why, nowMs);
};

const settle = async (
  outbox: Outbox,
  message: Claimed,
  result: PostResult,
  nowMs: EpochMs,
  log: Log,
): Promise<void> => {
  const { id, key, platform, attempts } = message;
  switch (result.result) {
    case 'sent':
      await outbox.sent(id, result.messageId, nowMs);
      return;
    case 'retry-after':
      await outbox.later(id, nowMs + result.waitMs, 'the platform asked to wait');
      return;
    case 'gone':
      await refused(outbox, message, result.why, nowMs, log);
      return;
    case 'unknown': {
      if (isLogged(attempts))
        log.warn(
          { key, platform, attempts, why: result.why },
          'A message may not have been delivered; it is tried again',
        );
      const untilMs = nowMs + retryMs(attempts);
      // Of what is urgent none waits for another; the rest keeps its order.
      await (message.urgent ? outbox.again(id, untilMs, result.why) : outbox.later(id, untilMs, result.why));
      return;
    }
  }
};

/** Sends all that may go out now, one at a time in each room and rooms side by side; returns how many were tried. */
export const deliver = async (
  outbox: Outbox,
  platforms: readonly string[],
  send: Send,
  clock: () => EpochMs,
  log: Log,
): Promise<number> => {
  let tried = 0;
  for (;;) {
    const claimed = await outbox.claim(platforms, clock(), LEASE_MS, BATCH);
    if (claimed.length === 0) return tried;
    tried += claimed.length;
    await Promise.all(
      claimed.map(async (message) => settle(outbox, message, await send(message), clock(), log)),
    );
  }
};
