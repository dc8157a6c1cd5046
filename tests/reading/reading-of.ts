import type { Intent, Question, Reading } from '../../src/core/intent.ts';
import { personById } from '../../src/core/roster.ts';
import type { EpochMs } from '../../src/core/units.ts';
import { read } from '../../src/reading/read.ts';
import type { Hearing } from '../../src/reading/read.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { bookTicket } from '../support/given.ts';
import { sampleRoster } from '../support/roster.ts';

export const ZONE = 'America/Boise';

/** Wall time in Boise on 20 October 2026 (a Tuesday), or the day given. */
export const at = (clock: string, day = 20): EpochMs => {
  const [hour = 0, minute = 0] = clock.split(':').map(Number);
  return zoneClock.instant(ZONE, { year: 2026, month: 10, day, hour, minute });
};

/** Ben, who drives truck 2, writes at 10:42 in the shared room. */
export const hearing: Hearing = {
  roster: sampleRoster,
  speaker: personById(sampleRoster, 'ben') ?? null,
  zone: ZONE,
  sentMs: at('10:42'),
  clock: zoneClock,
  addressed: false,
  ear: null,
};

export const overheard = (text: string, change: Partial<Hearing> = {}): Reading =>
  read(text, { ...hearing, ...change });
export const addressed = (text: string): Reading => overheard(text, { addressed: true });

export const intents = (...list: Intent[]): Reading => ({ found: 'intents', intents: list });
export const chatter: Reading = { found: 'chatter' };
export const notUnderstood: Reading = { found: 'unclear', problem: { problem: 'not-understood' } };

export { report } from '../support/given.ts';

export const ticket = (
  serial: string | null,
  said: Parameters<typeof bookTicket>[0],
): ReturnType<typeof bookTicket> => bookTicket({ serial, ...said });

export const ask = (question: Question): Intent => ({ do: 'ask', question });
