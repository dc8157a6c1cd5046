import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Told } from '../support/synapse/bot-child.ts';
import { inboxOf, startBotProcess } from '../support/synapse/bot-child.ts';
import { bars, drawPicture } from '../support/picture.ts';
import { ENCRYPTED, settingsFor, temporaryDirectory } from '../support/synapse/crew.ts';
import type { NioUser } from '../support/synapse/nio-user.ts';
import { nioUser } from '../support/synapse/nio-user.ts';
import { startProxy } from '../support/synapse/proxy.ts';
import { rawUser } from '../support/synapse/raw-user.ts';
import { describeWithSynapse } from '../support/synapse/suite.ts';
import type { Account, Synapse } from '../support/synapse/synapse.ts';
import { startSynapse } from '../support/synapse/synapse.ts';

describeWithSynapse('encrypted rooms', () => {
  let synapse: Synapse;
  let gathered = 0;
  beforeAll(async () => {
    synapse = await startSynapse();
  });
  afterAll(() => synapse.dispose());

  const gather = async (botUrl: (url: string) => string = (url) => url, keyWaitMs = 60_000) => {
    gathered += 1;
    const [bot, ana, ben] = (await Promise.all(
      ['bell', 'ana', 'ben'].map((name) => synapse.register(`${name}${gathered}`)),
    )) as [Account, Account, Account];
    const owner = await rawUser(synapse.url, ana);
    const guest = await rawUser(synapse.url, ben);
    const room = await owner.createRoom([bot.user, ben.user], ENCRYPTED);
    await guest.join(room);
    const settings = settingsFor(botUrl(synapse.url), bot, { encryption: true, keyWaitMs });
    const process = { settings, data: temporaryDirectory(), answers: true };
    const start = async (): Promise<Told> => {
      const child = startBotProcess(process);
      await child.until('listening');
      return child;
    };
    const inRoom = (person: NioUser) => person.meets(room, bot.user);
    return { ana, ben, room, process, start, inRoom };
  };

  test('what is said before and after kills of the bot is read by both sides, and once', async () => {
    const { ana, room, process, start, inRoom } = await gather();
    const person = await nioUser(synapse.url, ana);
    const first = await start();
    await inRoom(person);
    const said = [await person.say(room, 'loaded')];
    const answer = await first.until('sent');
    expect(await person.read(answer)).toMatchObject({ encrypted: true });
    await person.hears('heard loaded\n1️⃣ Yes');
    await first.kill();
    said.push(await person.say(room, 'in line'), await person.say(room, 'on the piler'));
    const second = await start();
    await person.hears('heard in line\n1️⃣ Yes');
    await person.hears('heard on the piler\n1️⃣ Yes');
    said.push(await person.say(room, 'empty'));
    await person.hears('heard empty\n1️⃣ Yes');
    // The choices of a message of the process before stand in an encrypted message.
    said.push(await person.react(room, answer, '1️⃣'));
    await person.hears('heard yes\n1️⃣ Yes');
    await second.kill();
    const inbox = await inboxOf(process);
    expect(inbox.map(({ id }) => id)).toEqual(said);
    expect(inbox.map(({ event }) => (event.is === 'message' ? event.text : event.is))).toEqual([
      'loaded',
      'in line',
      'on the piler',
      'empty',
      'yes',
    ]);
    expect(person.cannotRead()).toEqual([]);
  }, 600_000);

  test('a device that came while the bot was down can read what the bot says', async () => {
    const { ana, room, start, inRoom } = await gather();
    const person = await nioUser(synapse.url, ana);
    const first = await start();
    await inRoom(person);
    await person.say(room, 'loaded');
    await person.hears('heard loaded\n1️⃣ Yes');
    await first.kill();
    const newPhone = await nioUser(synapse.url, ana);
    await start();
    await person.say(room, 'in line');
    await newPhone.hears('heard in line\n1️⃣ Yes');
  }, 600_000);

  test('a message to the bot alone is answered in an encrypted room of the two', async () => {
    const { ben, process, start } = await gather();
    const person = await nioUser(synapse.url, ben);
    const child = await start();
    const alone = await rawUser(synapse.url, ben);
    const made = await alone.createRoom([process.settings.user], { ...ENCRYPTED, is_direct: true });
    await person.meets(made, process.settings.user);
    await person.say(made, 'how long is the line');
    await child.until('sent');
    await person.hears('heard how long is the line\n1️⃣ Yes');
    await child.kill();
    expect(await inboxOf(process)).toMatchObject([{ room: null, event: { addressed: true } }]);
  }, 600_000);

  test('a picture is uploaded encrypted, and another implementation can open it', async () => {
    const { ana, room, start, inRoom } = await gather();
    const person = await nioUser(synapse.url, ana);
    await start();
    await inRoom(person);
    await person.say(room, 'picture');
    const drawn = createHash('sha256').update(await drawPicture(bars.svg));
    expect(await person.opened(bars.altText)).toBe(drawn.digest('hex'));
  }, 600_000);

  test('a message whose key is late is told as unreadable once, and taken when the key comes', async () => {
    const proxy = await startProxy(synapse.url);
    const held: unknown[] = [];
    let isHeld = true;
    proxy.change = ({ path }, body) => {
      const toDevice = body['to_device'] as { events?: unknown[] } | undefined;
      if (!path.endsWith('/sync')) return body;
      if (isHeld) held.push(...(toDevice?.events ?? []));
      const events = isHeld ? [] : [...held.splice(0), ...(toDevice?.events ?? [])];
      return { ...body, to_device: { events } };
    };
    const { ana, room, process, start, inRoom } = await gather(() => proxy.url, 300);
    const person = await nioUser(synapse.url, ana);
    const child = await start();
    await inRoom(person);
    const said = await person.say(room, 'loaded');
    const more = await person.say(room, 'in line');
    expect(await child.until('told')).toBe(said);
    isHeld = false;
    await person.say(room, 'on the piler');
    await child.until('new', 3);
    await child.kill();
    await proxy.close();
    expect(child.lines.filter((line) => line.startsWith('told'))).toHaveLength(1);
    const texts = (await inboxOf(process)).map(({ id, event }) => [
      id,
      event.is === 'message' ? event.text : '',
    ]);
    expect(texts).toContainEqual([said, 'loaded']);
    expect(texts).toContainEqual([more, 'in line']);
  }, 600_000);
});
