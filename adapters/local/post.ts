import { randomUUID } from 'node:crypto';
import type { Post, PostResult } from '../../src/ports/chat.ts';
import { rendered } from './render.ts';
import { keypadKey, PLATFORM, roomNames, speakers, type TerminalSession } from './session.ts';

const isKnown = (session: TerminalSession, to: Post['to']): boolean =>
  'room' in to
    ? roomNames(session).includes(to.room)
    : speakers(session).some(({ user }) => user === to.user);

/** The message's number; a changed message keeps its number. */
const numberOf = (session: TerminalSession, messageId: string): number => {
  const before = session.shown.indexOf(messageId);
  return before >= 0 ? before + 1 : session.shown.push(messageId);
};

const setKeypad = (
  { keypads }: TerminalSession,
  { to, said: { buttons } }: Post,
  messageId: string,
): void => {
  const key = keypadKey(to);
  if (buttons.length > 0) keypads.set(key, { messageId, buttons });
  else if (keypads.get(key)?.messageId === messageId) keypads.delete(key);
};

/**
 * Shows the message. A terminal cannot change what it shows, so a replacement is printed again, marked as changed, with
 * the same number and id. A key is shown once while the terminal is open; a new terminal starts empty.
 */
export const show = (session: TerminalSession, post: Post): PostResult => {
  const known = session.posted.get(post.key);
  if (known !== undefined) return { result: 'sent', messageId: known };
  if (!isKnown(session, post.to)) {
    const whom = 'room' in post.to ? `room ${post.to.room}` : `person ${post.to.user}`;
    return {
      result: 'gone',
      why: `There is no ${whom} on platform ${PLATFORM}: add it to the operation file.`,
    };
  }
  const messageId = post.replaces ?? randomUUID();
  session.posted.set(post.key, messageId);
  setKeypad(session, post, messageId);
  const shown = {
    number: numberOf(session, messageId),
    at: session.wallTime(session.nowMs()),
    to: post.to,
    changed: post.replaces !== null,
    said: post.said,
  };
  session.terminal.print(rendered(shown, session.color));
  return { result: 'sent', messageId };
};
