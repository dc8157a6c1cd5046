/** A message that could not be handled is kept, and its sender told so. */
import { personAt } from '../../core/roster.ts';
import type { Tell } from '../../core/telling.ts';
import type { Heard } from '../../ports/chat.ts';
import { harvestOn } from '../host/bot.ts';
import type { Bot } from '../host/bot.ts';
import { reasonOf } from '../../core/reason.ts';
import { outgoing } from '../out/outgoing.ts';
import { causeOf } from './cause.ts';

/** Tells the sender, if it is one of the crew, that something went wrong. */
const ownUp = async (bot: Bot, heard: Heard, reference: string): Promise<void> => {
  const { platform, user, id: messageId, heardMs: nowMs } = heard;
  const cause = causeOf(heard);
  const tell: Tell = {
    audience: { to: 'asker' },
    telling: { tell: 'trouble', reference },
    urgent: false,
    key: `${cause}:trouble`,
  };
  await bot.book.inOneGo(bot.roster.operation, async (page) => {
    const harvest = await harvestOn(page, bot);
    const person = personAt(harvest.roster, platform, user);
    if (!person) return;
    const origin = { platform, room: null, user, person, messageId };
    await page.enqueue(outgoing([tell], { cause, origin, harvest, nowMs }, bot));
  });
  bot.wakeDeliverer();
};

/** A fault of ours must not lose the message, nor let the platform send it for ever: it is kept with the reason. */
export const keepUnhandled = async (bot: Bot, heard: Heard, error: unknown): Promise<void> => {
  const why = error instanceof Error ? (error.stack ?? error.message) : String(error);
  const reference = `${heard.platform}:${heard.id}`.slice(-12);
  await bot.book.inOneGo(bot.roster.operation, (page) => page.park(heard, why));
  bot.log.error(
    { why, reference, message: heard.id },
    'A message could not be handled; it is kept in the inbox',
  );
  try {
    await ownUp(bot, heard, reference);
  } catch (again) {
    bot.log.error({ why: reasonOf(again), reference }, 'The sender could not be told of it');
  }
};
