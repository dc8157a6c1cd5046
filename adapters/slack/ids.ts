import { MS_PER_SECOND } from '../../src/core/units.ts';
import type { EpochMs } from '../../src/core/units.ts';

/** Name of the platform in `Heard` and `Outgoing`. */
export const PLATFORM = 'slack';

/** Where a message is in Slack: `ts` is unique only in its channel; `threadTs` null = not a reply in a thread. */
interface SlackPlace {
  channel: string;
  ts: string;
  threadTs: string | null;
}

/**
 * The platform id of a message: `channel:ts`, and `channel:ts:thread` for a reply in a thread, so that an answer can go
 * into the thread without asking Slack. Live events and the channel's history give the same id.
 */
export const messageId = ({ channel, ts, threadTs }: SlackPlace): string =>
  threadTs === null ? `${channel}:${ts}` : `${channel}:${ts}:${threadTs}`;

const MESSAGE_ID = /^([A-Z][A-Z0-9]*):(\d+\.\d+)(?::(\d+\.\d+))?$/;

/** Null = not the id of a message (a pressed button, a command). */
export const placeOf = (id: string): SlackPlace | null => {
  const [, channel, ts, threadTs] = MESSAGE_ID.exec(id) ?? [];
  return channel === undefined || ts === undefined ? null : { channel, ts, threadTs: threadTs ?? null };
};

/** Once somebody has replied, a thread's first message has its own ts as `thread_ts`: it is not a reply. */
export const placeIn = (channel: string, message: { ts: string; thread_ts?: string | null | undefined }) => ({
  channel,
  ts: message.ts,
  threadTs: message.thread_ts == null || message.thread_ts === message.ts ? null : message.thread_ts,
});

/** Ids of direct conversations with the bot start with D (https://docs.slack.dev/reference/objects/im-object/). */
const isDirect = (channel: string): boolean => channel.startsWith('D');

/** `Heard.room`: null if a person wrote to the bot alone. */
export const roomOf = (channel: string): string | null => (isDirect(channel) ? null : channel);

/** Rounded to the microsecond, the precision of a ts, then down, so that nothing is sent after it was heard. */
export const msFromTs = (ts: string): EpochMs => Math.floor(Math.round(Number(ts) * 1_000_000) / 1000);
export const tsFromMs = (ms: EpochMs): string => (ms / MS_PER_SECOND).toFixed(6);
