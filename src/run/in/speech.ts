/** What one message is to the reading and to the book. */
import type { Speaking } from '../../core/accept/speaking.ts';
import type { FactHeader } from '../../core/book/facts.ts';
import type { Reading } from '../../core/intent.ts';
import type { CrewMember, PersonId } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Heard } from '../../ports/chat.ts';
import { read } from '../../reading/read.ts';
import type { Running } from '../host/operation.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';

export const causeOf = (platform: string, messageId: string): string => `${platform}:${messageId}`;

export const speakingOf = (heard: Heard, speaker: CrewMember): Speaking => ({
  speaker,
  cause: causeOf(heard.platform, heard.id),
  place: { platform: heard.platform, room: heard.room },
  sentMs: heard.sentMs,
  heardMs: heard.heardMs,
  factsSoFar: 0,
});

/** The header of the message's fact number `at`. */
export const headerOf = (heard: Heard, by: PersonId | null, sentMs: EpochMs, at: number): FactHeader => {
  const cause = causeOf(heard.platform, heard.id);
  return { id: `${cause}#${at}`, cause, atMs: sentMs, sentMs, heardMs: heard.heardMs, by, timeStated: false };
};

/** What the words mean on that day. `addressed`: the bot is spoken to, by name or alone. */
export const readOn = (
  harvest: Harvest,
  running: Running,
  said: { text: string; speaker: CrewMember | null; sentMs: EpochMs; addressed: boolean },
): Reading => {
  const { text, ...hearing } = said;
  return read(text, { ...hearing, roster: harvest.roster, zone: harvest.roster.zone, clock: running.clock });
};
