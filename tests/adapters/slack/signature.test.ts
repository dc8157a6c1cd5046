import { HTTPReceiver, verifySlackRequest } from '@slack/bolt';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Bench } from '../../support/slack/bench.ts';
import { startBench } from '../../support/slack/bench.ts';
import { send, signature, signed } from '../../support/slack/signing.ts';

/** Slack's published example (https://docs.slack.dev/authentication/verifying-requests-from-slack/). */
const PUBLISHED = {
  secret: '8f742231b10e8888abcd99yyyzzz85a5',
  timestampS: 1531420618,
  body: 'token=xyzz0WbapA4vBCDEFasx0q6G&team_id=T1DC2JH3J&team_domain=testteamnow&channel_id=G8PSS9T3V&channel_name=foobar&user_id=U2CERLKJA&user_name=roadrunner&command=%2Fwebhook-collect&text=&response_url=https%3A%2F%2Fhooks.slack.com%2Fcommands%2FT1DC2JH3J%2F397700885554%2F96rGlfmibIGlgcZRskXaIFfN&trigger_id=398738663015.47445629121.803a0bc887a14d10d2c447fce8b6703c',
  signature: 'v0=a2114d57b48eac39b9ad189dd8316235a7b4a8d21a10bd27519666489c69b503',
};

describe("Slack's published example", () => {
  const check = (given: string, nowMs: number) => () => {
    verifySlackRequest({
      signingSecret: PUBLISHED.secret,
      body: PUBLISHED.body,
      headers: { 'x-slack-signature': given, 'x-slack-request-timestamp': PUBLISHED.timestampS },
      nowMilliseconds: nowMs,
    });
  };

  test('the loopback signs as Slack does', () => {
    expect(signature(PUBLISHED.secret, PUBLISHED.timestampS, PUBLISHED.body)).toBe(PUBLISHED.signature);
  });

  test('Bolt takes it at its time, and refuses it five minutes later or changed', () => {
    const atMs = PUBLISHED.timestampS * 1000;
    expect(check(PUBLISHED.signature, atMs)).not.toThrow();
    expect(check(PUBLISHED.signature, atMs + 301_000)).toThrow(/stale/);
    expect(check(PUBLISHED.signature.replace(/3$/, '4'), atMs)).toThrow(/mismatch/);
  });

  test('Bolt alone takes a stamp from the future, which is why the adapter looks at it', () => {
    expect(check(PUBLISHED.signature, (PUBLISHED.timestampS - 86_400) * 1000)).not.toThrow();
  });

  test('an empty secret is refused at the start', () => {
    expect(() => new HTTPReceiver({ signingSecret: '' })).toThrow(/signingSecret/);
  });
});

describe('signed requests', () => {
  let bench: Bench;
  beforeEach(async () => {
    bench = await startBench({ mode: 'http' });
    await bench.listen();
  });
  afterEach(() => bench.close());

  const nowS = (): number => Math.floor(Date.now() / 1000);
  const spoken = (text: string) => bench.slack.people.say(bench.crew, 'U1ANA', text).delivery;
  const post = (request: Parameters<typeof send>[1]) => send(String(bench.eventsUrl), request, 5000);

  test('a good one is taken, and the same one again is refused', async () => {
    const request = signed(spoken('loaded'), nowS());
    expect(await post(request)).toBe(200);
    expect(await post(request)).toBe(401);
    expect(bench.texts()).toEqual(['loaded']);
  });

  test.each([
    ['another secret', () => signed(spoken('stop'), nowS(), 'another-secret')],
    ['an old stamp', () => signed(spoken('stop'), nowS() - 301)],
    ['a stamp from the future', () => signed(spoken('stop'), nowS() + 310)],
    [
      'a body changed afterwards',
      () => {
        const { body, headers } = signed(spoken('stop'), nowS());
        return { body: body.replace('stop', 'dig again'), headers };
      },
    ],
    [
      'a fresh stamp on an old signature',
      () => {
        const { body, headers } = signed(spoken('stop'), nowS() - 301);
        return { body, headers: { ...headers, 'x-slack-request-timestamp': String(nowS()) } };
      },
    ],
    [
      'no signature',
      () => ({ body: signed(spoken('stop'), nowS()).body, headers: { 'content-type': 'application/json' } }),
    ],
  ])('%s is refused', async (_, request) => {
    expect(await post(request())).toBe(401);
    expect(bench.heard).toEqual([]);
  });

  test('one that failed is not burnt: the retry of the same second is taken', async () => {
    const request = signed(spoken('loaded'), nowS());
    const failure = Promise.reject(new Error('disk full'));
    failure.catch(() => undefined);
    bench.state.gate = failure;
    expect(await post(request)).toBe(500);
    bench.state.gate = Promise.resolve();
    expect(await post(request)).toBe(200);
    expect(bench.texts()).toEqual(['loaded']);
  });

  test('the address check is answered', async () => {
    const delivery = { ...spoken(''), payload: { type: 'url_verification', challenge: '3eZbrw1aB' } };
    const { body, headers } = signed(delivery, nowS());
    const response = await fetch(String(bench.eventsUrl), { method: 'POST', body, headers });
    expect(await response.json()).toEqual({ challenge: '3eZbrw1aB' });
  });

  test('a notice of held-back events is acknowledged and logged', async () => {
    const payload = {
      type: 'app_rate_limited',
      minute_rate_limited: nowS(),
      team_id: 'T0',
      api_app_id: 'A0',
    };
    expect(await post(signed({ ...spoken(''), payload }, nowS()))).toBe(200);
    expect(bench.logs.join()).toContain('30,000');
  });
});
