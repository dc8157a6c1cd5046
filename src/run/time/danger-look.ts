/** A message may mean danger, and its sender has been asked. */
import type { Fact } from '../../core/book/facts.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import { DANGER_ANSWER_SEC, dangerIn, unclearDangerTells } from '../../core/notices/unclear-danger.ts';
import { MS_PER_SECOND } from '../../core/units.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Page } from '../../ports/book.ts';
import type { Sayer } from '../host/bot.ts';
import { outgoing } from '../out/outgoing.ts';
import { alarmName } from './alarms.ts';

export const wakeForDanger = async (page: Page, news: readonly Fact[], nowMs: EpochMs): Promise<void> => {
  for (const fact of news)
    if (fact.kind === 'reading-offered' && dangerIn(fact) !== null)
      await page.wakeAt(
        alarmName({ is: 'danger', number: fact.number }),
        nowMs + DANGER_ANSWER_SEC * MS_PER_SECOND,
      );
};

/** The minute is over. */
export const askAboutDanger = async (
  page: Page,
  bot: Sayer,
  harvest: Harvest,
  { number, nowMs }: { number: number; nowMs: EpochMs },
): Promise<void> => {
  const occasion = { cause: `timer:danger:${number}`, origin: null, harvest, nowMs };
  await page.enqueue(outgoing(unclearDangerTells(harvest, number), occasion, bot));
  await page.wakeAt(alarmName({ is: 'danger', number }), null);
};
