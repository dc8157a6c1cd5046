/** Words that foreman or grower have passed on: who gets them, and who has seen them. */
import type { FactOf } from '../book/facts.ts';
import type { Harvest, PassedWords } from '../harvest/harvest.ts';
import type { PersonId } from '../roster.ts';
import type { Tell, Telling } from '../telling.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { newestStep, unseenNotice } from './notices.ts';
import { isAsleep } from './quiet.ts';
import type { Moment } from './shifts.ts';

type WordsPassed = FactOf<'words-passed'>;

/**
 * Also to those who are off shift: where tomorrow begins concerns them; whoever sleeps is not rung. To all of them: the
 * rooms, but not where it was said.
 */
export const passedTells = (fact: WordsPassed, harvest: Harvest, clock: ZoneClock): Tell[] => {
  const moment = { harvest, clock, nowMs: fact.heardMs };
  const rooms = harvest.roster.rooms.filter(({ id }) => fact.toAll && id !== fact.room);
  const people = harvest.roster.people.filter(({ id }) => fact.to.includes(id));
  const telling = { tell: 'passed-words', fact, rings: false } as const;
  const key = `words:${fact.id}`;
  return [
    ...rooms.map(({ id }): Tell => ({ audience: { to: 'room', room: id }, telling, urgent: true, key })),
    ...people.map((person): Tell => ({
      audience: { to: 'person', person: person.id },
      telling: { ...telling, rings: !isAsleep(moment, person) },
      urgent: true,
      key,
    })),
  ];
};

const isFor =
  (person: PersonId) =>
  ({ fact, seen }: PassedWords): boolean =>
    fact.to.includes(person) && !seen.has(person);

/** The person has not yet confirmed words that were passed on. */
export const hasUnseenWords = ({ passedWords }: Harvest, person: PersonId): boolean =>
  passedWords.some(isFor(person));

/** The newest words that were passed on, if no order or its end was told since; null = "it" is a notice, or nothing. */
export const unseenWords = (moment: Moment): Telling | null => {
  const { harvest } = moment;
  const newest = harvest.passedWords.at(-1);
  const asked = unseenNotice(moment).step?.event;
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
