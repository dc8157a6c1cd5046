import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Chat, Heard, Post, PostResult, Said } from '../../src/ports/chat.ts';
import { plain } from '../support/said.ts';

/** A message of the bot as the platform's users see it now. */
export interface Seen {
  id: string;
  to: Post['to'];
  text: string;
}

/** A chat adapter together with its platform, or with what stands in for the platform on the other side of the wire. */
export interface ChatHarness {
  chat: Chat;
  /** Two users and one room, by the platform's own ids. */
  users: readonly [string, string];
  room: string;
  /** Shaped like a room, but there is none. */
  noRoom: string;
  /**
   * Does it as the platform's own app would; `room` null = to the bot alone. Resolves when the platform knows whether
   * the bot has taken the message, or, after `close`, when it would have.
   */
  sayAs: (user: string, room: string | null, text: string) => Promise<void>;
  /** Presses the button at `index` (0 = first) of that message. */
  pressAs: (user: string, room: string | null, messageId: string, index: number) => Promise<void>;
  /**
   * How many messages the bot has acknowledged, once acknowledgements under way have come in; null = the platform knows
   * no acknowledgement.
   */
  acked: () => Promise<number | null>;
  /** In the order they were first shown. */
  seen: () => Promise<Seen[]>;
  dispose: () => Promise<void>;
}

const idOf = (result: PostResult): string => {
  if (result.result !== 'sent') throw new Error(`not sent: ${JSON.stringify(result)}`);
  return result.messageId;
};

