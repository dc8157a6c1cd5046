/** Words that foreman or grower have passed on: who gets them, and who has seen them. */
import type { FactOf } from '../book/facts.ts';
import type { Harvest, PassedWords } from '../harvest/harvest.ts';
import type { PersonId } from '../roster.ts';
import type { Audience, Tell, Telling } from '../telling.ts';
import type { EpochMs } from '../units.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { tellAll } from './audiences.ts';
import { newestStep, unseenNotice } from './notices.ts';
import { isQuiet } from './quiet.ts';

type WordsPassed = FactOf<'words-passed'>;

/** Also to those who are off shift: where tomorrow begins concerns them. To all of them: the rooms, but not where it was said. */
export const passedTells = (fact: WordsPassed, harvest: Harvest, clock: ZoneClock): Tell[] => {
  const { rooms } = harvest.roster;
  const hearers: Audience[] = [
    ...(fact.toAll ? rooms.filter(({ id }) => id !== fact.room) : []).map(({ id }) => ({
      to: 'room' as const,
      room: id,
    })),
    ...fact.to.map((person) => ({ to: 'person' as const, person })),
  ];
  const rings = !isQuiet(harvest, clock, fact.heardMs);
  return tellAll(hearers, { tell: 'passed-words', fact, rings }, `words:${fact.id}`, true);
};

const isFor =
  (person: PersonId) =>
  ({ fact, seen }: PassedWords): boolean =>
    fact.to.includes(person) && !seen.has(person);

/** The person has not yet confirmed words that were passed on. */
export const hasUnseenWords = ({ passedWords }: Harvest, person: PersonId): boolean =>
  passedWords.some(isFor(person));

/** The newest words that were passed on, if no order or its end was told since; null = "it" is a notice, or nothing. */
export const unseenWords = (harvest: Harvest, nowMs: EpochMs): Telling | null => {
  const newest = harvest.passedWords.at(-1);
  const asked = unseenNotice(harvest, nowMs).step?.event;
  const event = harvest.notices.find((one) => one.event === asked);
  if (newest === undefined || (event && newestStep(event).atMs > newest.fact.atMs)) return null;
  const { to, words } = newest.fact;
  return {
    tell: 'words-unseen',
    words,
    seen: to.filter((person) => newest.seen.has(person)),
    unseen: to.filter((person) => !newest.seen.has(person)),
  };
};
