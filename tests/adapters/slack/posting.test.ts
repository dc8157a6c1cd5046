import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Post } from '../../../src/ports/chat.ts';
import { ticketForm } from '../../../src/saying/ticket-form.ts';
import type { Bench } from '../../support/slack/bench.ts';
import { startBench } from '../../support/slack/bench.ts';
import { plain } from '../../support/said.ts';

describe('posting', () => {
  let bench: Bench;
  beforeEach(async () => {
    bench = await startBench();
  });
  afterEach(() => bench.close());

  const post = (part: Partial<Post>) =>
    bench.chat.post({
      key: 'k1',
      to: { room: 'C0CREW' },
      said: plain('12 loads, 214.3 tons'),
      repliesTo: null,
      replaces: null,
      ...part,
    });
  const shown = () => bench.crew.messages.map(({ text }) => text);
  const misbehave = (
    fault: Parameters<Bench['slack']['misbehave']>[0]['fault'],
    method = 'chat.postMessage',
  ) => {
    bench.slack.misbehave({ method, channel: null, times: 1, fault });
  };
  const callsOf = (name: string) => bench.slack.calls.filter(({ method }) => method === name).length;

  test('stands plain in the room and carries the outbox key', async () => {
    const result = await post({});
    const [message] = bench.crew.messages;
    expect(result).toEqual({ result: 'sent', messageId: `C0CREW:${String(message?.ts)}` });
    expect(message).toMatchObject({
      text: '12 loads, 214.3 tons',
      metadata: { event_type: 'fieldbell_outbox', event_payload: { key: 'k1' } },
    });
    expect(message?.thread_ts).toBeUndefined();
  });

  test('to a person: their direct conversation, opened once', async () => {
    await post({ to: { user: 'U1ANA' } });
    await post({ key: 'k2', to: { user: 'U1ANA' } });
    expect(bench.slack.workspace.direct('U1ANA').messages).toHaveLength(2);
    expect(callsOf('conversations.open')).toBe(1);
  });

  test('answers stand in the room, and in a thread only what was asked there', async () => {
    const { people } = bench.slack;
    const asked = people.say(bench.crew, 'U1ANA', 'tons?').message;
    const inThread = people.say(bench.crew, 'U1ANA', 'and yesterday?', { threadTs: asked.ts }).message;
    await post({ key: 'a', repliesTo: `C0CREW:${asked.ts}` });
    await post({ key: 'b', repliesTo: `C0CREW:${inThread.ts}:${asked.ts}` });
    await post({
      key: 'c',
      repliesTo: `C0CREW:${inThread.ts}:${asked.ts}`,
      said: { ...plain('Stop'), ring: true },
    });
    await post({ key: 'd', repliesTo: 'press:U1ANA:C0CREW:1.2:say-0:1.3' });
    expect(bench.crew.messages.slice(2).map(({ thread_ts }) => thread_ts)).toEqual([
      undefined,
      asked.ts,
      undefined,
      undefined,
    ]);
  });

  test('the board is replaced in place, and posted anew once somebody has deleted it', async () => {
    const first = await post({ key: 'board-1' });
    const replaces = first.result === 'sent' ? first.messageId : '';
    expect(await post({ key: 'board-2', said: plain('13 loads'), replaces })).toEqual(first);
    expect(shown()).toEqual(['13 loads']);
    bench.crew.messages = [];
    const again = await post({ key: 'board-3', said: plain('14 loads'), replaces });
    expect(again).toMatchObject({ result: 'sent' });
    expect(again).not.toEqual(first);
    expect(shown()).toEqual(['14 loads']);
  });

  const CHART = { svg: '<svg/>', altText: 'Line at North Station: 20 min now, 35 min at 14:00.' };
  const withChart = { key: 'chart', said: { ...plain('20 min now'), picture: CHART } };
  const uploads = () => [...bench.slack.uploads.values()];

  test('a picture follows its words in the same place, with its words for those who do not see it', async () => {
    expect(await post(withChart)).toMatchObject({ result: 'sent' });
    expect(uploads()).toMatchObject([
      { altText: CHART.altText, bytes: Buffer.from(CHART.svg), completed: true },
    ]);
    expect(bench.crew.messages).toMatchObject([
      { text: '20 min now' },
      { files: [{ title: CHART.altText }], subtype: 'file_share' },
    ]);
    const asked = bench.slack.people.say(bench.crew, 'U1ANA', 'line?').message;
    const inThread = bench.slack.people.say(bench.crew, 'U1ANA', 'chart?', { threadTs: asked.ts }).message;
    await post({ ...withChart, key: 'chart 2', repliesTo: `C0CREW:${inThread.ts}:${asked.ts}` });
    expect(bench.crew.messages.at(-1)).toMatchObject({ thread_ts: asked.ts, subtype: 'file_share' });
  });

  test('a picture goes up once, also where its words had to be looked up', async () => {
    misbehave({ is: 'answer-lost' });
    await post(withChart);
    expect(await post(withChart)).toMatchObject({ result: 'sent' });
    expect(await post(withChart)).toMatchObject({ result: 'sent' });
    expect(shown()).toEqual(['20 min now']);
    await post({ ...withChart, key: 'chart 2' });
    await post({ ...withChart, key: 'chart 2' });
    expect(uploads()).toHaveLength(1);
  });

  test.each([
    ['can not be uploaded', 'files.getUploadURLExternal', '<svg/>'],
    ['can not be shown', 'files.completeUploadExternal', '<svg/>'],
    ['can not be drawn', null, ''],
  ])('a picture that %s is left out: its words say the same', async (_what, method, svg) => {
    if (method !== null) misbehave({ is: 'status', status: 500 }, method);
    const said = { ...withChart.said, picture: { ...CHART, svg } };
    expect(await post({ ...withChart, said })).toMatchObject({ result: 'sent' });
    expect(shown()).toEqual(['20 min now']);
    expect(bench.logs.join()).toContain('A picture is left out');
  });

  test('an answer lost after the message was shown: the retry finds it and posts nothing', async () => {
    misbehave({ is: 'answer-lost' });
    expect(await post({})).toMatchObject({ result: 'unknown' });
    expect(shown()).toHaveLength(1);
    const [message] = bench.crew.messages;
    expect(await post({})).toEqual({ result: 'sent', messageId: `C0CREW:${String(message?.ts)}` });
    expect(shown()).toHaveLength(1);
    expect(callsOf('chat.postMessage')).toBe(1);
  });

  test('a look at what is shown that fails holds up a message, but nothing urgent: no stop waits for it', async () => {
    misbehave({ is: 'status', status: 500 }, 'conversations.history');
    expect(await post({ key: 'receipt' })).toMatchObject({ result: 'unknown' });
    misbehave({ is: 'status', status: 500 }, 'conversations.history');
    expect(await post({ key: 'stop', urgent: true })).toMatchObject({ result: 'sent' });
    expect(shown()).toHaveLength(1);
  });

  test('the same in a thread and to a person', async () => {
    const asked = bench.slack.people.say(bench.crew, 'U1ANA', 'tons?').message;
    const inThread = bench.slack.people.say(bench.crew, 'U1ANA', '?', { threadTs: asked.ts }).message;
    const places: Partial<Post>[] = [
      { key: 'thread', repliesTo: `C0CREW:${inThread.ts}:${asked.ts}` },
      { key: 'person', to: { user: 'U2BEN' } },
    ];
    for (const place of places) {
      misbehave({ is: 'answer-lost' });
      expect(await post(place)).toMatchObject({ result: 'unknown' });
      expect(await post(place)).toMatchObject({ result: 'sent' });
    }
    expect(bench.crew.messages).toHaveLength(3);
    expect(bench.slack.workspace.direct('U2BEN').messages).toHaveLength(1);
  });

  test('a process that died between posting and noting it down: the next one finds the message', async () => {
    await post({});
    const { slackChat } = await import('../../../adapters/slack/chat.ts');
    const next = slackChat(bench.settings, {
      cursor: bench.cursor,
      form: ticketForm,
      homeFor: async () => plain(''),
      draw: null,
      nowMs: () => Date.now(),
      log: () => undefined,
    });
    const said = plain('12 loads, 214.3 tons');
    await next.post({ key: 'k1', to: { room: 'C0CREW' }, said, repliesTo: null, replaces: null });
    await next.close();
    expect(shown()).toHaveLength(1);
  });

  test('a doubt that cannot be cleared up posts nothing', async () => {
    misbehave({ is: 'answer-lost' });
    await post({});
    misbehave({ is: 'status', status: 500 }, 'conversations.history');
    expect(await post({})).toMatchObject({ result: 'unknown' });
    expect(callsOf('chat.postMessage')).toBe(1);
  });

  test('it really failed: the retry posts, once', async () => {
    misbehave({ is: 'status', status: 500 });
    expect(await post({})).toMatchObject({ result: 'unknown' });
    expect(await post({})).toMatchObject({ result: 'sent' });
    expect(shown()).toHaveLength(1);
  });

  test('a key is found among more messages than one page holds', async () => {
    misbehave({ is: 'answer-lost' });
    await post({});
    for (let count = 0; count < 450; count += 1) bench.slack.people.say(bench.crew, 'U1ANA', 'chatter');
    expect(await post({})).toMatchObject({ result: 'sent' });
    expect(callsOf('chat.postMessage')).toBe(1);
  });

  test('too fast for one room: it alone waits, for as long as Slack says, and nothing is tried meanwhile', async () => {
    bench.slack.workspace.addChannel('C0OTHER', 'private');
    const fault = { is: 'rate-limited', retryAfterS: 30 } as const;
    bench.slack.misbehave({ method: 'chat.postMessage', channel: 'C0CREW', times: 1, fault });
    const startMs = performance.now();
    const results = await Promise.all([post({}), post({ key: 'k2', to: { room: 'C0OTHER' } })]);
    expect(results).toMatchObject([{ result: 'retry-after', waitMs: 30_000 }, { result: 'sent' }]);
    expect(performance.now() - startMs).toBeLessThan(10_000);
    expect(callsOf('chat.postMessage')).toBe(2);
    expect(await post({})).toMatchObject({ result: 'sent' });
  });

  test.each([
    ['no such room', { room: 'C0NOWHERE' }, /channel_not_found/],
    ['not invited', { room: 'C0FOREIGN' }, /invite/],
    ['archived', { room: 'C0OLD' }, /archived/],
    ['no such user', { user: 'U9NOBODY' }, /no such user/],
    ['account closed', { user: 'U3CARLA' }, /closed/],
  ])('gone: %s', async (_, to, why) => {
    bench.slack.workspace.addChannel('C0FOREIGN', 'public').member = false;
    bench.slack.workspace.addChannel('C0OLD', 'public').archived = true;
    bench.slack.workspace.closedAccounts.add('U3CARLA');
    const result = await post({ to });
    expect(result).toMatchObject({ result: 'gone' });
    expect(result.result === 'gone' && result.why).toMatch(why);
  });

  test('a revoked token can be mended: not gone', async () => {
    misbehave({ is: 'refused', error: 'token_revoked' });
    expect(await post({})).toMatchObject({ result: 'unknown', why: 'Slack answered token_revoked' });
  });
});
