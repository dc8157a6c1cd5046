import type { Chat } from '../../src/ports/chat.ts';
import { chatContract, type ChatHarness, type Seen } from '../contracts/chat.ts';
import { typedTerminal } from '../support/typed-terminal.ts';

const SHOWN = /^(?:\*\*\* )?\S+ (?:to (\S+) only|(\S+)) #(\d+)(?: \(changed\))?(?: @\S+)* \| (.*)$/gm;

/** What stands on the screen, by message number: a changed message takes the place of what it was. */
const messagesOn = (screen: string): Map<number, Omit<Seen, 'id'>> => {
  const messages = new Map<number, Omit<Seen, 'id'>>();
  for (const [, user, room = '', number, text = ''] of screen.matchAll(SHOWN)) {
    messages.set(Number(number), { to: user === undefined ? { room } : { user }, text });
  }
  return messages;
};

chatContract('the terminal', async (): Promise<ChatHarness> => {
  const terminal = typedTerminal();
  const ids = new Set<string>();
  let closed = false;
  let taken = 0;

  const chat: Chat = {
    ...terminal.chat,
    post: async (post) => {
      const result = await terminal.chat.post(post);
      if (result.result === 'sent') ids.add(result.messageId);
      return result;
    },
    close: async () => {
      closed = true;
      await terminal.chat.close();
    },
  };
  const typeAs = async (user: string, room: string | null, words: string): Promise<void> => {
    const lines = [`/as ${user}`, room === null ? '/dm' : `/in ${room}`, words];
    if (closed) return terminal.typeUnheard(...lines);
    // The terminal acknowledges a line by reading the next one, unless it says that it was not saved.
    if (!(await terminal.type(...lines)).includes('not saved')) taken += 1;
  };

  return {
    chat,
    users: ['ana', 'ben'],
    room: 'crew',
    noRoom: 'barn',
    sayAs: typeAs,
    pressAs: (user, room, _messageId, index) => typeAs(user, room, String(index + 1)),
    acked: async () => {
      await terminal.settled();
      return taken;
    },
    seen: async () => {
      const numbered = [...ids];
      return [...messagesOn(terminal.text())].map(([number, seen]) => ({
        id: numbered[number - 1] ?? '',
        ...seen,
      }));
    },
    dispose: () => terminal.chat.close(),
  };
});
