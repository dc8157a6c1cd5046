/** A stop that does not reach somebody is told to foreman and grower, and whoever asks is told whom it has not reached. */
import { newestStep } from '../../core/notices/notices.ts';
import { undeliveredTells } from '../../core/notices/undelivered.ts';
import { reasonOf } from '../../core/reason.ts';
import { addressesOf, personById } from '../../core/roster.ts';
import type { PersonId, Roster } from '../../core/roster.ts';
import type { Tell } from '../../core/telling.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Page, Reach } from '../../ports/book.ts';
import type { PostResult } from '../../ports/chat.ts';
import type { Claimed, Recipient } from '../../ports/outbox.ts';
import type { Bot, Sayer } from '../host/bot.ts';
import { harvestOn } from '../host/bot.ts';
import type { Send } from './deliver.ts';
import { eventOfSlot, noticeSeries } from './notice-slot.ts';
import { outgoing } from './outgoing.ts';

/** Tried so often without an answer, some three minutes, a message counts as not delivered. Grade: chosen. */
const SILENT_ATTEMPTS = 20;

/** Why the message has not been delivered; null = it has, or it is too early to say. */
const faultOf = (posted: PostResult, { attempts }: Claimed): string | null => {
  switch (posted.result) {
    case 'gone':
      return posted.why;
    case 'unknown':
      return attempts >= SILENT_ATTEMPTS ? posted.why : null;
    case 'sent':
    case 'retry-after':
      return null;
  }
};

const isFor = (one: Recipient, other: Recipient): boolean => JSON.stringify(one) === JSON.stringify(other);

/** By no address: none has taken it, and none is still to be tried. */
const isUnreached = (reach: readonly Reach[], recipient: Recipient): boolean => {
  const lanes = reach.filter((one) => isFor(one.recipient, recipient));
  return lanes.length > 0 && lanes.every(({ state }) => state === 'refused');
};

const report = async (bot: Bot, message: Claimed, why: string, nowMs: EpochMs): Promise<void> => {
  const { recipient, platform: by, slot } = message;
  await bot.book.inOneGo(bot.roster.operation, async (page) => {
    const harvest = await harvestOn(page, bot);
    const event = harvest.notices.find((known) => known.event === eventOfSlot(slot));
    if (event === undefined) return;
    const reach = (await page.reach(noticeSeries(event.event))).map((one): Reach =>
      one.id === message.id ? { ...one, state: 'refused' } : one,
    );
    if (!isUnreached(reach, recipient)) return;
    const tells = undeliveredTells({ harvest, clock: bot.clock, nowMs }, newestStep(event).step, recipient, {
      by,
      why,
    });
    await page.enqueue(
      outgoing(tells, { cause: `undelivered:${message.id}`, origin: null, harvest, nowMs }, bot),
    );
  });
  bot.wakeDeliverer();
};

/** Sends, and tells foreman and grower of a notice that is refused, or that nobody takes for minutes. */
export const reporting =
  (send: Send, bot: Bot, clock: () => EpochMs): Send =>
  async (message) => {
    const posted = await send(message);
    const why = message.kind === 'notice' ? faultOf(posted, message) : null;
    if (why === null || message.operation !== bot.roster.operation) return posted;
    await report(bot, message, why, clock()).catch((error: unknown) => {
      bot.log.error(
        { key: message.key, why: reasonOf(error) },
        'Nobody could be told of an undelivered notice',
      );
    });
    return posted;
  };

const unreachedOf = (
  people: readonly PersonId[],
  roster: Roster,
  reach: readonly Reach[],
  platforms: readonly string[],
): PersonId[] =>
  people.filter((id) => {
    const person = personById(roster, id);
    const isNowhere = person !== undefined && addressesOf(person, platforms).length === 0;
    return isNowhere || isUnreached(reach, { person: id });
  });

/** The lists of who has not confirmed, with whom the notice has not reached. */
export const withReach = async (
  page: Page,
  bot: Sayer,
  roster: Roster,
  tells: readonly Tell[],
): Promise<Tell[]> => {
  const complete: Tell[] = [];
  for (const tell of tells) {
    const { telling } = tell;
    const step = telling.tell === 'unseen' ? telling.notice.step : null;
    if (telling.tell !== 'unseen' || step === null) complete.push(tell);
    else {
      const reach = await page.reach(noticeSeries(step.event));
      const undelivered = unreachedOf(telling.notice.unseen, roster, reach, bot.platforms);
      complete.push({ ...tell, telling: { ...telling, undelivered } });
    }
  }
  return complete;
};
