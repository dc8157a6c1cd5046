import { webApi } from '@slack/bolt';
import { MS_PER_HOUR, MS_PER_MINUTE, MS_PER_SECOND } from '../../src/core/units.ts';
import type { ChannelCursor } from './cursor.ts';
import { errorCode, reasonOf } from './failure.ts';
import { slackHistory } from './history.ts';
import { msFromTs, roomOf, tsFromMs } from './ids.ts';
import type { ListenDeps } from './listen.ts';
import type { SlackMessage } from './messages.ts';
import { heardEdit, heardMessage } from './messages.ts';
import { pause } from './patience.ts';

/** A message may appear in the history a little after a later one. Grade: common practice. */
const OVERLAP_MS = MS_PER_MINUTE;

/** How far back to read after a gap, for threads and edits of known messages: a day's work. Grade: chosen. */
export const SHIFT_MS = 12 * MS_PER_HOUR;
/** How far back to read in between, for what was missed lately. Grade: chosen. */
export const LATELY_MS = 10 * MS_PER_MINUTE;

/**
 * Reads what was written while the bot was not connected. Slack queues nothing for an app that is away, and delivers an
 * event to any one of the app's open sockets, even to that of a forgotten second process
 * (https://github.com/slackapi/bolt-js/issues/1840). Messages heard live have the same id, so the inbox knows them. The
 * history does not show deletions, nor replies in threads that began longer ago than `lookBackMs`.
 */
export const reader = (
  web: webApi.WebClient,
  cursor: ChannelCursor,
  ears: ListenDeps,
  closing: AbortSignal,
) => {
  const { me, onHeard, nowMs, log } = ears;
  const history = slackHistory(web);

  const hear = async (
    channel: string,
    message: SlackMessage,
    since: string,
    known: string,
  ): Promise<void> => {
    const atMs = nowMs();
    const fresh = message.ts > since ? heardMessage(channel, message, me, atMs) : null;
    if (fresh !== null) await onHeard(fresh);
    // A message first heard here already has its latest words.
    const edited = message.ts <= known && (message.edited?.ts ?? '') > since;
    const edit = edited ? heardEdit(channel, message, me, atMs) : null;
    if (edit !== null) await onHeard(edit);
  };

  /**
   * From where to read; null = from now on. A room that was never read starts now, because what was said before the bot
   * came is not meant for it; a direct conversation starts earlier.
   */
  const readFrom = async (channel: string): Promise<string | null> => {
    const known = await cursor.lastSeen(channel);
    if (known !== null) return known;
    if (roomOf(channel) === null) return tsFromMs(nowMs() - SHIFT_MS);
    await cursor.saw(channel, tsFromMs(nowMs()));
    return null;
  };

  const readChannel = async (channel: string, lookBackMs: number): Promise<void> => {
    const known = await readFrom(channel);
    if (known === null) return;
    const since = tsFromMs(msFromTs(known) - OVERLAP_MS);
    const oldest = tsFromMs(msFromTs(known) - Math.max(lookBackMs, OVERLAP_MS));
    const messages = await history.messages(channel, oldest);
    for (const message of messages) {
      await hear(channel, message, since, known);
      const replied = (message.latest_reply ?? '') > since;
      const replies = replied ? await history.replies(channel, message.ts, since) : [];
      for (const reply of replies) await hear(channel, reply, since, known);
    }
    // Only a complete reading moves the cursor: a live message says nothing about earlier ones.
    await cursor.saw(channel, messages.at(-1)?.ts ?? known);
  };

  /** Waits out rate limits here: starting again with the first channel would never reach the last. */
  const readPatiently = async (channel: string, lookBackMs: number): Promise<void> => {
    try {
      await readChannel(channel, lookBackMs);
    } catch (error) {
      if (error instanceof webApi.WebAPIRateLimitedError && !closing.aborted) {
        await pause(error.retryAfter * MS_PER_SECOND, closing);
        await readPatiently(channel, lookBackMs);
        return;
      }
      // An unreadable room must not keep the others from being read.
      if (errorCode(error) === null) throw error;
      log('warn', `The history of ${channel} can't be read: ${reasonOf(error)}.`);
    }
  };

  return async (lookBackMs: number): Promise<void> => {
    for (const channel of await history.channels()) await readPatiently(channel, lookBackMs);
  };
};
