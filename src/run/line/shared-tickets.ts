/** Tickets of a station that operations of this installation share: given with each entry, read before each answer. */
import { calendarDay, DAYS_KEPT } from '../../core/line/history.ts';
import { NOTHING_POOLED, poolChanges, poolsOf } from '../../core/line/shared-tickets.ts';
import type { PooledTicket } from '../../core/line/shared-tickets.ts';
import type { Day } from '../../core/harvest/fold.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Page } from '../../ports/book.ts';
import type { Running } from '../host/operation.ts';

/** Others' tickets as last read. Those of earlier days are read once a day. */
export interface PoolCache {
  dayFromMs: EpochMs;
  past: readonly PooledTicket[];
  tickets: readonly PooledTicket[];
}

export const emptyPool = (): PoolCache => ({ dayFromMs: -Infinity, past: [], tickets: NOTHING_POOLED });

/** The day with what the others have shared by now. Call it on the open page. */
export const withPooled = async (running: Running, page: Page, day: Day, nowMs: EpochMs): Promise<Day> => {
  const pools = poolsOf(running.roster);
  if (pools.length === 0) return day;
  const { fromMs, toMs } = calendarDay(day, running.clock, nowMs);
  const oldest = calendarDay(day, running.clock, nowMs, -DAYS_KEPT);
  const { dayFromMs, past } = running.pool;
  const before = dayFromMs === fromMs ? past : await page.pooled(pools, oldest.fromMs, fromMs);
  const tickets = [...before, ...(await page.pooled(pools, fromMs, toMs))];
  running.pool = { dayFromMs: fromMs, past: before, tickets };
  return { ...day, pooled: tickets };
};

/** Shares what a message has changed of the operation's own tickets. */
export const shareTickets = async (
  running: Running,
  page: Page,
  turn: { before: Day; after: Day; nowMs: EpochMs },
): Promise<void> => {
  if (poolsOf(running.roster).length === 0) return;
  const changes = poolChanges(turn.before, turn.after);
  if (changes.put.length + changes.withdrawn.length === 0) return;
  const oldest = calendarDay(turn.after, running.clock, turn.nowMs, -DAYS_KEPT);
  await page.share(changes, oldest.fromMs);
};
