/**
 * Answers that need a wait forecast. They are owed in the message's own transaction, worked out beside the messages that
 * come in meanwhile, and given in a short transaction of their own. A crash in between loses none: what is still owed is
 * answered at the next start.
 */
import { answer, waitsNeeded } from '../../core/answers/answer.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import { personById } from '../../core/roster.ts';
import type { CrewMember } from '../../core/roster.ts';
import { minutesBetween } from '../../core/units.ts';
import type { EpochMs, Minutes } from '../../core/units.ts';
import type { OwedAnswer } from '../../ports/book.ts';
import type { Outgoing } from '../../ports/outbox.ts';
import { harvestOn } from '../host/bot.ts';
import type { Bot } from '../host/bot.ts';
import { reasonOf } from '../../core/reason.ts';
import { forecastWaits } from '../line/service.ts';
import { withSharedTickets } from '../line/shared-tickets.ts';
import { outgoing } from '../out/outgoing.ts';

/** An older question is answered no more. Chosen: as long as an answer about the line holds. */
const WORTH_ANSWERING_MIN: Minutes = 60;

const messagesFor = async (
  bot: Bot,
  owed: OwedAnswer,
  harvest: Harvest,
  asker: CrewMember,
): Promise<Outgoing[]> => {
  const { question, heardMs: nowMs, cause, key, place } = owed;
  const asking = { asker, nowMs, clock: bot.clock };
  const waits = await forecastWaits(bot, harvest, waitsNeeded(question, harvest, asking), nowMs);
  const telling = answer(question, harvest, asking, waits);
  const tell = { audience: { to: 'asker' as const }, telling, urgent: false, key };
  return outgoing([tell], { cause, origin: { ...place, person: asker }, harvest, nowMs }, bot);
};

const giveOne = async (bot: Bot, owed: OwedAnswer, harvest: Harvest): Promise<void> => {
  const asker = personById(harvest.roster, owed.asker);
  const messages = asker ? await messagesFor(bot, owed, harvest, asker) : [];
  await bot.book.inOneGo(bot.roster.operation, async (page) => {
    await page.enqueue(messages);
    await page.settle([owed.key]);
  });
};

/** Gives the answers, one after another. `harvest`: as it was when they were asked. Never rejects: faults are logged. */
export const giveAnswers = async (bot: Bot, all: readonly OwedAnswer[], harvest: Harvest): Promise<void> => {
  for (const owed of all) {
    try {
      await giveOne(bot, owed, harvest);
      bot.wakeDeliverer();
    } catch (error) {
      const why = reasonOf(error);
      bot.log.error(
        { why, cause: owed.cause },
        'A question was not answered; it is tried again at the next start',
      );
    }
  }
};

/** At start: answers what a stop or crash left unanswered, and drops what is too old to be worth an answer. */
export const giveOwedAnswers = async (bot: Bot, nowMs: EpochMs): Promise<void> => {
  const { owed, harvest } = await bot.book.inOneGo(bot.roster.operation, async (page) => {
    const all = await page.owed();
    const isOld = ({ heardMs }: OwedAnswer): boolean => minutesBetween(heardMs, nowMs) > WORTH_ANSWERING_MIN;
    await page.settle(all.filter(isOld).map(({ key }) => key));
    return {
      owed: all.filter((one) => !isOld(one)),
      harvest: await withSharedTickets(bot, page, await harvestOn(page, bot), nowMs),
    };
  });
  await giveAnswers(bot, owed, harvest);
};
