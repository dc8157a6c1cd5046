import type { webApi } from '@slack/bolt';
import type { EpochMs } from '../../src/core/units.ts';
import type { Post, PostResult, TicketForm } from '../../src/ports/chat.ts';
import type { DrawPicture } from '../../src/ports/picture.ts';
import type { LogLine } from '../../src/ports/log.ts';
import { errorCode, failureOf, reasonOf } from './failure.ts';
import { messageId, placeOf } from './ids.ts';
import { pictures } from './picture.ts';
import type { Lane } from './posted.ts';
import { keyMetadata, postedKeys } from './posted.ts';
import { rendered } from './render.ts';

/** The message to be replaced is gone or cannot be changed any more: post a new one. */
const CANNOT_REPLACE = new Set(['message_not_found', 'cant_update_message', 'edit_window_closed']);

/**
 * In rooms everything is posted outside threads, because people miss what is in threads
 * (https://github.com/integrations/slack/issues/1500). Only what was asked in a thread is answered there, unless all must
 * see it.
 */
const threadOf = (post: Post): string | null =>
  post.said.ring || post.repliesTo === null ? null : (placeOf(post.repliesTo)?.threadTs ?? null);

interface SlackPostDeps {
  web: webApi.WebClient;
  form: TicketForm;
  /** Null = pictures are left out. */
  draw: DrawPicture | null;
  nowMs: () => EpochMs;
  log: LogLine;
}

/** The id under which the lane shows it; null = it does not, or nobody can say and it must not wait. */
const shownAlready = async (
  posted: ReturnType<typeof postedKeys>,
  lane: Lane,
  { key, urgent = false }: Post,
  log: LogLine,
): Promise<string | null> => {
  try {
    return await posted.find(lane, key);
  } catch (error) {
    if (!urgent) throw error;
    log(
      'warn',
      `Slack does not say what it shows (${reasonOf(error)}): an urgent message is posted all the same.`,
    );
    return null;
  }
};

export const poster = ({ web, form, draw, nowMs, log }: SlackPostDeps) => {
  const posted = postedKeys(web, nowMs);
  const showPicture = draw === null ? null : pictures(web, draw, log);
  const direct = new Map<string, string>();

  /** chat.postMessage accepts a user id, but history and chat.update need the channel's. */
  const channelOf = async (to: Post['to']): Promise<string> => {
    if ('room' in to) return to.room;
    const known = direct.get(to.user);
    if (known !== undefined) return known;
    const channel = (await web.conversations.open({ users: to.user })).channel?.id;
    if (channel === undefined) throw new Error('conversations.open returned no channel');
    direct.set(to.user, channel);
    return channel;
  };

  const content = (post: Post) => rendered(post.said, 'room' in post.to, form);

  /** Resolves with the message's id; null = it cannot be replaced any more. */
  const replace = async (post: Post, replaced: string): Promise<string | null> => {
    const place = placeOf(replaced);
    if (place === null) return null;
    try {
      await web.chat.update({ channel: place.channel, ts: place.ts, ...content(post) });
      return replaced;
    } catch (error) {
      if (CANNOT_REPLACE.has(errorCode(error) ?? '')) return null;
      throw error;
    }
  };

  const postNew = async (post: Post, lane: Lane): Promise<string> => {
    const { ts } = await web.chat.postMessage({
      channel: lane.channel,
      ...(lane.threadTs === null ? {} : { thread_ts: lane.threadTs }),
      ...content(post),
      metadata: keyMetadata(post.key),
      // Link previews are noise, and come back as changed messages.
      unfurl_links: false,
      unfurl_media: false,
    });
    if (ts === undefined) throw new Error('chat.postMessage returned no message');
    return messageId({ ...lane, ts });
  };

  const postOnce = async (post: Post): Promise<string> => {
    const lane: Lane = { channel: await channelOf(post.to), threadTs: threadOf(post) };
    const earlier = await shownAlready(posted, lane, post, log);
    if (earlier !== null) return earlier;
    try {
      const id = await postNew(post, lane);
      posted.add(lane, post.key, id);
      if (post.said.picture !== null) await showPicture?.(lane, post.said.picture);
      return id;
    } catch (error) {
      if (failureOf(error).result === 'unknown') posted.doubt(lane);
      throw error;
    }
  };

  return async (post: Post): Promise<PostResult> => {
    try {
      const replaced = post.replaces === null ? null : await replace(post, post.replaces);
      return { result: 'sent', messageId: replaced ?? (await postOnce(post)) };
    } catch (error) {
      return failureOf(error);
    }
  };
};
