import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { bars, drawPicture } from '../support/picture.ts';
import type { Crew } from '../support/synapse/crew.ts';
import { gatherCrew, idOf, memoryCursor, postTo, settingsFor, startBot } from '../support/synapse/crew.ts';
import { plain } from '../support/said.ts';
import { startProxy } from '../support/synapse/proxy.ts';
import type { RawEvent } from '../support/synapse/raw-user.ts';
import { describeWithSynapse } from '../support/synapse/suite.ts';
import type { Synapse } from '../support/synapse/synapse.ts';
import { startSynapse } from '../support/synapse/synapse.ts';

describeWithSynapse('what the Matrix bot shows', () => {
  let synapse: Synapse;
  let crew: Crew;
  beforeAll(async () => {
    synapse = await startSynapse();
  });
  afterAll(() => synapse.dispose());
  beforeEach(async () => {
    crew = await gatherCrew(synapse);
  });

  const ofBot = async (type: string): Promise<RawEvent[]> =>
    (await crew.ana.history(crew.room)).filter(
      (event) => event.sender === crew.bot.user && event.type === type,
    );

  test('chatter rings on no phone, a mention on one, and a stop on all', async () => {
    const { ana, ben, bot, room } = crew;
    await ana.power(room, { [bot.user]: 50 });
    const { chat } = await startBot(settingsFor(synapse.url, bot));
    await chat.post(postTo({ room }, 'chatter', plain('Truck 2 is loaded.')));
    const turn = { ...plain('Ana, your turn.'), mentions: [ana.user] };
    const named = idOf(await chat.post(postTo({ room }, 'turn', turn)));
    const stop = { ...plain('Stop digging.'), ring: true };
    const all = idOf(await chat.post(postTo({ room }, 'stop', stop)));
    expect((await ana.rung()).toSorted()).toEqual([named, all].toSorted());
    expect(await ben.rung()).toEqual([all]);
    await chat.close();
  });

  test('the board is one message that is edited, with the choices of its newest state', async () => {
    const { ana, bot, room } = crew;
    const { chat } = await startBot(settingsFor(synapse.url, bot));
    const board = (text: string, ...words: string[]) => ({
      ...plain(text),
      buttons: words.map((each) => ({ label: each, words: each })),
    });
    const first = idOf(await chat.post(postTo({ room }, 'b1', board('2 in line', 'loaded'))));
    for (const [key, said] of [
      ['b2', board('3 in line', 'loaded', 'in line')],
      ['b3', board('1 in line', 'loaded', 'in line')],
    ] as const)
      expect(idOf(await chat.post(postTo({ room }, key, said, { replaces: first })))).toBe(first);
    const shown = await ana.event(room, first);
    // The homeserver puts the newest edit beside the event: https://spec.matrix.org/latest/client-server-api/#event-replacements
    expect(shown.unsigned).toMatchObject({
      'm.relations': {
        'm.replace': { content: { 'm.new_content': { body: '1 in line\n1️⃣ loaded\n2️⃣ in line' } } },
      },
    });
    const keys = (await ofBot('m.reaction')).map(({ content }) => content['m.relates_to']);
    expect(keys).toEqual([
      { rel_type: 'm.annotation', event_id: first, key: '1️⃣' },
      { rel_type: 'm.annotation', event_id: first, key: '2️⃣' },
    ]);
    await chat.close();
  });

  test('a picture stands under the words that say the same, once, with its own words in its place', async () => {
    const { ana, bot, room } = crew;
    const proxy = await startProxy(synapse.url);
    const settings = settingsFor(proxy.url, bot);
    const cursor = memoryCursor();
    const post = postTo({ room }, 'week', { ...plain('8 and 5 loads.'), picture: bars });
    const first = await startBot(settings, { draw: drawPicture, cursor });
    proxy.answer = ({ path }) =>
      path.endsWith('/upload') ? { status: 500, body: { errcode: 'M_UNKNOWN', error: 'disk' } } : null;
    expect((await first.chat.post(post)).result).toBe('unknown');
    proxy.answer = () => null;
    const id = idOf(await first.chat.post(post));
    await first.chat.close();
    // As after a crash that came before the outbox noted it as sent.
    const second = await startBot(settings, { draw: drawPicture, cursor });
    expect(idOf(await second.chat.post(post))).toBe(id);
    const [words, picture, ...more] = await ofBot('m.room.message');
    expect(more).toEqual([]);
    expect(words).toMatchObject({ event_id: id, content: { body: '8 and 5 loads.' } });
    const png = await drawPicture(bars.svg);
    expect(picture?.content).toMatchObject({
      msgtype: 'm.image',
      body: bars.altText,
      info: { mimetype: 'image/png', w: 60, h: 40, size: png.byteLength },
    });
    expect(await ana.download(String(picture?.content['url']))).toEqual(new Uint8Array(png));
    await second.chat.close();
    await proxy.close();
  });

  test('where a picture can not be had, the words stand alone', async () => {
    const { bot, room } = crew;
    const proxy = await startProxy(synapse.url);
    const { chat } = await startBot(settingsFor(proxy.url, bot), { draw: drawPicture });
    const notSvg = { ...plain('No picture.'), picture: { ...bars, svg: 'no SVG' } };
    idOf(await chat.post(postTo({ room }, 'bad', notSvg)));
    proxy.answer = ({ path }) =>
      path.endsWith('/upload') ? { status: 413, body: { errcode: 'M_TOO_LARGE', error: 'too large' } } : null;
    idOf(await chat.post(postTo({ room }, 'large', { ...plain('Too large.'), picture: bars })));
    const bodies = (await ofBot('m.room.message')).map(({ content }) => content['body']);
    expect(bodies).toEqual(['No picture.', 'Too large.']);
    await chat.close();
    await proxy.close();
  });
});
