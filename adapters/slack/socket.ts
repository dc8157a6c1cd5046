import { SocketModeReceiver } from '@slack/bolt';
import type { Logger } from '@slack/bolt';
import { z } from 'zod';
import type { LogLine } from '../../src/ports/log.ts';
import { errorCode, reasonOf } from './failure.ts';
import { atMost, backoffMs, pause } from './patience.ts';

type SocketClient = SocketModeReceiver['client'];

/** After a connection that lasted this long the next one may be opened at once. Grade: chosen. */
const STEADY_MS = 10_000;
const CLOSE_MS = 2000;

/** Errors of https://docs.slack.dev/reference/methods/apps.connections.open/ that waiting does not remove. */
const REFUSED = new Set([
  'invalid_auth',
  'not_authed',
  'not_allowed_token_type',
  'missing_scope',
  'account_inactive',
  'token_revoked',
]);

/**
 * It gets client options of its own: the socket client writes its retry policy into the object that it is given, and a
 * shared one would give chat.postMessage a hundred retries, each a possible duplicate. Its reconnecting is off: it waits
 * 5 s each time (several times a day), and a failure in it is an unhandled rejection that ends the process
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

/** Returns a function that says whether there is a connection on which Slack has sent its hello. */
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

/** Logs what the client does not report. */
const watch = (client: SocketClient, log: LogLine): void => {
  client.on('ws_message', (data: unknown) => {
    const received = frame.safeParse(parsed(data)).data;
    if (received?.type === 'hello' && received.num_connections > 1)
      log(
        'warn',
        `There are ${received.num_connections} connections with this Slack app token: is another Fieldbell running? Slack gives each message to only one of them.`,
      );
    if (received?.type === 'disconnect' && received.reason === 'link_disabled')
      log(
        'error',
        'Socket Mode is off in the settings of the Slack app: nothing is heard until it is on again.',
      );
  });
};

/** Opens a connection and resolves when it has ended, with the error that prevented it, else null. */
const oneConnection = async (
  client: SocketClient,
  onOpened: () => void,
  closing: AbortSignal,
): Promise<unknown> => {
  try {
    await client.start();
    const ended = new Promise<void>((resolve) => client.once('disconnected', resolve));
    onOpened();
    // Closed while it was connecting: the client does not notice that by itself.
    if (closing.aborted) void client.disconnect();
    await ended;
    return null;
  } catch (error) {
    // A link that breaks before the hello rejects without an error.
    return error ?? new Error('the link broke before Slack said hello');
  }
};

/** Opens one connection after the other until `closing`. */
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
    // Back to the shortest wait only after a connection that lasted.
    failures = error === null && performance.now() - startedMs > STEADY_MS ? 1 : failures + 1;
    await pause(backoffMs(failures), closing);
  }
};

/**
 * Keeps one connection open until `closing`, and calls `onConnected` after every hello. Resolves after the first one;
 * rejects if Slack refuses the app token.
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
