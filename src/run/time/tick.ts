/** Time passes: alarms go off. */
import type { EpochMs } from '../../core/units.ts';
import type { Page } from '../../ports/book.ts';
import { harvestOn } from '../host/bot.ts';
import type { Bot } from '../host/bot.ts';
import { askAboutDanger } from './danger-look.ts';
import { alarmOf } from './alarms.ts';
import { lookAtLine, warnOfLine } from './line-look.ts';
import type { LineLook } from './line-look.ts';
import { sendOutlook } from './outlook-look.ts';
import { lookAtWeather } from './weather-look.ts';

interface Due {
  name: string;
  dueMs: EpochMs;
}

/** Does what the alarm is for; a look at the line is finished later, when the line has been forecast. */
const goesOff = async (
  page: Page,
  bot: Bot,
  { name, dueMs }: Due,
  nowMs: EpochMs,
): Promise<LineLook | null> => {
  const alarm = alarmOf(name);
  if (alarm === null) {
    bot.log.error({ alarm: name }, 'An alarm of another version is removed: this version does not know it');
    await page.wakeAt(name, null);
    return null;
  }
  const harvest = await harvestOn(page, bot);
  switch (alarm.is) {
    case 'weather':
      await lookAtWeather(page, bot, harvest, dueMs);
      return null;
    case 'danger':
      await askAboutDanger(page, bot, harvest, { number: alarm.number, nowMs: dueMs });
      return null;
    case 'outlook':
      await sendOutlook(page, bot, harvest, dueMs);
      return null;
    case 'line':
      return lookAtLine(page, bot, harvest, { dueMs, nowMs });
  }
};

/** The earliest alarm that is due goes off; null = none is. */
const nextGoesOff = (bot: Bot, nowMs: EpochMs): Promise<{ line: LineLook | null; dueMs: EpochMs } | null> =>
  bot.book.inOneGo(bot.roster.operation, async (page) => {
    const due = await page.nextAlarm(nowMs);
    return due && { line: await goesOff(page, bot, due, nowMs), dueMs: due.dueMs };
  });

/**
 * All alarms due by `nowMs` go off in order, each at its own time. `answered` resolves when what had to wait for a
 * forecast of the line has been said too. `deliverAt` is for a day that is played faster than life: it sends what each
 * alarm has left, before a later one makes it worthless.
 */
export const tick = async (
  bot: Bot,
  nowMs: EpochMs,
  deliverAt: (dueMs: EpochMs) => Promise<unknown> = () => Promise.resolve(),
): Promise<{ answered: Promise<unknown> }> => {
  const later: Promise<void>[] = [];
  for (let went = await nextGoesOff(bot, nowMs); went !== null; went = await nextGoesOff(bot, nowMs)) {
    if (went.line !== null) later.push(warnOfLine(bot, went.line));
    bot.wakeDeliverer();
    await deliverAt(went.dueMs);
  }
  return { answered: Promise.all(later) };
};
