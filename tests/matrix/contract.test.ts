import { afterAll, beforeAll } from 'vitest';
import { matrixChat } from '../../adapters/matrix/chat.ts';
import type { Chat } from '../../src/ports/chat.ts';
import type { ChatHarness, Seen } from '../contracts/chat.ts';
import { chatContract } from '../contracts/chat.ts';
import type { Crew } from '../support/synapse/crew.ts';
import { depsWith, gatherCrew, settingsFor } from '../support/synapse/crew.ts';
import type { RawEvent, RawUser } from '../support/synapse/raw-user.ts';
import { describeWithSynapse } from '../support/synapse/suite.ts';
import type { Synapse } from '../support/synapse/synapse.ts';
import { startSynapse } from '../support/synapse/synapse.ts';
import { waitFor } from '../support/wait-for.ts';

const KEYCAPS = ['1️⃣', '2️⃣', '3️⃣'];

/** The messages of the bot in one room, edits applied. */
const shown = (events: readonly RawEvent[], bot: string, to: Seen['to']): (Seen & { atMs: number })[] => {
  const own = events.filter(({ sender, type }) => sender === bot && type === 'm.room.message');
  const editOf = ({ content }: RawEvent): unknown =>
    (content['m.relates_to'] as { rel_type?: string; event_id?: string } | undefined)?.rel_type ===
    'm.replace'
      ? (content['m.relates_to'] as { event_id: string }).event_id
      : null;
  return own
    .filter((event) => editOf(event) === null)
    .map((event) => {
      const edit = own.findLast((other) => editOf(other) === event.event_id);
      const content = (edit?.content['m.new_content'] ?? event.content) as { body: string };
      return { id: event.event_id, to, text: content.body, atMs: event.origin_server_ts };
    });
};

const directRoom = async (person: RawUser, { bot, room }: Crew): Promise<string> => {
  const others = (await person.joined()).filter((each) => each !== room);
  const [existing] = others;
  if (existing !== undefined) return existing;
  const made = await person.createRoom([bot.user], { is_direct: true });
  await waitFor('the bot in the direct room', async () => bot.user in (await person.members(made)));
  return made;
};

const harness = async (synapse: Synapse): Promise<ChatHarness> => {
  const crew = await gatherCrew(synapse);
  const { bot, device, ana, ben, room } = crew;
  const person = (user: string): RawUser => (user === ana.user ? ana : ben);
  const login = { by: 'token' as const, token: device.token };
  const adapter = matrixChat(settingsFor(synapse.url, bot, { login }), depsWith());
  const tried = new Set<string>();
  let closed = false;

  const chat: Chat = {
    ...adapter,
    listen: (onHeard) =>
      adapter.listen(async (heard) => {
        await onHeard(heard).finally(() => tried.add(heard.id));
      }),
    close: async () => {
      closed = true;
      await adapter.close();
    },
  };
  const settled = async (id: string): Promise<void> => {
    if (!closed) await waitFor(`try of the bot to take ${id}`, () => tried.has(id));
  };
  const takeInvitations = async (one: RawUser): Promise<void> => {
    for (const invitation of await one.invitations()) await one.join(invitation);
  };

  return {
    chat,
    users: [ana.user, ben.user],
    room,
    noRoom: '!nowhere:crew.localhost',
    sayAs: async (user, to, text) => {
      const one = person(user);
      await settled(await one.say(to ?? (await directRoom(one, crew)), text));
    },
    pressAs: async (user, to, messageId, index) => {
      const one = person(user);
      await takeInvitations(one);
      await settled(await one.react(to ?? (await directRoom(one, crew)), messageId, KEYCAPS[index] ?? ''));
    },
    acked: async () => null,
    seen: async () => {
      const all: (Seen & { atMs: number })[] = shown(await ana.history(room), bot.user, { room });
      for (const one of [ana, ben]) {
        await takeInvitations(one);
        for (const each of (await one.joined()).filter((joined) => joined !== room))
          all.push(...shown(await one.history(each), bot.user, { user: one.user }));
      }
      return all.toSorted((a, b) => a.atMs - b.atMs).map(({ id, to, text }) => ({ id, to, text }));
    },
    dispose: () => chat.close(),
  };
};

describeWithSynapse('on a real homeserver', () => {
  let synapse: Synapse;
  beforeAll(async () => {
    synapse = await startSynapse();
  });
  afterAll(() => synapse.dispose());

  chatContract('Matrix', () => harness(synapse));
});
