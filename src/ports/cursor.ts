/**
 * How far a platform's messages are stored in the inbox, kept across restarts. A platform has one stream or several (one
 * for each channel), with positions in its own format.
 */
export interface Cursors {
  /** Null = never read. */
  at: (platform: string, stream: string) => Promise<string | null>;
  /** Replaces any earlier position: for positions without an order, such as sync tokens. */
  set: (platform: string, stream: string, position: string) => Promise<void>;
  /** Never goes back: for positions of a fixed width that sort as text. An earlier one changes nothing. */
  advance: (platform: string, stream: string, position: string) => Promise<void>;
}
