import { foldHarvest, withFacts } from '../../core/harvest/fold.ts';
import type { Roster } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import type { ZoneClock } from '../../core/zone-clock.ts';
import type { Book, Page } from '../../ports/book.ts';
import type { Metrics } from './metrics.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import type { Rankers } from '../../reading/hearing.ts';
import type { Log } from '../../ports/log.ts';
import type { WaitForecaster } from '../line/forecaster.ts';
import type { SharedTicketCache } from '../line/shared-ticket-cache.ts';

/** The bot of one operation: its lists as the operation file has them, its book, and what it needs of the shell. */
export interface Bot {
  roster: Roster;
  book: Book;
  clock: ZoneClock;
  rankers: Rankers;
  /** Where the scale line is forecast. */
  line: WaitForecaster;
  /** Platforms that have an adapter here; people are reached over these. */
  platforms: readonly string[];
  /** Those of them on which a message can be changed after it was posted. */
  editable: readonly string[];
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

/** What it takes to read the book. */
export type Reader = Pick<Bot, 'roster' | 'known' | 'sharedTickets'>;
/** What it takes to put a message into words for somebody. */
export type Sayer = Pick<Bot, 'clock' | 'platforms' | 'editable' | 'iso' | 'weatherBy' | 'log'>;

/**
 * The harvest by the facts that have been read from the book, `seq` the last of them. Only the newer ones are read each
 * time: the rows of a season would otherwise cross from the database for every message.
 */
export interface HarvestCache {
  seq: number;
  harvest: Harvest;
}

export const emptyCache = (roster: Roster): HarvestCache => ({ seq: 0, harvest: foldHarvest(roster, []) });

/** The harvest as last read, without a look into the book. */
export const knownHarvest = ({ known: { harvest }, sharedTickets: { tickets } }: Reader): Harvest =>
  harvest.othersTickets === tickets ? harvest : { ...harvest, othersTickets: tickets };

/** The harvest with all that was written since. Call it on the open page: nobody writes meanwhile. */
export const harvestOn = async (page: Page, bot: Reader): Promise<Harvest> => {
  const { seq, harvest } = bot.known;
  const newer = await page.factsAfter(seq);
  const last = newer.at(-1);
  // What other transactions have committed stays true whether or not this one commits.
  if (last) {
    const facts = newer.map((row) => row.fact);
    bot.known = { seq: last.seq, harvest: withFacts(harvest, facts) };
  }
  return knownHarvest(bot);
};

/** What a page that is closed now has written last, and the harvest with it: the next message need not read them. */
export const remember = (bot: Reader, seq: number, harvest: Harvest): void => {
  if (seq > bot.known.seq) bot.known = { seq, harvest };
};
