import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Bench } from '../../support/slack/bench.ts';
import { startBench, startBot } from '../../support/slack/bench.ts';
import { waitFor } from '../../support/wait-for.ts';

/** Said while nothing is delivered: to a bot that is away, or to another socket. */
const unheard = (bench: Bench, text: string, options = {}) =>
  bench.slack.people.say(bench.crew, 'U1ANA', text, options).message;

describe('reading up after a time of deafness', () => {
  let bench: Bench;
  beforeEach(async () => {
    bench = await startBench();
    await bench.listen();
  });
  afterEach(() => bench.close());

  const reconnect = (): void => {
    bench.slack.sockets.cut();
  };
  const heardText = (text: string) => waitFor(text, () => bench.texts().includes(text));

  test('what was missed is heard, in order, under the ids that the events would have had', async () => {
    const messages = ['loaded', 'left', 'in line'].map((text) => unheard(bench, text));
    reconnect();
    await heardText('in line');
    expect(bench.inbox().map(({ id }) => id)).toEqual(messages.map(({ ts }) => `C0CREW:${ts}`));
  });

  test('a message heard live and read up is the same message', async () => {
    const { message, delivery } = bench.slack.people.say(bench.crew, 'U1ANA', 'loaded');
    await bench.slack.send(delivery);
    unheard(bench, 'left');
    reconnect();
    await heardText('left');
    expect(bench.heard.filter(({ id }) => id === `C0CREW:${message.ts}`)).toHaveLength(2);
    expect(bench.inbox()).toHaveLength(2);
  });

  test('a live message after the gap does not hide the gap', async () => {
    unheard(bench, 'loaded');
    const failing = {
      method: 'conversations.history',
      channel: null,
      fault: { is: 'status', status: 500 },
    } as const;
    bench.slack.misbehave({ ...failing, times: 2 });
    reconnect();
    await waitFor('failed reading', () => bench.logs.some((line) => line.includes("can't be read yet")));
    await bench.slack.send(bench.slack.people.say(bench.crew, 'U2BEN', 'dumped').delivery);
    await heardText('loaded');
    expect(bench.inbox()).toHaveLength(2);
  });

  test('edits and replies in threads that began before the gap', async () => {
    const { message, delivery } = bench.slack.people.say(bench.crew, 'U1ANA', 'gross 79480');
    await bench.slack.send(delivery);
    // Read through up to here.
    unheard(bench, 'chatter');
    reconnect();
    await heardText('chatter');
    await waitFor('cursor', () => (bench.cursor.seen.get('C0CREW') ?? '') > message.ts);
    bench.slack.people.edit(bench.crew, message, 'gross 79840');
    const reply = unheard(bench, 'undo', { threadTs: message.ts });
    reconnect();
    await heardText('undo');
    const edit = bench.heard.find(({ event }) => event.is === 'edit');
    expect(edit).toMatchObject({
      id: `edit:C0CREW:${message.ts}:${String(message.edited?.ts)}`,
      event: { of: `C0CREW:${message.ts}`, text: 'gross 79840' },
    });
    expect(bench.heard.find(({ event }) => event.is === 'message' && event.text === 'undo')).toMatchObject({
      id: `C0CREW:${reply.ts}:${message.ts}`,
      event: { repliesTo: `C0CREW:${message.ts}` },
    });
  });

  test('more than one page of messages, and the bot is not read', async () => {
    for (let count = 0; count < 430; count += 1) unheard(bench, `load ${count}`);
    bench.slack.people.say(bench.crew, 'U1ANA', 'from an app', { botId: 'B0OTHER' });
    reconnect();
    await heardText('load 429');
    await waitFor('all', () => bench.inbox().length === 430);
    expect(bench.texts()).not.toContain('from an app');
  });

  test('direct conversations that began while the bot was away', async () => {
    bench.slack.people.say(bench.slack.workspace.direct('U2BEN'), 'U2BEN', 'help');
    reconnect();
    await heardText('help');
    expect(bench.heard[0]).toMatchObject({ room: null, user: 'U2BEN' });
  });

  test('a rate limit is waited for, and the reading goes on where it was', async () => {
    unheard(bench, 'loaded');
    const fault = { is: 'rate-limited', retryAfterS: 1 } as const;
    bench.slack.misbehave({ method: 'conversations.history', channel: 'C0CREW', times: 2, fault });
    const listed = () => bench.slack.calls.filter(({ method }) => method === 'users.conversations').length;
    const before = listed();
    reconnect();
    await heardText('loaded');
    expect(listed()).toBe(before + 1);
  });

  test('a room that cannot be read does not keep the others from being read', async () => {
    bench.slack.workspace.addChannel('C0ABAD', 'public');
    await bench.cursor.saw('C0ABAD', '1.000000');
    const fault = { is: 'refused', error: 'not_in_channel' } as const;
    bench.slack.misbehave({ method: 'conversations.history', channel: 'C0ABAD', times: 9, fault });
    unheard(bench, 'loaded');
    reconnect();
    await heardText('loaded');
  });
});

describe('reading up without a reconnection', () => {
  test.each(['socket', 'http'] as const)('messages that never came are found soon, over %s', async (mode) => {
    const bench = await startBench({ mode, sweepEveryMs: 50 });
    await bench.listen();
    unheard(bench, 'loaded');
    await waitFor('message', () => bench.texts().includes('loaded'));
    await bench.close();
  });
});

describe('over restarts', () => {
  test('what was said in between is heard; what was said before the bot ever came is not', async () => {
    const bench = await startBench({ aheadMs: -3_600_000 });
    unheard(bench, 'before');
    bench.clock.aheadMs = 0;
    await bench.listen();
    await bench.chat.close();
    unheard(bench, 'in between');
    const second = startBot(bench.slack, bench.settings, bench.cursor);
    await second.listen();
    await waitFor('message', () => second.texts().includes('in between'));
    expect([...bench.texts(), ...second.texts()]).toEqual(['in between']);
    await second.chat.close();
    await bench.close();
  });
});
