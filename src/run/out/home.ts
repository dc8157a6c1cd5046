/** What matters to one person now, for the start page that a platform gives each of them. */
import { answer } from '../../core/answers/answer.ts';
import type { Question } from '../../core/intent.ts';
import { crewLanguages, mayManage, personAt } from '../../core/roster.ts';
import type { CrewMember } from '../../core/roster.ts';
import type { Telling } from '../../core/telling.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Said } from '../../ports/chat.ts';
import { buttonsForTruck } from '../../saying/parts/buttons.ts';
import { say } from '../../saying/say.ts';
import type { ZoneClock } from '../../core/zone-clock.ts';
import { harvestOn } from '../host/bot.ts';
import type { Bot } from '../host/bot.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';

/** Whoever drives a truck: where it is, what it brought, and whether it may be filled; a manager: the same of all. */
const questionsOf = (person: CrewMember): Question[] => {
  const { truck } = person;
  const own: Question[] = truck === null ? [] : [{ about: 'truck', truck }];
  const all: Question[] = mayManage(person) ? [{ about: 'board' }] : [];
  const brought: Question = {
    about: 'tons',
    field: null,
    truck: mayManage(person) ? null : truck,
    span: 'today',
  };
  return [{ about: 'may-dig' }, ...own, ...all, brought];
};

const tellingsFor = (
  person: CrewMember | undefined,
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
): Telling[] => {
  if (!person) return [{ tell: 'stranger-answer' }];
  const asking = { asker: person, nowMs, clock };
  return questionsOf(person).map((question) => answer(question, harvest, asking));
};

/** The person's own day: the notice in force, truck, loads and tons, and the buttons for the truck's next steps. */
export const homeFor = async (
  bot: Bot,
  who: { platform: string; user: string },
  nowMs: EpochMs,
): Promise<Said> => {
  const harvest = await bot.book.inOneGo(bot.roster.operation, (page) => harvestOn(page, bot));
  const person = personAt(harvest.roster, who.platform, who.user);
  const { roster } = harvest;
  const language = person?.language ?? crewLanguages(roster)[0];
  const voice = { language, roster, clock: bot.clock, nowMs, zone: roster.zone };
  const tellings = tellingsFor(person, harvest, bot.clock, nowMs);
  const parts = tellings.map((telling) => say(telling, voice));
  return {
    text: parts.map(({ text }) => text).join('\n'),
    table: parts.find(({ table }) => table !== null)?.table ?? null,
    buttons: tellings.flatMap((telling) =>
      telling.tell === 'truck' ? buttonsForTruck(telling.row, voice) : [],
    ),
    picture: null,
    ring: false,
    mentions: [],
  };
};
