import { expect, test } from 'vitest';
import { goLive } from '../../src/command/live.ts';
import { operateOn } from '../../src/command/operate.ts';
import type { Chat, Heard, Post, PostResult } from '../../src/ports/chat.ts';
import { storeOver } from '../../src/store/open.ts';
import { at } from '../support/crew.ts';
import { freshDatabase } from '../support/database.ts';
import { sampleRoster } from '../support/roster.ts';

const heard = (id: string, room: string | null, text: string): Heard => ({
  platform: 'local',
  id,
  user: 'ben',
  userName: null,
  room,
  sentMs: at('07:05'),
  heardMs: at('07:05'),
  event: { is: 'message', text, addressed: false, repliesTo: null },
});

/** A platform whose room takes no message until it is let go, while each person is reached at once. */
const halfHung = () => {
  const hangs = Promise.withResolvers<PostResult>();
  const posted = new Map<string, PromiseWithResolvers<Post>>();
  const arrival = (lane: string): PromiseWithResolvers<Post> => {
    const known = posted.get(lane) ?? Promise.withResolvers<Post>();
    posted.set(lane, known);
    return known;
  };
  const listening = Promise.withResolvers<(heard: Heard) => Promise<void>>();
  const chat: Chat = {
    platform: 'local',
    canEdit: false,
    listen: async (onHeard) => {
      listening.resolve(onHeard);
    },
    post: (post) => {
      const isRoom = 'room' in post.to;
      arrival(isRoom ? 'room' : 'person').resolve(post);
      return isRoom ? hangs.promise : Promise.resolve({ result: 'sent', messageId: 'p1' });
    },
    close: async () => undefined,
  };
  return { chat, say: async (one: Heard) => (await listening.promise)(one), arrival, letGo: hangs.resolve };
};

test('a post that hangs holds up its own room alone', { timeout: 240_000 }, async () => {
  const { chat, say, arrival, letGo } = halfHung();
  const log = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const live = { wake: () => undefined as unknown };
  const store = await storeOver(await freshDatabase(), [sampleRoster.operation]);
  const means = { platforms: ['local'], log, wakeDeliverer: () => live.wake() };
  const operation = await operateOn(store, sampleRoster, means);
  const started = goLive(operation, [chat], null, log);
  await started.listening;
  live.wake = started.wake;
  await say(heard('m1', 'crew', 'loaded'));
  expect((await arrival('room').promise).said.text).toMatch(/^Truck 2: loaded/);
  await say(heard('m2', null, 'tons today?'));
  expect((await arrival('person').promise).said.text).toMatch(/^Today so far/);
  letGo({ result: 'sent', messageId: 'p2' });
  await started.stop();
});
