import type { CrewMember, Room } from '../../src/core/roster.ts';
import type { EpochMs } from '../../src/core/units.ts';
import type { Button, Post } from '../../src/ports/chat.ts';
import type { Terminal } from './terminal.ts';

export const PLATFORM = 'local';

/** A crew member as the terminal knows them. */
interface Speaker {
  user: string;
  person: CrewMember;
}

export interface LocalDeps {
  /** Called each time, because both lists may be changed in the chat. */
  people: () => readonly CrewMember[];
  rooms: () => readonly Room[];
  nowMs: () => EpochMs;
  /** Such as "10:15". */
  wallTime: (atMs: EpochMs) => string;
}

/** Buttons that a bare number presses, and their message. */
interface Keypad {
  messageId: string;
  buttons: readonly Button[];
}

/** What the terminal remembers while it is open. */
export interface TerminalSession extends LocalDeps {
  terminal: Terminal;
  color: boolean;
  /** The current speaker, and the room; null = to the bot alone. */
  speaker: string;
  room: string | null;
  /** Platform ids of the bot's messages, by their number less one. */
  shown: string[];
  /** Platform id by key of what was shown. */
  posted: Map<string, string>;
  /** The keypad last shown to each room and person. */
  keypads: Map<string, Keypad>;
  /** The last message of each speaker, for `/edit` and `/delete`. */
  lastSaid: Map<string, string>;
}

export const speakers = ({ people }: LocalDeps): Speaker[] =>
  people().flatMap((person) =>
    person.addresses.filter(({ platform }) => platform === PLATFORM).map(({ user }) => ({ user, person })),
  );

export const roomNames = ({ rooms }: LocalDeps): string[] =>
  rooms()
    .filter(({ platform }) => platform === PLATFORM)
    .map(({ room }) => room);

export const nameOf = (session: TerminalSession, user: string): string | null =>
  speakers(session).find((speaker) => speaker.user === user)?.person.name ?? null;

/** Rooms and people may have the same name. */
export const keypadKey = (to: Post['to']): string => ('room' in to ? `room ${to.room}` : `user ${to.user}`);

/** Where the speaker's words go. */
export const placeOf = ({ room, speaker }: TerminalSession): Post['to'] =>
  room === null ? { user: speaker } : { room };

export const promptOf = ({ speaker, room }: TerminalSession): string =>
  `${speaker} > ${room ?? 'bot only'}: `;
