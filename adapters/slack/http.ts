import type { IncomingMessage, Server } from 'node:http';
import { HTTPReceiver } from '@slack/bolt';
import type { Logger } from '@slack/bolt';
import { MS_PER_MINUTE, MS_PER_SECOND } from '../../src/core/units.ts';
import type { EpochMs } from '../../src/core/units.ts';
import { atMost } from './patience.ts';
import type { SlackIntake } from './settings.ts';

/** Slack's window for the age of a signed request (https://docs.slack.dev/authentication/verifying-requests-from-slack/). */
const WINDOW_MS = 5 * MS_PER_MINUTE;

/**
 * Refuses what Bolt's check lets through: timestamps from the future, which would stay valid for as long as they are ahead
 * (https://github.com/slackapi/bolt-js/blob/main/src/receivers/verify-request.ts), and requests that were accepted before.
 * Slack signs each retry again, and never repeats a signature that was answered with success.
 */
const guard = (nowMs: () => EpochMs) => {
  const taken = new Map<string, EpochMs>();
  const signatureOf = (request: IncomingMessage): string => String(request.headers['x-slack-signature']);
  return {
    refuses: (request: IncomingMessage): boolean => {
      for (const [signature, atMs] of taken) if (nowMs() - atMs > 2 * WINDOW_MS) taken.delete(signature);
      const stampMs = Number(request.headers['x-slack-request-timestamp']) * MS_PER_SECOND;
      return stampMs > nowMs() + WINDOW_MS || taken.has(signatureOf(request));
    },
    took: (request: IncomingMessage): void => {
      taken.set(signatureOf(request), nowMs());
    },
  };
};

export const httpReceiver = (
  intake: Extract<SlackIntake, { mode: 'http' }>,
  nowMs: () => EpochMs,
  logger: Logger,
): HTTPReceiver => {
  const { signingSecret, path } = intake;
  const receiver = new HTTPReceiver({ signingSecret, endpoints: [path], logger });
  const { refuses, took } = guard(nowMs);
  const bolt = receiver.requestListener;
  receiver.requestListener = (request, response) => {
    if (request.headers['x-slack-signature'] === undefined) {
      bolt(request, response);
      return;
    }
    if (refuses(request)) {
      logger.warn('A request with a signature from the future, or one seen before, was refused.');
      response.writeHead(401).end();
      return;
    }
    response.on('finish', () => {
      if (response.statusCode < 300) took(request);
    });
    bolt(request, response);
  };
  return receiver;
};

/** Closes idle connections at once, busy ones when they have answered or after `ms`. */
export const closeServer = async (server: Server, ms: number): Promise<void> => {
  const closed = new Promise<void>((resolve) => {
    server.close(() => {
      resolve();
    });
  });
  server.closeIdleConnections();
  await atMost(ms, closed);
  server.closeAllConnections();
};
