import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import type { Crew } from '../support/synapse/crew.ts';
import { gatherCrew, idOf, memoryCursor, postTo, settingsFor, startBot } from '../support/synapse/crew.ts';
import { plain } from '../support/said.ts';
import type { Proxy } from '../support/synapse/proxy.ts';
import { startProxy } from '../support/synapse/proxy.ts';
import { describeWithSynapse } from '../support/synapse/suite.ts';
import type { Synapse } from '../support/synapse/synapse.ts';
import { startSynapse } from '../support/synapse/synapse.ts';
import { waitFor } from '../support/wait-for.ts';

const LIMITED = {
  status: 429,
  body: { errcode: 'M_LIMIT_EXCEEDED', error: 'Too many requests' },
  headers: { 'Retry-After': '7' },
};
const BROKEN = { status: 500, body: { errcode: 'M_UNKNOWN', error: 'Internal server error' } };

describeWithSynapse('a homeserver that fails', () => {
  let synapse: Synapse;
  let crew: Crew;
  let proxy: Proxy;
  beforeAll(async () => {
    synapse = await startSynapse();
  });
  afterAll(() => synapse.dispose());
  beforeEach(async () => {
    crew = await gatherCrew(synapse);
    proxy = await startProxy(synapse.url);
    return () => proxy.close();
  });

  const shownIn = async (room: string, text: string): Promise<string[]> =>
    (await crew.ana.history(room))
      .filter(({ content }) => content['body'] === text)
      .map(({ event_id }) => event_id);

  test('a wish to wait is passed on, holds up no other room, and the SDK does not try by itself', async () => {
    const { ana, bot, room } = crew;
    const other = await ana.createRoom([bot.user]);
    await crew.device.join(other);
    const { chat } = await startBot(settingsFor(proxy.url, bot));
    let tries = 0;
    proxy.answer = ({ method, path }) => {
      const isHere = method === 'PUT' && path.includes(room);
      tries += isHere ? 1 : 0;
      return isHere ? LIMITED : null;
    };
    const stop = postTo({ room }, 'stop', plain('Stop digging at 15:10.'));
    expect(await chat.post(stop)).toEqual({ result: 'retry-after', waitMs: 7000 });
    expect(tries).toBe(1);
    expect((await chat.post(postTo({ room: other }, 'hello', plain('Hello.')))).result).toBe('sent');
    proxy.answer = () => null;
    const id = idOf(await chat.post(stop));
    expect(await shownIn(room, 'Stop digging at 15:10.')).toEqual([id]);
    await chat.close();
  });

  test('a message that failed does not block the one after it', async () => {
    const { bot, room } = crew;
    const { chat } = await startBot(settingsFor(proxy.url, bot));
    proxy.answer = ({ path }) => (path.endsWith('/tally') ? BROKEN : null);
    expect((await chat.post(postTo({ room }, 'tally', plain('12 loads')))).result).toBe('unknown');
    const id = idOf(await chat.post(postTo({ room }, 'stop', plain('Stop digging at 15:10.'))));
    expect(await shownIn(room, 'Stop digging at 15:10.')).toEqual([id]);
    await chat.close();
  });

  test('a message whose answer was lost is shown once, sent again here or after a restart', async () => {
    const { bot, room } = crew;
    const settings = settingsFor(proxy.url, bot);
    const cursor = memoryCursor();
    const first = await startBot(settings, { cursor });
    const here = postTo({ room }, 'here', plain('Truck 2 is loaded.'));
    const later = postTo({ room }, 'later', plain('Truck 5 is loaded.'));
    proxy.change = ({ method, path }, body) => (method === 'PUT' && path.includes('/send/') ? null : body);
    expect((await first.chat.post(here)).result).toBe('unknown');
    expect((await first.chat.post(later)).result).toBe('unknown');
    proxy.change = (_request, body) => body;
    const hereId = idOf(await first.chat.post(here));
    await first.chat.close();
    const second = await startBot(settings, { cursor });
    const laterId = idOf(await second.chat.post(later));
    expect(await shownIn(room, 'Truck 2 is loaded.')).toEqual([hereId]);
    expect(await shownIn(room, 'Truck 5 is loaded.')).toEqual([laterId]);
    await second.chat.close();
  });

  test('a person has one room with the bot, although the homeserver went down when it was made', async () => {
    const { ana, bot } = crew;
    const log: string[] = [];
    const { chat } = await startBot(settingsFor(proxy.url, bot), {
      log: (_level, message) => log.push(message),
    });
    const stop = postTo({ user: ana.user }, 'stop', plain('Stop digging at 15:10.'));
    let made = 0;
    proxy.answer = ({ path }) => (/\/(?:sync|versions)$/.test(path) ? BROKEN : null);
    proxy.change = ({ path }, body) => {
      const isMaking = path.endsWith('/createRoom');
      made += isMaking ? 1 : 0;
      return isMaking || /\/(?:sync|versions)$/.test(path) ? null : body;
    };
    expect((await chat.post(stop)).result).toBe('unknown');
    await waitFor('the loss', () => log.includes('The Matrix homeserver is unreachable; trying again.'));
    expect((await chat.post(stop)).result).toBe('unknown');
    proxy.answer = () => null;
    proxy.change = (_request, body) => body;
    await waitFor('the homeserver', () => log.includes('Connected to Matrix again.'), 30_000);
    expect((await chat.post(stop)).result).toBe('sent');
    expect(made).toBe(1);
    await chat.close();
  });

  test('missed messages are read up although the homeserver fails and wants the bot to wait', async () => {
    const { ana, bot, room } = crew;
    const settings = settingsFor(proxy.url, bot);
    const cursor = memoryCursor();
    const first = await startBot(settings, { cursor });
    await first.chat.close();
    const said = await ana.say(room, 'loaded');
    const failures = [BROKEN, { ...LIMITED, headers: { 'Retry-After': '1' } }];
    proxy.answer = ({ path }) => (path.endsWith('/messages') ? (failures.shift() ?? null) : null);
    const second = await startBot(settings, { cursor });
    expect(failures).toEqual([]);
    expect(second.heard.map(({ id }) => id)).toEqual([said]);
    await second.chat.close();
  });

  test('a room that the bot was removed from is gone', async () => {
    const { ana, bot, room } = crew;
    const { chat, until } = await startBot(settingsFor(proxy.url, bot));
    await until(await ana.say(room, 'loaded'));
    await crew.device.leave(room);
    expect((await chat.post(postTo({ room }, 'late', plain('12 loads')))).result).toBe('gone');
    await chat.close();
  });
});

describeWithSynapse('a homeserver with its own rate limits', () => {
  let synapse: Synapse;
  beforeAll(async () => {
    synapse = await startSynapse({ ownLimits: true });
  });
  afterAll(() => synapse.dispose());

  test('asks to wait after a run of messages, and shows each once when asked again in time', async () => {
    const { bot, room, ana } = await gatherCrew(synapse);
    const { chat } = await startBot(settingsFor(synapse.url, bot));
    const results = [];
    for (let at = 0; at < 12; at += 1)
      results.push(await chat.post(postTo({ room }, `load ${at}`, plain(`load ${at}`))));
    const waits = results.flatMap((each) => (each.result === 'retry-after' ? [each.waitMs] : []));
    expect(waits.length).toBeGreaterThan(0);
    expect(waits.every((waitMs) => waitMs > 0 && waitMs <= 60_000)).toBe(true);
    const sent = results.filter(({ result }) => result === 'sent').length;
    expect(sent + waits.length).toBe(12);
    const shown = (await ana.history(room)).filter(({ sender }) => sender === bot.user);
    expect(shown.filter(({ type }) => type === 'm.room.message')).toHaveLength(sent);
    await chat.close();
  });
});