/** The laws that every chat adapter keeps. `open` makes a fresh one, not yet listening. */
export const chatContract = (platform: string, open: () => Promise<ChatHarness>): void => {
  describe(`${platform} as a chat platform`, () => {
    let harness: ChatHarness;
    let heard: Heard[];
    let keyNumber = 0;

    beforeEach(async () => {
      harness = await open();
      heard = [];
    });
    afterEach(() => harness.dispose());

    const listen = (): Promise<void> =>
      harness.chat.listen(async (message) => {
        heard.push(message);
      });

    const post = (said: Said, change: Partial<Post> = {}): Promise<PostResult> => {
      keyNumber += 1;
      const key = `contract:${keyNumber}`;
      return harness.chat.post({
        key,
        to: { room: harness.room },
        said,
        repliesTo: null,
        replaces: null,
        ...change,
      });
    };

    /** The messages with one of these texts, so that a platform's own greetings do not count. */
    const seenAmong = async (texts: readonly string[]): Promise<Seen[]> =>
      (await harness.seen()).filter(({ text }) => texts.includes(text));

    test('a message comes with the platform, the user, the room and its words', async () => {
      const [user] = harness.users;
      await listen();
      await harness.sayAs(user, harness.room, 'loaded at North 40');
      expect(heard).toMatchObject([
        {
          platform: harness.chat.platform,
          user,
          room: harness.room,
          event: { is: 'message', text: 'loaded at North 40', addressed: false, repliesTo: null },
        },
      ]);
      expect(heard.every(({ sentMs, heardMs }) => 0 < sentMs && sentMs <= heardMs)).toBe(true);
    });

    test('a message to the bot alone has no room and is meant for the bot', async () => {
      const [, user] = harness.users;
      await listen();
      await harness.sayAs(user, null, 'how long is the line');
      expect(heard).toMatchObject([
        { user, room: null, event: { text: 'how long is the line', addressed: true } },
      ]);
    });

    test('the same words said twice are two messages, in order', async () => {
      const [one, two] = harness.users;
      await listen();
      await harness.sayAs(one, harness.room, 'loaded');
      await harness.sayAs(two, harness.room, 'in line');
      await harness.sayAs(one, harness.room, 'loaded');
      expect(heard.map(({ user }) => user)).toEqual([one, two, one]);
      expect(new Set(heard.map(({ id }) => id)).size).toBe(3);
      expect(heard.every(({ id }) => id !== '')).toBe(true);
    });

    test('a message is acknowledged when the bot has it safe, not before', async () => {
      const [user] = harness.users;
      const begun = Promise.withResolvers<undefined>();
      const safe = Promise.withResolvers<undefined>();
      await harness.chat.listen(async () => {
        begun.resolve(undefined);
        await safe.promise;
      });
      const before = await harness.acked();
      const said = harness.sayAs(user, harness.room, 'loaded');
      await begun.promise;
      expect(await harness.acked()).toBe(before);
      safe.resolve(undefined);
      await said;
      expect(await harness.acked()).toBe(before === null ? null : before + 1);
    });

    test('a message that the bot could not keep is not acknowledged, and the next one is still heard', async () => {
      const [user] = harness.users;
      await harness.chat.listen(async (message) => {
        if (message.event.is === 'message' && message.event.text === 'loaded')
          throw new Error('database is down');
        heard.push(message);
      });
      const before = await harness.acked();
      await harness.sayAs(user, harness.room, 'loaded');
      expect(await harness.acked()).toBe(before);
      await harness.sayAs(user, harness.room, 'in line');
      expect(heard).toMatchObject([{ event: { text: 'in line' } }]);
    });

    test('a post to a room, and one to a person, are shown there under the id that was returned', async () => {
      const [, user] = harness.users;
      await listen();
      const toRoom = idOf(await post(plain('Truck 2 is loaded.')));
      const toPerson = idOf(await post(plain('Leave at 10:20.'), { to: { user } }));
      expect(toRoom).not.toBe(toPerson);
      expect(await seenAmong(['Truck 2 is loaded.', 'Leave at 10:20.'])).toEqual([
        { id: toRoom, to: { room: harness.room }, text: 'Truck 2 is loaded.' },
        { id: toPerson, to: { user }, text: 'Leave at 10:20.' },
      ]);
    });

    test('the same key posted twice is shown once', async () => {
      await listen();
      const first = await post(plain('Stop digging at 15:10.'), { key: 'contract:stop' });
      const again = await post(plain('Stop digging at 15:10.'), { key: 'contract:stop' });
      expect(again).toEqual(first);
      expect(await seenAmong(['Stop digging at 15:10.'])).toHaveLength(1);
    });

    test('the same words under another key are another message', async () => {
      await listen();
      const first = idOf(await post(plain('Stop digging at 15:10.')));
      expect(idOf(await post(plain('Stop digging at 15:10.')))).not.toBe(first);
      expect(await seenAmong(['Stop digging at 15:10.'])).toHaveLength(2);
    });

    test('a post that replaces another changes it in place', async () => {
      await listen();
      const board = idOf(await post(plain('3 trucks in line')));
      idOf(await post(plain('Truck 5 is down.')));
      const changed = idOf(await post(plain('2 trucks in line'), { replaces: board }));
      const texts = ['3 trucks in line', 'Truck 5 is down.', '2 trucks in line'];
      expect(changed).toBe(board);
      expect((await seenAmong(texts)).map(({ text }) => text)).toEqual([
        '2 trucks in line',
        'Truck 5 is down.',
      ]);
    });

    test('a pressed button says its words for the person who presses it', async () => {
      const [one, two] = harness.users;
      await listen();
      const buttons = [
        { label: 'Loaded', words: 'loaded' },
        { label: 'In line', words: 'in line' },
      ];
      const inRoom = idOf(await post({ ...plain('Where are you?'), buttons }));
      await harness.pressAs(two, harness.room, inRoom, 1);
      await harness.pressAs(one, harness.room, inRoom, 0);
      const alone = idOf(await post({ ...plain('And now?'), buttons }, { to: { user: one } }));
      await harness.pressAs(one, null, alone, 1);
      const says = (text: string, repliesTo: string) => ({ is: 'message', text, addressed: true, repliesTo });
      expect(heard).toMatchObject([
        { user: two, room: harness.room, event: says('in line', inRoom) },
        { user: one, room: harness.room, event: says('loaded', inRoom) },
        { user: one, room: null, event: says('in line', alone) },
      ]);
      expect(new Set(heard.map(({ id }) => id)).size).toBe(3);
    });

    test('the bot never hears itself', async () => {
      const [user] = harness.users;
      await listen();
      await post(plain('loaded'));
      await post(plain('loaded'), { to: { user } });
      await harness.sayAs(user, harness.room, 'in line');
      expect(heard).toMatchObject([{ user, event: { text: 'in line' } }]);
    });

    test('nothing is heard after close', async () => {
      const [user] = harness.users;
      await listen();
      await harness.sayAs(user, harness.room, 'loaded');
      await harness.chat.close();
      await harness.sayAs(user, harness.room, 'in line');
      expect(heard.map(({ event }) => event)).toMatchObject([{ text: 'loaded' }]);
    });

    test('a room that there is not is told as gone, for good', async () => {
      await listen();
      expect(await post(plain('Good morning.'), { to: { room: harness.noRoom } })).toMatchObject({
        result: 'gone',
      });
    });
  });
};
