import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Bench } from '../../support/slack/bench.ts';
import { startBench } from '../../support/slack/bench.ts';
import { BOT } from '../../support/slack/workspace.ts';
import { waitFor } from '../../support/wait-for.ts';

describe.each(['socket', 'http'] as const)('hearing over %s', (mode) => {
  let bench: Bench;
  beforeEach(async () => {
    bench = await startBench({ mode });
    await bench.listen();
  });
  afterEach(() => bench.close());

  const say = (text: string, options = {}) => {
    const { people, send } = bench.slack;
    const said = people.say(bench.crew, 'U1ANA', text, options);
    return { message: said.message, done: send(said.delivery) };
  };

  test('a message: channel and ts are its id, the ts its time', async () => {
    const { message, done } = say('loaded');
    await done;
    expect(bench.heard).toMatchObject([
      {
        platform: 'slack',
        id: `C0CREW:${message.ts}`,
        user: 'U1ANA',
        userName: null,
        room: 'C0CREW',
        sentMs: Number(message.ts.replace('.', '').slice(0, -3)),
        event: { is: 'message', text: 'loaded', addressed: false, repliesTo: null },
      },
    ]);
  });

  test('a direct message has no room and is for the bot', async () => {
    const { people, workspace, send } = bench.slack;
    await send(people.say(workspace.direct('U1ANA'), 'U1ANA', 'tons?').delivery);
    expect(bench.heard[0]).toMatchObject({ room: null, event: { text: 'tons?', addressed: true } });
  });

  test('the bot is addressed by a mention, which is not among the words', async () => {
    await say(`<@${BOT.user}> how long is the line`).done;
    await say(`line? <@${BOT.user}|fieldbell>`).done;
    expect(bench.heard.map(({ event }) => event)).toMatchObject([
      { text: 'how long is the line', addressed: true },
      { text: 'line?', addressed: true },
    ]);
  });

  test("Slack's markup becomes what was typed", async () => {
    await say('left <http://10.15|10.15> &amp; net &lt; 50000, ask <@U2BEN|ben> in <#C0CREW|crew>, <!here>')
      .done;
    await say('&amp;lt; <tel:+15551234567|555-1234>').done;
    expect(bench.texts()).toEqual(['left 10.15 & net < 50000, ask @U2BEN in #crew, @here', '&lt; 555-1234']);
  });

  test('a reply in a thread tells what it replies to', async () => {
    const first = say('loaded');
    const reply = say('undo', { threadTs: first.message.ts });
    const loud = say('undo again', { threadTs: first.message.ts, subtype: 'thread_broadcast' });
    await Promise.all([first.done, reply.done, loud.done]);
    const heard = bench.heard.find(({ event }) => event.is === 'message' && event.text === 'undo');
    expect(heard?.id).toBe(`C0CREW:${reply.message.ts}:${first.message.ts}`);
    expect(heard?.event).toMatchObject({ repliesTo: `C0CREW:${first.message.ts}` });
    expect(bench.texts()).toContain('undo again');
  });

  test('an edit points at the message and has an id of its own', async () => {
    const { people, send } = bench.slack;
    const { message, done } = say('gross 79480');
    await done;
    await send(people.edit(bench.crew, message, 'gross 79840'));
    expect(bench.heard[1]).toMatchObject({
      id: `edit:C0CREW:${message.ts}:${String(message.edited?.ts)}`,
      user: 'U1ANA',
      event: { is: 'edit', of: `C0CREW:${message.ts}`, text: 'gross 79840' },
    });
  });

  test('a change without new words is no edit', async () => {
    const { people, send } = bench.slack;
    const { message, done } = say('see http://10.15');
    await done;
    await send(people.unfurl(bench.crew, message));
    expect(bench.heard).toHaveLength(1);
  });

  test('a deletion, and the deletion of a message with replies', async () => {
    const { people, send } = bench.slack;
    const one = say('loaded');
    const two = say('dumped');
    await Promise.all([one.done, two.done]);
    await say('no', { threadTs: two.message.ts }).done;
    await send(people.remove(bench.crew, one.message));
    await send(people.entomb(bench.crew, two.message));
    expect(bench.heard.slice(3).map(({ user, event }) => ({ user, event }))).toEqual([
      { user: 'U1ANA', event: { is: 'deletion', of: `C0CREW:${one.message.ts}` } },
      { user: 'U1ANA', event: { is: 'deletion', of: `C0CREW:${two.message.ts}` } },
    ]);
  });

  test('nobody but people is heard: no bots, not the bot itself, no joins', async () => {
    const { people, send } = bench.slack;
    const bot = people.say(bench.crew, 'U1ANA', 'loaded', { botId: 'B0OTHER' });
    await send(bot.delivery);
    await send(people.edit(bench.crew, bot.message, 'loaded!'));
    await send(people.remove(bench.crew, bot.message));
    await send(people.say(bench.crew, BOT.user, 'own words').delivery);
    await say('<@U2BEN> has joined', { subtype: 'channel_join' }).done;
    await send(people.say(bench.crew, 'USLACKBOT', 'Reminder').delivery);
    await say('loaded').done;
    expect(bench.texts()).toEqual(['loaded']);
    expect(bench.slack.deliveries.every(({ acked }) => acked)).toBe(true);
  });

  test('the acknowledgement waits for the database', async () => {
    const gate = Promise.withResolvers<undefined>();
    bench.state.gate = gate.promise.then(() => undefined);
    const { done } = say('loaded');
    const [delivery] = bench.slack.deliveries;
    await waitFor('message', () => bench.state.arrived === 1);
    // A later command goes the whole way while the first message is held: no ack went out in the meantime.
    bench.state.gate = Promise.resolve();
    await say('dumped').done;
    expect(bench.texts()).toEqual(['dumped']);
    expect(delivery?.acked).toBe(false);
    gate.resolve(undefined);
    await done;
    expect(delivery).toMatchObject({ acked: true, attempts: 1 });
    expect(bench.texts()).toEqual(['dumped', 'loaded']);
  });
});

describe.each(['socket', 'http'] as const)('when the database fails, over %s', (mode) => {
  test('no acknowledgement goes out, and Slack delivers again', async () => {
    const bench = await startBench({ mode, timing: { ackMs: 200, retryAfterMs: [0, 20, 50] } });
    await bench.listen();
    const failure = Promise.reject(new Error('disk full'));
    failure.catch(() => undefined);
    bench.state.gate = failure;
    const said = bench.slack.people.say(bench.crew, 'U1ANA', 'loaded');
    const done = bench.slack.send(said.delivery);
    await waitFor('second try', () => said.delivery.attempts === 2);
    expect(bench.heard).toEqual([]);
    bench.state.gate = Promise.resolve();
    await done;
    expect(said.delivery.acked).toBe(true);
    expect(bench.inbox()).toMatchObject([{ event: { text: 'loaded' } }]);
    await bench.close();
  });

  test('a database slower than Slack waits: the same message comes again under the same id', async () => {
    const bench = await startBench({ mode, timing: { ackMs: 50, retryAfterMs: [0] } });
    await bench.listen();
    const gate = Promise.withResolvers<undefined>();
    bench.state.gate = gate.promise.then(() => undefined);
    const said = bench.slack.people.say(bench.crew, 'U1ANA', 'loaded');
    const done = bench.slack.send(said.delivery);
    await waitFor('second try', () => bench.state.arrived === 2);
    gate.resolve(undefined);
    await done;
    await waitFor('both', () => bench.heard.length === 2);
    expect(bench.inbox()).toHaveLength(1);
    await bench.close();
  });
});
