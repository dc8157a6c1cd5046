/** "Seen by 2 of 3": grows in the notice itself, where the platform can change a message. */
import { confirmedTells } from '../../core/notices/notice-tells.ts';
import type { Page, Shown } from '../../ports/book.ts';
import type { Outgoing } from '../../ports/outbox.ts';
import type { Sayer } from '../host/bot.ts';
import { isSameLane } from './boards.ts';
import type { Change } from './boards.ts';
import { noticeSlot } from './notice-slot.ts';
import { outgoing } from './outgoing.ts';

/** The notices in which somebody has been added. */
export const seenChanges = async (page: Page, bot: Sayer, change: Change): Promise<Outgoing[]> => {
  const { before, after: harvest, cause, nowMs } = change;
  const moment = { harvest, clock: bot.clock, nowMs };
  const changed: Outgoing[] = [];
  for (const { telling, tells } of confirmedTells(before, moment, cause)) {
    const shown: Shown[] = await page.showing(noticeSlot(telling));
    const messages = outgoing(tells, { cause, origin: null, harvest, nowMs }, bot);
    changed.push(
      ...messages.filter(
        (message) => bot.editable.includes(message.platform) && shown.some((one) => isSameLane(message, one)),
      ),
    );
  }
  return changed;
};
