import { z } from 'zod';
import type { Chat } from '../../../src/ports/chat.ts';
import type { ChatHarness, Seen } from '../../contracts/chat.ts';
import { chatContract } from '../../contracts/chat.ts';
import type { Bench } from '../../support/slack/bench.ts';
import { startBench } from '../../support/slack/bench.ts';
import { BOT } from '../../support/slack/workspace.ts';
import { waitFor } from '../../support/wait-for.ts';

const withButtons = z.array(
  z.object({ elements: z.array(z.object({ action_id: z.string(), value: z.string() })).default([]) }),
);

/** What the bot has posted, in the order of the ts, which is when it was first shown. */
const shownBy = ({ slack }: Bench): Seen[] =>
  [...slack.workspace.channels.values()]
    .flatMap(({ id, user, messages }) =>
      messages.map((message) => ({
        message,
        id: `${id}:${message.ts}`,
        to: user === null ? { room: id } : { user },
      })),
    )
    .filter(({ message }) => message.bot_id === BOT.botId)
    .toSorted((a, b) => (a.message.ts < b.message.ts ? -1 : 1))
    .map(({ message, id, to }) => ({ id, to, text: message.text }));

const harness = async (mode: 'socket' | 'http'): Promise<ChatHarness> => {
  // No second tries: a message that was not taken is the test's business.
  const bench = await startBench({ mode, timing: { ackMs: 1500, retryAfterMs: [] } });
  const { slack, cursor, crew } = bench;
  let closed = false;
  const chat: Chat = {
    ...bench.chat,
    listen: async (onHeard) => {
      await bench.chat.listen(onHeard);
      await waitFor('first reading of the history', () => cursor.seen.has(crew.id));
    },
    close: async () => {
      closed = true;
      await bench.chat.close();
    },
  };
  const channelOf = (user: string, room: string | null) =>
    room === null ? slack.workspace.direct(user) : crew;
  const deliver = async (delivery: Parameters<typeof slack.send>[0]): Promise<void> => {
    const sent = slack.send(delivery);
    // With no connection left, Slack keeps it until there is one.
    if (closed && mode === 'socket') await waitFor('end of the connection', () => slack.sockets.open() === 0);
    else await sent;
  };
  return {
    chat,
    users: ['U1ANA', 'U2BEN'],
    room: crew.id,
    noRoom: 'C0NOWHERE',
    sayAs: (user, room, text) => deliver(slack.people.say(channelOf(user, room), user, text).delivery),
    pressAs: async (user, room, messageId, index) => {
      const channel = channelOf(user, room);
      const message = channel.messages.find(({ ts }) => messageId === `${channel.id}:${ts}`);
      if (message === undefined) throw new Error(`There is no message ${messageId}.`);
      const button = withButtons.parse(message.blocks).flatMap(({ elements }) => elements)[index];
      if (button === undefined) throw new Error(`${messageId} has no button ${index}.`);
      await deliver(slack.people.press(channel, message, user, button));
    },
    acked: async () => slack.deliveries.filter(({ acked }) => acked).length,
    seen: async () => shownBy(bench),
    dispose: bench.close,
  };
};

chatContract('Slack over a socket', () => harness('socket'));
chatContract('Slack over http', () => harness('http'));
