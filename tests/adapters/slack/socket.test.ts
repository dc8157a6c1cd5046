import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ticketForm } from '../../../src/saying/ticket-form.ts';
import type { Bench } from '../../support/slack/bench.ts';
import { startBench } from '../../support/slack/bench.ts';
import { waitFor } from '../../support/wait-for.ts';

describe('the socket', () => {
  let bench: Bench;
  beforeEach(async () => {
    bench = await startBench({ timing: { ackMs: 500, retryAfterMs: [0, 20, 50, 100, 200] } });
    await bench.listen();
  });
  afterEach(() => bench.close());

  const say = (text: string): Promise<void> =>
    bench.slack.send(bench.slack.people.say(bench.crew, 'U1ANA', text).delivery);

  test.each(['warning', 'refresh_requested'] as const)(
    'is opened anew on "%s", in much less than the 5 s that the client would wait',
    async (reason) => {
      const startMs = performance.now();
      bench.slack.sockets.sayGoodbye(reason);
      await waitFor('second connection', () => bench.slack.sockets.opened() === 2);
      expect(performance.now() - startMs).toBeLessThan(4000);
      await say('loaded');
      expect(bench.inbox()).toHaveLength(1);
    },
  );

  test('comes back after the network was cut, again and again', async () => {
    for (const round of [2, 3]) {
      bench.slack.sockets.cut();
      await waitFor('connection', () => bench.slack.sockets.opened() === round);
    }
    await say('loaded');
    expect(bench.inbox()).toHaveLength(1);
  });

  test('comes back although the first attempts to reconnect fail', async () => {
    const method = 'apps.connections.open';
    bench.slack.misbehave({ method, channel: null, times: 1, fault: { is: 'status', status: 500 } });
    bench.slack.misbehave({ method, channel: null, times: 1, fault: { is: 'answer-lost' } });
    bench.slack.sockets.cut();
    await waitFor('connection', () => bench.slack.sockets.opened() === 2, 20_000);
    await say('loaded');
    expect(bench.inbox()).toHaveLength(1);
  });

  test('a message that was on its way when the link broke is heard once', async () => {
    const gate = Promise.withResolvers<undefined>();
    bench.state.gate = gate.promise.then(() => undefined);
    const done = say('loaded');
    await waitFor('message', () => bench.state.arrived === 1);
    bench.slack.sockets.cut();
    await waitFor('connection', () => bench.slack.sockets.opened() === 2);
    gate.resolve(undefined);
    await done;
    expect(bench.slack.deliveries[0]?.attempts).toBeGreaterThan(1);
    expect(bench.inbox()).toHaveLength(1);
  });

  test('the same event twice, as a first attempt both times, has one id', async () => {
    const { delivery } = bench.slack.people.say(bench.crew, 'U1ANA', 'loaded');
    await bench.slack.send(delivery);
    await bench.slack.send(delivery);
    expect(bench.heard).toHaveLength(2);
    expect(bench.inbox()).toHaveLength(1);
  });

  test('events in another order keep the times at which they were sent', async () => {
    const first = bench.slack.people.say(bench.crew, 'U1ANA', 'loaded');
    const second = bench.slack.people.say(bench.crew, 'U1ANA', 'left');
    await bench.slack.send(second.delivery);
    await bench.slack.send(first.delivery);
    expect(bench.texts()).toEqual(['left', 'loaded']);
    const [left, loaded] = bench.heard;
    expect(loaded?.id).toBe(`C0CREW:${first.message.ts}`);
    expect(Number(loaded?.sentMs)).toBeLessThanOrEqual(Number(left?.sentMs));
  });

  test('says of itself whether it is connected', async () => {
    expect(bench.chat.fault()).toBeNull();
    const unopened = { method: 'apps.connections.open', channel: null, times: Infinity };
    bench.slack.misbehave({ ...unopened, fault: { is: 'status', status: 503 } });
    bench.slack.sockets.cut();
    await waitFor('fault', () => bench.chat.fault() === 'not connected to Slack');
  });

  test('closing ends the connection and opens no other', async () => {
    await bench.chat.close();
    await waitFor('end of the connection', () => bench.slack.sockets.open() === 0);
    expect(bench.slack.sockets.opened()).toBe(1);
  });

  test('a second bot with the same token is told of in the log', async () => {
    const second = await startBench();
    await second.close();
    expect(bench.logs.join()).not.toContain('another Fieldbell');
    const { slackChat } = await import('../../../adapters/slack/chat.ts');
    const logs: string[] = [];
    const twin = slackChat(bench.settings, {
      cursor: bench.cursor,
      form: ticketForm,
      homeFor: async () => bench.state.home,
      draw: null,
      nowMs: () => Date.now(),
      log: (_, message) => logs.push(message),
    });
    await twin.listen(async () => undefined);
    await twin.close();
    expect(logs.join()).toContain('2 connections');
  });
});

describe('starting', () => {
  const refusal = async (method: string, error: string): Promise<string> => {
    const bench = await startBench();
    bench.slack.misbehave({ method, channel: null, times: 1, fault: { is: 'refused', error } });
    const message = await bench.listen().then(
      () => 'it listens',
      (reason: unknown) => String(reason),
    );
    await bench.close();
    return message;
  };

  test('a refused bot token says what to do', async () => {
    expect(await refusal('auth.test', 'invalid_auth')).toMatch(/bot token.*invalid_auth.*Install App/);
  });

  test('a refused app token says what to do', async () => {
    expect(await refusal('apps.connections.open', 'not_allowed_token_type')).toMatch(
      /app token.*connections:write/,
    );
  });

  test('while Slack is out of reach it keeps trying', async () => {
    const bench = await startBench();
    bench.slack.misbehave({
      method: 'auth.test',
      channel: null,
      times: 2,
      fault: { is: 'status', status: 503 },
    });
    await bench.listen();
    expect(bench.logs.filter((line) => line.includes('Trying again'))).toHaveLength(2);
    await bench.close();
  });
});
