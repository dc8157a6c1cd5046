/** Tickets of a station that operations of this installation share: given with each entry, read before each answer. */
import { DAYS_KEPT } from '../../core/line/history.ts';
import { sharedChanges, poolsOf } from '../../core/line/shared-tickets.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Page } from '../../ports/book.ts';
import type { Bot, Reader } from '../host/bot.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import { calendarDay } from '../../core/zone-clock.ts';

/** The harvest with what the others have shared by now. Call it on the open page. */
export const withSharedTickets = async (
  bot: Reader & Pick<Bot, 'clock'>,
  page: Page,
  harvest: Harvest,
  nowMs: EpochMs,
): Promise<Harvest> => {
  const pools = poolsOf(bot.roster);
  if (pools.length === 0) return harvest;
  const { fromMs, toMs } = calendarDay(bot.clock, harvest.roster.zone, nowMs);
  const oldest = calendarDay(bot.clock, harvest.roster.zone, nowMs, -DAYS_KEPT);
  const { dayFromMs, past } = bot.sharedTickets;
  const before = dayFromMs === fromMs ? past : await page.sharedBy(pools, oldest.fromMs, fromMs);
  const tickets = [...before, ...(await page.sharedBy(pools, fromMs, toMs))];
  bot.sharedTickets = { dayFromMs: fromMs, past: before, tickets };
  return { ...harvest, othersTickets: tickets };
};

/** Shares what a message has changed of the operation's own tickets. */
export const shareTickets = async (
  bot: Reader & Pick<Bot, 'clock'>,
  page: Page,
  change: { before: Harvest; after: Harvest; nowMs: EpochMs },
): Promise<void> => {
  if (poolsOf(bot.roster).length === 0) return;
  const changes = sharedChanges(change.before, change.after);
  if (changes.put.length + changes.withdrawn.length === 0) return;
  const oldest = calendarDay(bot.clock, change.after.roster.zone, change.nowMs, -DAYS_KEPT);
  await page.shareTickets(changes, oldest.fromMs);
};
