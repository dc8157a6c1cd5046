import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import type { Invite } from '../../adapters/matrix/invites.ts';
import { inboxOf, startBotProcess } from '../support/synapse/bot-child.ts';
import type { Crew } from '../support/synapse/crew.ts';
import {
  gatherCrew,
  idOf,
  memoryCursor,
  postTo,
  settingsFor,
  startBot,
  temporaryDirectory,
} from '../support/synapse/crew.ts';
import { plain } from '../support/said.ts';
import { rawUser } from '../support/synapse/raw-user.ts';
import { describeWithSynapse } from '../support/synapse/suite.ts';
import type { Synapse } from '../support/synapse/synapse.ts';
import { startSynapse } from '../support/synapse/synapse.ts';
import { waitFor } from '../support/wait-for.ts';

describeWithSynapse('what the Matrix bot takes in', () => {
  let synapse: Synapse;
  let crew: Crew;
  beforeAll(async () => {
    synapse = await startSynapse();
  });
  afterAll(() => synapse.dispose());
  beforeEach(async () => {
    crew = await gatherCrew(synapse);
  });

  test('nothing from before its first start, all from then on, more than one sync holds, in order', async () => {
    const { ana, ben, room, bot } = crew;
    const settings = settingsFor(synapse.url, bot);
    const cursor = memoryCursor();
    await ana.say(room, 'old');
    const first = await startBot(settings, { cursor });
    const last = await ana.say(room, 'first');
    await first.until(last);
    await first.chat.close();
    const missed = Array.from({ length: 130 }, (_, at) => `load ${at}`);
    for (const [at, text] of missed.entries()) await (at % 2 === 0 ? ana : ben).say(room, text);
    const second = await startBot(settings, { cursor });
    expect(first.texts()).toEqual(['first']);
    expect(second.texts()).toEqual(missed);
    await second.chat.close();
    const third = await startBot(settings, { cursor });
    expect(third.texts()).toEqual([]);
    await third.chat.close();
  });

  test('edits, withdrawals and answers, but no words of bots, and no edits of others', async () => {
    const { ana, ben, room, bot } = crew;
    const { chat, heard, until } = await startBot(settingsFor(synapse.url, bot));
    const said = await ana.say(room, '12 loads');
    const edit = await ana.edit(room, said, '13 loads');
    await ben.edit(room, said, '99 loads');
    await ana.say(room, 'I am a bot', { msgtype: 'm.notice' });
    const answer = await ben.say(room, '> <@ana> 12 loads\n\nagreed', {
      'm.relates_to': { 'm.in_reply_to': { event_id: said } },
    });
    const named = await ben.say(room, 'look here', { 'm.mentions': { user_ids: [bot.user] } });
    const gone = await ana.redact(room, said);
    await until(gone);
    expect(heard.map(({ id, user, event }) => ({ id, user, event }))).toEqual([
      {
        id: said,
        user: ana.user,
        event: { is: 'message', text: '12 loads', addressed: false, repliesTo: null },
      },
      { id: edit, user: ana.user, event: { is: 'edit', of: said, text: '13 loads' } },
      {
        id: answer,
        user: ben.user,
        event: { is: 'message', text: 'agreed', addressed: false, repliesTo: said },
      },
      {
        id: named,
        user: ben.user,
        event: { is: 'message', text: 'look here', addressed: true, repliesTo: null },
      },
      { id: gone, user: ana.user, event: { is: 'deletion', of: said } },
    ]);
    await chat.close();
  });

  test('a press after a restart, on the latest choices, and its withdrawal', async () => {
    const { ana, ben, room, bot } = crew;
    const settings = settingsFor(synapse.url, bot);
    const cursor = memoryCursor();
    const choices = (...words: string[]) => ({
      ...plain('Where?'),
      buttons: words.map((each) => ({ label: each, words: each })),
    });
    const first = await startBot(settings, { cursor });
    const board = idOf(await first.chat.post(postTo({ room }, 'k1', choices('loaded', 'in line'))));
    const edited = postTo({ room }, 'k2', choices('loaded', 'on the piler'), { replaces: board });
    expect(idOf(await first.chat.post(edited))).toBe(board);
    await first.chat.close();
    const second = await startBot(settings, { cursor });
    const foreign = await ana.say(room, 'no choices here');
    await ben.react(room, foreign, '1️⃣');
    const pressed = await ben.react(room, board, '2️⃣');
    await second.until(pressed);
    const released = await ben.redact(room, pressed);
    await second.until(released);
    expect(second.events()).toMatchObject([
      { text: 'no choices here' },
      { text: 'on the piler', addressed: true, repliesTo: board },
      { is: 'deletion', of: pressed },
    ]);
    await second.chat.close();
  });

  test('invitations of those on the list; others are declined and told', async () => {
    const { ana, ben, bot } = crew;
    const declined: Invite[] = [];
    const settings = settingsFor(synapse.url, bot, { invitesFrom: [ana.user] });
    const { chat, until, texts } = await startBot(settings, { declined: (invite) => declined.push(invite) });
    const welcome = await ana.createRoom([bot.user]);
    const unwelcome = await ben.createRoom([bot.user]);
    await ana.say(welcome, 'said before it joined');
    await waitFor('the bot in the room', async () => bot.user in (await ana.members(welcome)));
    await until(await ana.say(welcome, 'hello'));
    await waitFor('word of the declined invitation', () => declined.length > 0);
    expect(declined).toEqual([{ room: unwelcome, by: ben.user }]);
    expect(bot.user in (await ben.members(unwelcome))).toBe(false);
    expect(texts().at(-1)).toBe('hello');
    await chat.close();
  });

  test('each message once in the inbox, although the process is killed again and again', async () => {
    const { ana, ben, room, bot } = crew;
    const process = { settings: settingsFor(synapse.url, bot), data: temporaryDirectory(), answers: false };
    const early = startBotProcess(process);
    await early.until('listening');
    await early.kill();
    const said: string[] = [];
    const speak = async (count: number): Promise<void> => {
      for (let at = 0; at < count; at += 1)
        said.push(await (at % 3 === 0 ? ben : ana).say(room, `load ${said.length}`));
    };
    await speak(70);
    for (const linesBeforeKill of [5, 40, 12]) {
      const child = startBotProcess(process);
      await Promise.all([child.until('', linesBeforeKill), speak(15)]);
      await child.kill();
    }
    const last = startBotProcess(process);
    const end = await ana.say(room, 'the end');
    said.push(end);
    await last.until(`new ${end}`);
    await last.kill();
    const kept = (await inboxOf(process)).map(({ id }) => id);
    expect(kept).toHaveLength(said.length);
    expect(new Set(kept)).toEqual(new Set(said));
  }, 600_000);

  test('what is said while the homeserver stands still or is down for the bot comes afterwards', async () => {
    const { ana, room, bot } = crew;
    const { chat, until, texts } = await startBot(settingsFor(synapse.url, bot));
    await until(await ana.say(room, 'before'));
    synapse.freeze();
    const during = ana.say(room, 'while frozen');
    synapse.thaw();
    await until(await during);
    await synapse.stop();
    const failed = await chat.post(postTo({ room }, 'down', plain('Good morning.')));
    expect(failed.result).toBe('unknown');
    await synapse.start();
    const after = await ana.say(room, 'after the restart');
    await until(after);
    expect(texts()).toEqual(['before', 'while frozen', 'after the restart']);
    // The same post again: the SDK refuses a known transaction, so it must go out as the kept event.
    const sent = idOf(await chat.post(postTo({ room }, 'down', plain('Good morning.'))));
    const shown = (await ana.history(room)).filter(({ content }) => content['body'] === 'Good morning.');
    expect(shown.map(({ event_id }) => event_id)).toEqual([sent]);
    await chat.close();
  }, 400_000);

  test('a homeserver that is down at the start is waited for', async () => {
    const { ana, room, bot } = crew;
    const settings = settingsFor(synapse.url, bot);
    const cursor = memoryCursor();
    const first = await startBot(settings, { cursor });
    await first.chat.close();
    const said = await ana.say(room, 'loaded');
    await synapse.stop();
    const starting = startBot(settings, { cursor });
    await synapse.start();
    const second = await starting;
    expect(second.heard.map(({ id }) => id)).toEqual([said]);
    await second.chat.close();
  }, 400_000);

  test('a refused login, a foreign directory and a directory in use are told at once', async () => {
    const { bot, ana } = crew;
    const wrong = settingsFor(synapse.url, bot, { login: { by: 'password', password: 'wrong' } });
    await expect(startBot(wrong)).rejects.toThrow(`refuses the password of ${bot.user}`);
    const settings = settingsFor(synapse.url, bot);
    const running = await startBot(settings);
    await expect(startBot(settings)).rejects.toThrow('in use by another process');
    await running.chat.close();
    const other = { ...settings, user: ana.user };
    await expect(startBot(other)).rejects.toThrow(`belongs to ${bot.user}`);
    const device = await rawUser(synapse.url, bot);
    const moved = { ...settings, login: { by: 'token' as const, token: device.token } };
    await expect(startBot(moved)).rejects.toThrow('set the old token, or a new directory');
  });
});
