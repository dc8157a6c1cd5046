/** Slack's own Web API; a setting, so that a test or a proxy can replace it. */
export const SLACK_API_URL = 'https://slack.com/api/';

/**
 * How Slack reaches the bot.
 * - socket: the bot calls out over a WebSocket; no open port, no address of its own (the default).
 * - http: Slack calls in; needs a public https address in front of `host:port`, and the app's signing secret.
 */
export type SlackIntake =
  | { mode: 'socket'; appToken: string }
  | { mode: 'http'; signingSecret: string; host: string; port: number; path: string };

export interface SlackSettings {
  /** `xoxb-...`, from "Install App". */
  botToken: string;
  intake: SlackIntake;
  slackApiUrl: string;
  /**
   * How often the rooms' history is read for messages that never arrived, in ms. Slack queues nothing for a bot that was
   * away, delivers an event to any one of the app's sockets, and gives up after three retries.
   */
  sweepEveryMs: number;
}
