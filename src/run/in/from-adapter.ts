/** What an adapter itself must say: it goes out through the outbox like everything else. */
import { roomAt } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Post, Said } from '../../ports/chat.ts';
import { harvestOn } from '../host/bot.ts';
import type { Bot } from '../host/bot.ts';
import { causeOf } from './cause.ts';

export interface AdapterTelling {
  to: Post['to'];
  said: Said;
  /** Platform id of the message that it tells of; it is told of once. */
  cause: string;
}

export const tellFromAdapter = async (
  bot: Bot,
  platform: string,
  { to, said, cause }: AdapterTelling,
  nowMs: EpochMs,
): Promise<void> => {
  await bot.book.inOneGo(bot.roster.operation, async (page) => {
    const { roster } = await harvestOn(page, bot);
    const recipient =
      'room' in to ? { room: roomAt(roster, platform, to.room)?.id ?? to.room } : { person: to.user };
    const about = causeOf({ platform, id: cause });
    await page.enqueue([
      {
        key: `${about}:adapter`,
        recipient,
        platform,
        to,
        kind: 'adapter',
        cause: about,
        data: null,
        said,
        repliesTo: null,
        slot: null,
        urgent: false,
        notBeforeMs: nowMs,
        expiresMs: null,
      },
    ]);
  });
  bot.wakeDeliverer();
};
