import { randomUUID } from 'node:crypto';
import { reasonOf } from '../../src/core/reason.ts';
import type { Heard, OnHeard } from '../../src/ports/chat.ts';
import { HELP, lineOf, type Line } from './commands.ts';
import { aligned } from './render.ts';
import {
  keypadKey,
  nameOf,
  placeOf,
  PLATFORM,
  promptOf,
  roomNames,
  speakers,
  type TerminalSession,
} from './session.ts';

const MENTION = /@fieldbell\b[:,]?\s*/gi;

/** Passes the event on and waits until it is stored. Resolves with its id; null = it could not be stored. */
const hear = async (
  session: TerminalSession,
  onHeard: OnHeard,
  event: Heard['event'],
): Promise<string | null> => {
  const atMs = session.nowMs();
  const { speaker, room } = session;
  const id = randomUUID();
  try {
    await onHeard({
      platform: PLATFORM,
      id,
      user: speaker,
      userName: nameOf(session, speaker),
      room,
      sentMs: atMs,
      heardMs: atMs,
      event,
    });
  } catch (error) {
    const why = reasonOf(error);
    session.terminal.print(`That was not saved (${why}). Say it again.`);
    return null;
  }
  return id;
};

const say = async (
  session: TerminalSession,
  onHeard: OnHeard,
  text: string,
  repliesTo: string | null,
): Promise<void> => {
  const words = text.replace(MENTION, '').trim();
  const addressed = words !== text || session.room === null || repliesTo !== null;
  const id = await hear(session, onHeard, { is: 'message', text: words, addressed, repliesTo });
  if (id !== null) session.lastSaid.set(session.speaker, id);
};

/** A number without a button is sent as typed: it may be the answer to a question. */
const press = async (
  session: TerminalSession,
  onHeard: OnHeard,
  line: Line & { is: 'number' },
): Promise<void> => {
  const keypad = session.keypads.get(keypadKey(placeOf(session)));
  const button = keypad?.buttons[line.number - 1];
  await say(
    session,
    onHeard,
    button?.words ?? line.text,
    button === undefined ? null : (keypad?.messageId ?? null),
  );
};

const reply = async (
  session: TerminalSession,
  onHeard: OnHeard,
  line: Line & { is: 'reply' },
): Promise<void> => {
  const messageId = session.shown[line.number - 1];
  if (messageId === undefined)
    session.terminal.print(`There is no message #${line.number} on this terminal.`);
  else await say(session, onHeard, line.text, messageId);
};

/** Changes the speaker's last message, or deletes it (`text` null). */
const amend = async (session: TerminalSession, onHeard: OnHeard, text: string | null): Promise<void> => {
  const { terminal, lastSaid, speaker } = session;
  const of = lastSaid.get(speaker);
  if (of === undefined) terminal.print(`${speaker} has said nothing yet that could be changed.`);
  else await hear(session, onHeard, text === null ? { is: 'deletion', of } : { is: 'edit', of, text });
  if (text === null) lastSaid.delete(speaker);
};

const speakAs = (session: TerminalSession, name: string): void => {
  const wanted = name.toLowerCase();
  const found = speakers(session).find(({ user, person }) =>
    [user, person.name, ...person.aliases].some((known) => known.toLowerCase() === wanted),
  );
  if (found === undefined) session.terminal.print(`Nobody here is called ${name}. /who lists the people.`);
  else session.speaker = found.user;
};

const goTo = (session: TerminalSession, name: string): void => {
  const found = roomNames(session).find((room) => room.toLowerCase() === name.toLowerCase());
  if (found === undefined) session.terminal.print(`There is no room ${name}. /who lists the rooms.`);
  else session.room = found;
};

const whoIsWho = (session: TerminalSession): string =>
  [
    ...aligned(speakers(session).map(({ user, person }) => [user, person.name, person.roles.join(', ')])),
    `Rooms: ${roomNames(session).join(', ')}`,
  ].join('\n');

const obey = async (
  session: TerminalSession,
  onHeard: OnHeard,
  line: Exclude<Line, { is: 'quit' }>,
): Promise<void> => {
  switch (line.is) {
    case 'nothing':
      return;
    case 'as':
      speakAs(session, line.name);
      return;
    case 'in':
      goTo(session, line.room);
      return;
    case 'dm':
      session.room = null;
      return;
    case 'who':
      session.terminal.print(whoIsWho(session));
      return;
    case 'help':
      session.terminal.print(HELP);
      return;
    case 'unknown':
      session.terminal.print(`${line.command} is not understood here. What can be typed:\n${HELP}`);
      return;
    case 'words':
      return say(session, onHeard, line.text, null);
    case 'number':
      return press(session, onHeard, line);
    case 'reply':
      return reply(session, onHeard, line);
    case 'edit':
      return amend(session, onHeard, line.text);
    case 'delete':
      return amend(session, onHeard, null);
  }
};

const welcome = (session: TerminalSession): string =>
  [
    'The crew chat, in this terminal.',
    `You speak as ${nameOf(session, session.speaker) ?? session.speaker}, ${session.room === null ? 'to the bot alone' : `in the room ${session.room}`}.`,
    HELP,
  ].join('\n');

/** Reads lines one after the other until `/quit`, the end of the input, or `stopped`. */
export const readLines = async (
  session: TerminalSession,
  onHeard: OnHeard,
  stopped: AbortSignal,
): Promise<'quit' | 'end'> => {
  const { terminal } = session;
  terminal.print(welcome(session));
  const lines = terminal.lines();
  terminal.prompt(promptOf(session));
  for await (const typed of lines) {
    if (stopped.aborted) break;
    const line = lineOf(typed);
    if (line.is === 'quit') return 'quit';
    terminal.prompt(null);
    await obey(session, onHeard, line);
    terminal.prompt(promptOf(session));
  }
  return 'end';
};
