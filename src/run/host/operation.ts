import { foldHarvest } from '../../core/harvest/fold.ts';
import type { Fact } from '../../core/book/facts.ts';
import type { ForecastWait } from '../../core/line/types.ts';
import type { Roster } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import type { ZoneClock } from '../../core/zone-clock.ts';
import type { Book, Page } from '../../ports/book.ts';
import type { Metrics } from './metrics.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import type { Log } from '../../ports/log.ts';
import type { WaitForecaster } from '../line/forecaster.ts';
import type { SharedTicketCache } from '../line/shared-ticket-cache.ts';

/** One operation under way: its lists as the operation file has them, its book, and the means of the shell. */
export interface Running {
  roster: Roster;
  book: Book;
  clock: ZoneClock;
  /** Where the scale line is forecast. */
  line: WaitForecaster;
  /** Platforms that have an adapter here; people are reached over these. */
  platforms: readonly string[];
  iso: (atMs: EpochMs) => string;
  /** Called after a commit that left something to deliver. */
  wakeDeliverer: () => void;
  /** Must be shown with forecasts; null = not asked for. */
  weatherBy: string | null;
  log: Log;
  metrics: Metrics;
  facts: FactCache;
  sharedTickets: SharedTicketCache;
}

/** With the forecasts of the line at hand. */
export type Understanding = Running & { forecastWait: ForecastWait };

/**
 * Facts that have been read from the book, and the day that they come to. Only the newer ones are read each time: the
 * rows of a season would otherwise cross from the database for every message.
 */
export interface FactCache {
  seq: number;
  facts: readonly Fact[];
  /** Null = not folded yet. */
  harvest: Harvest | null;
}

export const emptyCache = (): FactCache => ({ seq: 0, facts: [], harvest: null });

/** All facts of the operation, with those that were written since. Call it on the open page: nobody writes meanwhile. */
export const allFacts = async (running: Running, page: Page): Promise<readonly Fact[]> => {
  const newer = await page.factsAfter(running.facts.seq);
  const last = newer.at(-1);
  // What other transactions have committed stays true whether or not this one commits.
  if (last) {
    const facts = [...running.facts.facts, ...newer.map((row) => row.fact)];
    running.facts = { seq: last.seq, facts, harvest: null };
  }
  return running.facts.facts;
};

/** What a page that is closed now has written last, and the day with it: the next message need not read and fold them. */
export const remember = (running: Running, seq: number, harvest: Harvest): void => {
  if (seq > running.facts.seq) running.facts = { seq, facts: harvest.facts, harvest };
};

/** The day after these facts. That of all facts in the book is folded once. */
export const harvestOf = (
  { roster, facts: cache, sharedTickets: pool }: Running,
  facts: readonly Fact[],
): Harvest => {
  const isOfBook = facts === cache.facts;
  const harvest = (isOfBook ? cache.harvest : null) ?? foldHarvest(roster, facts);
  if (isOfBook) cache.harvest = harvest;
  return harvest.othersTickets === pool.tickets ? harvest : { ...harvest, othersTickets: pool.tickets };
};
