import type { EpochMs } from '../core/units.ts';

/**
 * What a chat platform passes on. `user`, `room` and `id` are the platform's own; ids are unique per platform.
 * `room` null = written to the bot alone. `sentMs` is the sender's time if the platform knows it, else when heard.
 */
export interface Heard {
  platform: string;
  id: string;
  user: string;
  userName: string | null;
  room: string | null;
  sentMs: EpochMs;
  heardMs: EpochMs;
  event:
    /** `addressed`: the bot was mentioned by name. A pressed button is a message with the button's words. */
    | { is: 'message'; text: string; addressed: boolean; repliesTo: string | null }
    /** The sender changed an earlier message: a correction by the same person. */
    | { is: 'edit'; of: string; text: string }
    /** The sender deleted an earlier message. */
    | { is: 'deletion'; of: string };
}

/** Pressing a button says `words` for the person who presses it. */
export interface Button {
  label: string;
  words: string;
  /** A thumbs-up on the message presses it, where the platform tells of such reactions. */
  byThumb?: true;
}

/** Drawn as SVG; a chat that shows pictures gets a PNG from its `DrawPicture`. `altText` describes the picture. */
export interface Picture {
  svg: string;
  altText: string;
}

/** What the bot says, on any platform. `text` says everything; the rest presents it better if the platform can. */
export interface Said {
  text: string;
  table: { header: readonly string[]; rows: readonly (readonly string[])[] } | null;
  buttons: readonly Button[];
  picture: Picture | null;
  /** Phones must ring: stop notices, emergencies. */
  ring: boolean;
  /** Platform user ids of those who must act. */
  mentions: readonly string[];
}

/** The form for one weigh ticket, for platforms that have forms; each text in every language that the bot speaks. */
export interface TicketForm {
  /** What a button or command says that asks for it. */
  askedBy: readonly string[];
  title: readonly string[];
  cancel: readonly string[];
  labels: Readonly<Record<'serial' | 'gross' | 'tare' | 'truck', readonly string[]>>;
}

export interface Post {
  /** The same key is the same message: sending it again after a doubtful failure must not show it twice. */
  key: string;
  to: { room: string } | { user: string };
  said: Said;
  /** The message that it answers; null = none. */
  repliesTo: string | null;
  /** An earlier message of the bot that this one replaces (the board); null = none. */
  replaces: string | null;
  /** A stop or an emergency: rather shown twice than held up by a look whether it is there already. Absent = no. */
  urgent?: boolean;
}

export type PostResult =
  | { result: 'sent'; messageId: string }
  /** The platform asks to wait; only this room is paused. */
  | { result: 'retry-after'; waitMs: number }
  /** It can never be delivered: no such room, bot removed, account closed. */
  | { result: 'gone'; why: string }
  /** Anything else: it may or may not have been shown. Tried again under the same key. */
  | { result: 'unknown'; why: string };

/** Takes a message in; resolves when it is safe in the database: acknowledge to the platform only then. */
export type OnHeard = (heard: Heard) => Promise<void>;

/** One chat platform. */
export interface Chat {
  platform: string;
  /** Posted messages can be changed in place; otherwise a replacement is shown as a new message. */
  canEdit: boolean;
  listen: (onHeard: OnHeard) => Promise<void>;
  post: (post: Post) => Promise<PostResult>;
  close: () => Promise<void>;
}

/** A chat platform over a network; the link to it may be down. */
export interface LinkedChat extends Chat {
  /** Why it cannot hear now, in words; null = it can. A quiet crew is not a fault. */
  fault: () => string | null;
}
