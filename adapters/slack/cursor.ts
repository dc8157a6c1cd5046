/**
 * How far each channel has been read, kept across restarts. A `ts` is Slack's message time and id, such as
 * "1669015750.896769": a string of fixed width, which sorts as text. As a number it would lose digits.
 */
export interface ChannelCursor {
  /** Null = never read. */
  lastSeen: (channel: string) => Promise<string | null>;
  /** Everything in the channel up to `ts` is stored. Never goes back: a `ts` older than the stored one changes nothing. */
  saw: (channel: string, ts: string) => Promise<void>;
}
