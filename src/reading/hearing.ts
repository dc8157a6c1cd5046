import type { CrewMember, Roster } from '../core/roster.ts';
import type { EpochMs } from '../core/units.ts';
import type { ZoneClock } from '../core/zone-clock.ts';
import type { Intent, Unclear } from '../core/intent.ts';
import type { Act } from './acts.ts';
import type { Ranker } from './ranker/rank.ts';

export interface Rankers {
  /** Both learned readers together, for a whole message. */
  rank: Ranker<Act>;
  /** The quick one alone, for pieces of a message. */
  glance: Ranker<Act>;
}

/** The learned readers, and what the sender's truck did last: one of the states that they know. */
export interface Ear extends Rankers {
  state: string;
}

/** What is known of a message besides its words. */
export interface Hearing {
  roster: Roster;
  speaker: CrewMember | null;
  /** Zone of clock words where the message names no field or station. */
  zone: string;
  sentMs: EpochMs;
  clock: ZoneClock;
  /** Written to the bot alone, with its name in it, or by a button: the words are meant for the bot. */
  addressed: boolean;
  /** Null = there is none: the grammar reads alone. */
  ear: Ear | null;
}

/** What one thing said comes to; null = its words do not make sense together. */
export type Built = { intents: readonly Intent[] } | { unclear: Unclear } | null;

export const told = (...intents: readonly Intent[]): Built => ({ intents });
export const unclear = (problem: Unclear): Built => ({ unclear: problem });
