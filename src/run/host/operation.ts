import { foldHarvest, withFacts } from '../../core/harvest/fold.ts';
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
  known: HarvestCache;
  sharedTickets: SharedTicketCache;
}

/** With the forecasts of the line at hand. */
export type Understanding = Running & { forecastWait: ForecastWait };

/**
 * The harvest by the facts that have been read from the book, `seq` the last of them. Only the newer ones are read each
 * time: the rows of a season would otherwise cross from the database for every message.
 */
export interface HarvestCache {
  seq: number;
  harvest: Harvest;
}

export const emptyCache = (roster: Roster): HarvestCache => ({ seq: 0, harvest: foldHarvest(roster, []) });

/** The harvest with all that was written since. Call it on the open page: nobody writes meanwhile. */
export const harvestOn = async (running: Running, page: Page): Promise<Harvest> => {
  const { seq, harvest } = running.known;
  const newer = await page.factsAfter(seq);
  const last = newer.at(-1);
  // What other transactions have committed stays true whether or not this one commits.
  if (last) {
    const facts = newer.map((row) => row.fact);
    running.known = { seq: last.seq, harvest: withFacts(harvest, facts) };
  }
  return lastHarvest(running);
};

/** What a page that is closed now has written last, and the harvest with it: the next message need not read them. */
export const remember = (running: Running, seq: number, harvest: Harvest): void => {
  if (seq > running.known.seq) running.known = { seq, harvest };
};

/** The harvest as last read, without a look into the book. */
export const lastHarvest = ({ known: { harvest }, sharedTickets: { tickets } }: Running): Harvest =>
  harvest.othersTickets === tickets ? harvest : { ...harvest, othersTickets: tickets };
