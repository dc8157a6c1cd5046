/** What one message is to the reading and to the book. */
import type { Speaking } from '../../core/accept/speaking.ts';
import type { FactHeader } from '../../core/book/facts.ts';
import type { Reading } from '../../core/intent.ts';
import type { CrewMember, PersonId } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Heard } from '../../ports/chat.ts';
import { openOffer } from '../../core/accept/offers.ts';
import { readChoice } from '../../reading/choice.ts';
import { hearTaught } from '../../reading/taught.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import type { Bot } from '../host/bot.ts';
import { causeOf } from './cause.ts';
import { lastDone } from './last-done.ts';

/** The message that an event points at, with its edits so far: each of them may have brought what stands. */
export type Versions = readonly Heard[];

/** A message that has come in, the messages that it points at, and the harvest that it meets. */
export interface Incoming {
  heard: Heard;
  versions: Versions;
  harvest: Harvest;
  means: Means;
}

/** What it takes to understand words. */
export type Means = Pick<Bot, 'clock' | 'rankers'>;

export const speakingOf = (heard: Heard, speaker: CrewMember): Speaking => ({
  speaker,
  cause: causeOf(heard),
  place: { platform: heard.platform, room: heard.room },
  sentMs: heard.sentMs,
  heardMs: heard.heardMs,
  factsSoFar: 0,
});

/** The header of the message's fact number `at`. */
export const headerOf = (heard: Heard, by: PersonId | null, sentMs: EpochMs, at: number): FactHeader => {
  const cause = causeOf(heard);
  return { id: `${cause}#${at}`, cause, atMs: sentMs, sentMs, heardMs: heard.heardMs, by, timeStated: false };
};

/** What the words mean to that harvest. `addressed`: the bot is spoken to, by name or alone. */
export const readOn = (
  harvest: Harvest,
  { clock, rankers }: Means,
  said: { text: string; speaker: CrewMember | null; sentMs: EpochMs; addressed: boolean },
): Reading => {
  const { text, ...hearing } = said;
  const { roster } = harvest;
  const offer = openOffer(harvest, said.speaker?.id, said.sentMs);
  const choice = readChoice(text, offer?.readings.length ?? 0);
  if (choice !== null) return { found: 'intents', intents: [choice] };
  // Of strangers only plain words of danger are heard.
  const ear = said.speaker === null ? null : { ...rankers, state: lastDone(harvest, said.speaker) };
  return hearTaught(text, { ...hearing, roster, zone: roster.zone, clock, ear }, harvest.taught);
};
