/** The evening's outlook and the morning's plan. */
import { nextOutlookMs, outlookTells } from '../../core/answers/outlooks.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Page } from '../../ports/book.ts';
import type { Sayer } from '../host/bot.ts';
import { outgoing } from '../out/outgoing.ts';
import { alarmName } from './alarms.ts';

/** Sets the alarm for the next outlook, if anybody wants one. */
export const setOutlook = async (page: Page, bot: Sayer, harvest: Harvest, nowMs: EpochMs): Promise<void> => {
  const dueMs = nextOutlookMs(harvest, bot.clock, nowMs);
  if (dueMs !== null) await page.wakeAt(alarmName({ is: 'outlook', dueMs }), dueMs);
};

/** Sends the outlook that is due at `nowMs`. */
export const sendOutlook = async (
  page: Page,
  bot: Sayer,
  harvest: Harvest,
  nowMs: EpochMs,
): Promise<void> => {
  const occasion = { cause: `timer:outlook:${nowMs}`, origin: null, harvest, nowMs };
  await page.enqueue(outgoing(outlookTells(harvest, bot.clock, nowMs), occasion, bot));
  await page.wakeAt(alarmName({ is: 'outlook', dueMs: nowMs }), null);
  await setOutlook(page, bot, harvest, nowMs);
};
