/** Signs requests as Slack does (https://docs.slack.dev/authentication/verifying-requests-from-slack/). */
import { createHmac } from 'node:crypto';
import { stringify } from 'node:querystring';
import type { Carrier, Delivery, Timing } from './delivery.ts';

export const SIGNING_SECRET = '8f742231b10e8888abcd99yyyzzz85a5';

export const signature = (secret: string, timestampS: number, body: string): string =>
  `v0=${createHmac('sha256', secret)
    .update(`v0:${String(timestampS)}:${body}`)
    .digest('hex')}`;

export interface SignedRequest {
  body: string;
  headers: Record<string, string>;
}

/** Events are JSON, interactions a form with `payload`, commands a plain form. Bolt takes the bare form type only. */
const encoded = ({ kind, payload }: Delivery): { body: string; type: string } => {
  if (kind === 'events_api') return { body: JSON.stringify(payload), type: 'application/json' };
  const form =
    kind === 'interactive'
      ? { payload: JSON.stringify(payload) }
      : Object.fromEntries(Object.entries(payload).map(([name, value]) => [name, String(value)]));
  return { body: stringify(form), type: 'application/x-www-form-urlencoded' };
};

export const signed = (delivery: Delivery, timestampS: number, secret = SIGNING_SECRET): SignedRequest => {
  const { body, type } = encoded(delivery);
  return {
    body,
    headers: {
      'content-type': type,
      'x-slack-request-timestamp': String(timestampS),
      'x-slack-signature': signature(secret, timestampS, body),
    },
  };
};

/** The HTTP status; 0 = no answer. */
export const send = async (
  url: string,
  { body, headers }: SignedRequest,
  waitMs: number,
): Promise<number> => {
  try {
    const response = await fetch(url, { method: 'POST', body, headers, signal: AbortSignal.timeout(waitMs) });
    await response.arrayBuffer();
    return response.status;
  } catch {
    return 0;
  }
};

/** Slack's side of HTTP mode (https://docs.slack.dev/apis/events-api/using-http-request-urls/). */
export const httpCarrier =
  (url: string, timing: Timing): Carrier =>
  async (delivery, attempt) => {
    const request = signed(delivery, Math.floor(Date.now() / 1000));
    if (attempt > 0) {
      request.headers['x-slack-retry-num'] = String(attempt);
      request.headers['x-slack-retry-reason'] = 'http_timeout';
    }
    const status = await send(url, request, timing.ackMs);
    return status >= 200 && status < 300;
  };
