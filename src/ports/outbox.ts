import type { EpochMs } from '../core/units.ts';
import type { PersonId } from '../core/roster.ts';
import type { Said } from './chat.ts';

/** Whom a message is for, in our own names: a crew room or one person. */
export type Recipient = { room: string } | { person: PersonId };

/** One message to be delivered, written in the same transaction as the facts that it is about. */
export interface Outgoing {
  /** Unique in the operation: cause, recipient and kind. Writing a known key again changes nothing. */
  key: string;
  recipient: Recipient;
  platform: string;
  to: { room: string } | { user: string };
  /** The kind of telling ("receipt", "tally", "notice" ...), its cause, and its content for machines. */
  kind: string;
  cause: string;
  data: unknown;
  said: Said;
  repliesTo: string | null;
  /**
   * Null = a message of its own. Messages with the same slot in the same lane are states of one message: a delivered
   * older one is replaced in place (the board). Slots that agree up to the first "#" are one series: an undelivered older
   * message of it is dropped (a stop that has ended).
   */
  slot: string | null;
  /** Stop notices, emergencies: they have a lane of their own, so that nothing else to the same place delays them. */
  urgent: boolean;
  notBeforeMs: EpochMs;
  /** Worthless after this; null = never. */
  expiresMs: EpochMs | null;
}

/** An outgoing message that one deliverer has leased. */
export interface Claimed extends Outgoing {
  id: number;
  operation: string;
  attempts: number;
  /** Platform id of the delivered message with the same slot. */
  replaces: string | null;
}

/**
 * Undelivered messages, in order within a lane (platform and room or user).
 * A lane that must wait does not delay any other.
 */
export interface Outbox {
  /** Leases the next messages of the given platforms: at most one a lane, urgent ones first. Expired ones are parked. */
  claim: (platforms: readonly string[], nowMs: EpochMs, leaseMs: number, limit: number) => Promise<Claimed[]>;
  sent: (id: number, messageId: string, nowMs: EpochMs) => Promise<void>;
  /** Returns it to the outbox; its lane waits until then. */
  later: (id: number, untilMs: EpochMs, why: string) => Promise<void>;
  /** Returns it to the outbox until then; whatever else its lane has goes on. */
  again: (id: number, untilMs: EpochMs, why: string) => Promise<void>;
  /** Parks a message that can't be delivered, with the reason, so that it does not block its lane. */
  giveUp: (id: number, why: string, nowMs: EpochMs) => Promise<void>;
  /** Gives back all that is lent. Only for whoever knows that every earlier deliverer is gone. */
  returnLeases: () => Promise<void>;
  /** When the earliest undelivered message may go out; null = nothing waits. */
  nextMs: () => Promise<EpochMs | null>;
}
