import { SocketModeReceiver } from '@slack/bolt';
import type { Logger } from '@slack/bolt';
import { z } from 'zod';
import type { LogLine } from '../../src/ports/log.ts';
import { errorCode, reasonOf } from './failure.ts';
import { atMost, backoffMs, pause } from './patience.ts';

type SocketClient = SocketModeReceiver['client'];

/** A connection that held this long was a good one: the next one may be opened at once. */
const STEADY_MS = 10_000;
const CLOSE_MS = 2000;

/** Errors of https://docs.slack.dev/reference/methods/apps.connections.open/ that waiting does not mend. */
const REFUSED = new Set([
  'invalid_auth',
  'not_authed',
  'not_allowed_token_type',
  'missing_scope',
  'account_inactive',
  'token_revoked',
]);

/**
 * Its own client options: the socket client writes its retry policy into the object it is given, and a shared one would
 * give chat.postMessage a hundred retries, each of them a possible duplicate. Its own reconnecting is off: it waits 5 s
 * before each (several a day), and a failure in it is an unhandled rejection that ends the process
 * (https://github.com/slackapi/node-slack-sdk/issues/2656).
 */
export const socketReceiver = (
  appToken: string,
  slackApiUrl: string,
  timeout: number,
  logger: Logger,
): SocketModeReceiver =>
  new SocketModeReceiver({
    appToken,
    logger,
    autoReconnectEnabled: false,
    installerOptions: { clientOptions: { slackApiUrl, timeout, retryConfig: { retries: 0 } } },
  });

/** Gives whether there is a connection on which Slack has said hello. */
export const linkState = (client: SocketClient): (() => boolean) => {
  let isUp = false;
  client.on('connected', () => {
    isUp = true;
  });
  client.on('disconnected', () => {
    isUp = false;
  });
  return () => isUp;
};

const frame = z.union([
  z.object({ type: z.literal('hello'), num_connections: z.number() }),
  z.object({ type: z.literal('disconnect'), reason: z.string() }),
]);

const parsed = (data: unknown): unknown => {
  try {
    return typeof data === 'string' ? JSON.parse(data) : null;
  } catch {
    return null;
  }
};

/** Tells what the client keeps to itself. */
const watch = (client: SocketClient, log: LogLine): void => {
  client.on('ws_message', (data: unknown) => {
    const told = frame.safeParse(parsed(data)).data;
    if (told?.type === 'hello' && told.num_connections > 1)
      log(
        'warn',
        `There are ${told.num_connections} connections with this Slack app token: is another Fieldbell running? Slack gives each message to only one of them.`,
      );
    if (told?.type === 'disconnect' && told.reason === 'link_disabled')
      log(
        'error',
        'Socket Mode is off in the settings of the Slack app: nothing is heard until it is on again.',
      );
  });
};

/** Resolves when a connection has been opened and has ended again; what went wrong, else null. */
const oneConnection = async (
  client: SocketClient,
  onOpened: () => void,
  closing: AbortSignal,
): Promise<unknown> => {
  try {
    await client.start();
    const ended = new Promise<void>((resolve) => client.once('disconnected', resolve));
    onOpened();
    // Closed while it connected: the client does not notice that by itself.
    if (closing.aborted) void client.disconnect();
    await ended;
    return null;
  } catch (error) {
    // A link that breaks before the hello rejects with nothing.
    return error ?? new Error('the link broke before Slack said hello');
  }
};

/** One connection after the other until `closing`. */
const connections = async (
  client: SocketClient,
  first: { opened: () => void; refused: (error: unknown) => void },
  log: LogLine,
  closing: AbortSignal,
): Promise<void> => {
  const isOpen = (): boolean => !closing.aborted;
  const opened = { ever: false };
  const onOpened = (): void => {
    opened.ever = true;
    first.opened();
  };
  for (let failures = 0; isOpen();) {
    const startedMs = performance.now();
    const error = await oneConnection(client, onOpened, closing);
    if (!opened.ever && REFUSED.has(errorCode(error) ?? '')) {
      first.refused(error);
      return;
    }
    if (error !== null && isOpen()) log('warn', `No connection to Slack: ${reasonOf(error)}.`);
    // Back to the shortest wait only after a connection that held.
    failures = error === null && performance.now() - startedMs > STEADY_MS ? 1 : failures + 1;
    await pause(backoffMs(failures), closing);
  }
};

/**
 * Keeps one connection up until `closing`, with `onConnected` after every hello. Resolves after the first one; rejects
 * if Slack refuses the app token.
 */
export const keepConnected = (
  client: SocketClient,
  onConnected: () => void,
  log: LogLine,
  closing: AbortSignal,
): Promise<void> =>
  new Promise((resolve, reject) => {
    watch(client, log);
    client.on('connected', () => {
      log('info', 'Connected to Slack.');
      onConnected();
    });
    const refused = (error: unknown): void => {
      const advice = 'Make an app-level token (xapp-...) with the scope connections:write.';
      reject(new Error(`Slack refuses the app token: ${reasonOf(error)}. ${advice}`, { cause: error }));
    };
    void connections(client, { opened: resolve, refused }, log, closing).finally(resolve);
  });

/** The receiver's own stop() does not wait (https://github.com/slackapi/bolt-js/blob/main/src/receivers/SocketModeReceiver.ts). */
export const disconnect = async (client: SocketClient): Promise<void> => {
  await atMost(CLOSE_MS, client.disconnect());
};
