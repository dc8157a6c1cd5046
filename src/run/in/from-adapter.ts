/** What an adapter itself must say: it goes out through the outbox like everything else. */
import { roomAt } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Post, Said } from '../../ports/chat.ts';
import { harvestOn } from '../host/operation.ts';
import type { Running } from '../host/operation.ts';
import { causeOf } from './speech.ts';

export interface AdapterTelling {
  to: Post['to'];
  said: Said;
  /** Platform id of the message that it tells of; it is told of once. */
  cause: string;
}

export const tellFromAdapter = async (
  running: Running,
  platform: string,
  { to, said, cause }: AdapterTelling,
  nowMs: EpochMs,
): Promise<void> => {
  await running.book.inOneGo(running.roster.operation, async (page) => {
    const { roster } = await harvestOn(running, page);
    const recipient =
      'room' in to ? { room: roomAt(roster, platform, to.room)?.id ?? to.room } : { person: to.user };
    const about = causeOf(platform, cause);
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
  running.wakeDeliverer();
};
