import type { Server } from 'node:http';
import { App, webApi } from '@slack/bolt';
import type { Receiver } from '@slack/bolt';
import type { EpochMs } from '../../src/core/units.ts';
import type { LogLine } from '../../src/ports/log.ts';
import { errorCode, reasonOf } from './failure.ts';
import { closeServer, httpReceiver } from './http.ts';
import { boltLogger } from './log.ts';
import type { SlackIdentity } from './messages.ts';
import { backoffMs, pause } from './patience.ts';
import type { SlackSettings } from './settings.ts';
import { disconnect, keepConnected, linkState, socketReceiver } from './socket.ts';

/** Grade: chosen: some calls together must stay below the outbox lease (LEASE_MS, src/run/out/deliver.ts). */
const CALL_TIMEOUT_MS = 10_000;
/** How long closing waits for messages that are being stored. Grade: chosen. */
export const FINISH_MS = 5000;

/**
 * The client for everything but the socket. Without its own retries and waits: ten retries of a lost answer would post ten
 * times, and one 429 would delay the calls for all channels
 * (https://github.com/slackapi/node-slack-sdk/blob/main/packages/web-api/src/WebClient.ts). The outbox retries.
 */
const webOptions = (settings: SlackSettings, log: LogLine): webApi.WebClientOptions => ({
  slackApiUrl: settings.slackApiUrl,
  retryConfig: { retries: 0 },
  rejectRateLimitedCalls: true,
  timeout: CALL_TIMEOUT_MS,
  logger: boltLogger(log),
});

export const webClient = (settings: SlackSettings, log: LogLine): webApi.WebClient =>
  new webApi.WebClient(settings.botToken, webOptions(settings, log));

/** Asks Slack for the bot's ids until it can be reached; rejects if the token is refused. */
export const whoAmI = async (
  web: webApi.WebClient,
  log: LogLine,
  closing: AbortSignal,
): Promise<SlackIdentity> => {
  for (let failures = 1; ; failures += 1) {
    try {
      const { user_id: userId, bot_id: botId } = await web.auth.test();
      if (userId === undefined || botId === undefined)
        throw new Error('The Slack token is not a bot token: use the one that begins with xoxb-.');
      return { userId, botId };
    } catch (error) {
      const unreachable = error instanceof webApi.SlackError && errorCode(error) === null;
      if (errorCode(error) !== null)
        throw new Error(
          `Slack refuses the bot token: ${reasonOf(error)}. Copy it again from "Install App".`,
          { cause: error },
        );
      if (!unreachable || closing.aborted) throw error;
      log('warn', `Slack can't be reached: ${reasonOf(error)}. Trying again.`);
      await pause(backoffMs(failures), closing);
    }
  }
};

/** Bot and user id are set: otherwise Bolt asks for them once, and if that fails, acknowledges and drops every event. */
const appOn = (receiver: Receiver, settings: SlackSettings, me: SlackIdentity, log: LogLine): App => {
  const app = new App({
    token: settings.botToken,
    botId: me.botId,
    botUserId: me.userId,
    receiver,
    logger: boltLogger(log),
    convoStore: false,
    clientOptions: webOptions(settings, log),
  });
  // The default handler rethrows, after the acknowledgement.
  app.error(async (error) => {
    log('error', `A Slack screen failed: ${reasonOf(error)}.`);
  });
  return app;
};

/** The link through which Slack's events come in, ready to be opened. */
export interface SlackLink {
  app: App;
  /** Resolves once Slack's events can come in; calls `onConnected` then, and after every gap. */
  open: (onConnected: () => void, closing: AbortSignal) => Promise<void>;
  isOpen: () => boolean;
  close: () => Promise<void>;
}

export const intakeFor = (
  settings: SlackSettings,
  me: SlackIdentity,
  nowMs: () => EpochMs,
  log: LogLine,
): SlackLink => {
  const { intake, slackApiUrl } = settings;
  if (intake.mode === 'socket') {
    const receiver = socketReceiver(intake.appToken, slackApiUrl, CALL_TIMEOUT_MS, boltLogger(log));
    const isOpen = linkState(receiver.client);
    return {
      isOpen,
      app: appOn(receiver, settings, me, log),
      open: (onConnected, closing) => keepConnected(receiver.client, onConnected, log, closing),
      close: () => disconnect(receiver.client),
    };
  }
  const receiver = httpReceiver(intake, nowMs, boltLogger(log));
  let server: Server | null = null;
  return {
    app: appOn(receiver, settings, me, log),
    open: async (onConnected) => {
      server = await receiver.start({ host: intake.host, port: intake.port });
      log('info', `Listening for Slack at ${intake.host}:${String(intake.port)}${intake.path}.`);
      onConnected();
    },
    isOpen: () => server?.listening === true,
    close: async () => {
      if (server !== null) await closeServer(server, FINISH_MS);
    },
  };
};
