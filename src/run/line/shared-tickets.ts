/** Tickets of a station that operations of this installation share: given with each entry, read before each answer. */
import { DAYS_KEPT } from '../../core/line/history.ts';
import { sharedChanges, poolsOf } from '../../core/line/shared-tickets.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Page } from '../../ports/book.ts';
import type { Running } from '../host/operation.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import { calendarDay } from '../../core/zone-clock.ts';

/** The day with what the others have shared by now. Call it on the open page. */
export const withSharedTickets = async (
  running: Running,
  page: Page,
  harvest: Harvest,
  nowMs: EpochMs,
): Promise<Harvest> => {
  const pools = poolsOf(running.roster);
  if (pools.length === 0) return harvest;
  const { fromMs, toMs } = calendarDay(running.clock, harvest.roster.zone, nowMs);
  const oldest = calendarDay(running.clock, harvest.roster.zone, nowMs, -DAYS_KEPT);
  const { dayFromMs, past } = running.sharedTickets;
  const before = dayFromMs === fromMs ? past : await page.sharedBy(pools, oldest.fromMs, fromMs);
  const tickets = [...before, ...(await page.sharedBy(pools, fromMs, toMs))];
  running.sharedTickets = { dayFromMs: fromMs, past: before, tickets };
  return { ...harvest, othersTickets: tickets };
};

/** Shares what a message has changed of the operation's own tickets. */
export const shareTickets = async (
  running: Running,
  page: Page,
  turn: { before: Harvest; after: Harvest; nowMs: EpochMs },
): Promise<void> => {
  if (poolsOf(running.roster).length === 0) return;
  const changes = sharedChanges(turn.before, turn.after);
  if (changes.put.length + changes.withdrawn.length === 0) return;
  const oldest = calendarDay(running.clock, turn.after.roster.zone, turn.nowMs, -DAYS_KEPT);
  await page.shareTickets(changes, oldest.fromMs);
};
