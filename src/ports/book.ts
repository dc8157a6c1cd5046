import type { Fact } from '../core/book/facts.ts';
import type { EpochMs } from '../core/units.ts';
import type { Heard } from './chat.ts';
import type { Outgoing } from './outbox.ts';
import type { Question } from '../core/intent.ts';
import type { PersonId } from '../core/roster.ts';
import type { SharedTicket } from '../core/harvest/harvest.ts';

/** A message with a slot that its room or person sees, or soon will. */
export interface Shown extends Pick<Outgoing, 'recipient' | 'platform' | 'to' | 'notBeforeMs'> {
  slot: string;
}

/** What became of the newest message of a series in one lane. `waiting`: it has not been tried yet, or is under way. */
export interface Reach {
  id: number;
  recipient: Outgoing['recipient'];
  state: 'sent' | 'waiting' | 'refused';
}

/** Where a message came from, for the answers to it. */
export interface MessagePlace {
  platform: string;
  /** The crew's room by our name and by the platform's; null = written to the bot alone. */
  room: { id: string; room: string } | null;
  user: string;
  messageId: string;
}

/** An answer that is still due, because the line must be forecast for it first. */
export interface OwedAnswer {
  /** The key of the answer's message. */
  key: string;
  cause: string;
  question: Question;
  asker: PersonId;
  heardMs: EpochMs;
  place: MessagePlace;
}

/** An open transaction on the book of one operation; nobody else writes to that operation meanwhile. */
export interface Page {
  /** Puts the message into the inbox; `known` = it was there already, because platforms may deliver twice. */
  receive: (heard: Heard) => Promise<'new' | 'known'>;
  /** The message of that platform id and the edits of it so far, in the order heard. */
  versionsOf: (platform: string, id: string) => Promise<Heard[]>;
  /** The message that the bot answered with its own message of that platform id; null = none. */
  answeredBy: (platform: string, id: string) => Promise<string | null>;
  /** Facts written after `seq` (0 = all), oldest first. */
  factsAfter: (seq: number) => Promise<{ seq: number; fact: Fact }[]>;
  /** Adds facts in order and returns the last one's seq. A known fact id is an error, and the transaction fails. */
  write: (facts: readonly Fact[]) => Promise<number>;
  /** For each room and person, the newest message of that kind that has a slot and was due at `sinceMs` or later. */
  shown: (kind: string, sinceMs: EpochMs) => Promise<Shown[]>;
  /** The rooms and persons that see a message with exactly this slot, or soon will. */
  showing: (slot: string) => Promise<Shown[]>;
  /** Whom the newest message of that series has reached, lane by lane. */
  reach: (series: string) => Promise<Reach[]>;
  enqueue: (messages: readonly Outgoing[]) => Promise<void>;
  /** Stores answers that are to be given later, so that a crash loses none. */
  owe: (answers: readonly OwedAnswer[]) => Promise<void>;
  /** Answers still owed, oldest first. */
  owed: () => Promise<OwedAnswer[]>;
  /** Removes the answers with these keys: they were given, or have become worthless. */
  settle: (keys: readonly string[]) => Promise<void>;
  /** Sets the operation's alarm of that name; a later call with the same name moves it, null removes it. */
  wakeAt: (name: string, dueMs: EpochMs | null) => Promise<void>;
  /** The earliest alarm that is due by `nowMs`; null = none. */
  nextAlarm: (nowMs: EpochMs) => Promise<{ name: string; dueMs: EpochMs } | null>;
  /**
   * Shares the newest state of tickets with the other operations of this installation, and removes withdrawn ones. Deletes
   * what was heard before `forgetMs`, from any operation. Nothing shared identifies its operation.
   */
  shareTickets: (
    changes: { put: readonly SharedTicket[]; withdrawn: readonly SharedTicket[] },
    forgetMs: EpochMs,
  ) => Promise<void>;
  /** The others' tickets in these pools that were heard from `fromMs` on and before `beforeMs`, in that order. */
  sharedBy: (pools: readonly string[], fromMs: EpochMs, beforeMs: EpochMs) => Promise<SharedTicket[]>;
  /** Keeps a message that could not be handled, with the reason, so that it is neither lost nor retried endlessly. */
  park: (heard: Heard, why: string) => Promise<void>;
}

/** Facts, inbox, outbox and alarms of all operations of this installation. */
export interface Book {
  /** Runs `work` in a transaction: if it throws, nothing is stored. */
  inOneGo: <T>(operation: string, work: (page: Page) => Promise<T>) => Promise<T>;
}
