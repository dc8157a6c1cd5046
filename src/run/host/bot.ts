import { foldHarvest } from '../../core/harvest/fold.ts';
import type { Fact } from '../../core/book/facts.ts';
import type { Roster } from '../../core/roster.ts';
import type { EpochMs } from '../../core/units.ts';
import type { ZoneClock } from '../../core/zone-clock.ts';
import type { Book, Page } from '../../ports/book.ts';
import type { Metrics } from './metrics.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import type { Log } from '../../ports/log.ts';
import type { WaitForecaster } from '../line/forecaster.ts';
import type { SharedTicketCache } from '../line/shared-ticket-cache.ts';

/** The bot of one operation: its lists as the operation file has them, its book, and what it needs of the shell. */
export interface Bot {
  roster: Roster;
  book: Book;
  clock: ZoneClock;
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
  facts: FactCache;
  sharedTickets: SharedTicketCache;
}

/** What it takes to read the book. */
export type Reader = Pick<Bot, 'roster' | 'facts' | 'sharedTickets'>;
/** What it takes to put a message into words for somebody. */
export type Sayer = Pick<Bot, 'clock' | 'platforms' | 'editable' | 'iso' | 'weatherBy' | 'log'>;

/**
 * Facts that have been read from the book, and the harvest that they come to. Only the newer ones are read each time: the
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
export const allFacts = async (bot: Reader, page: Page): Promise<readonly Fact[]> => {
  const newer = await page.factsAfter(bot.facts.seq);
  const last = newer.at(-1);
  // What other transactions have committed stays true whether or not this one commits.
  if (last) {
    const facts = [...bot.facts.facts, ...newer.map((row) => row.fact)];
    bot.facts = { seq: last.seq, facts, harvest: null };
  }
  return bot.facts.facts;
};

/** What a page that is closed now has written last, and the harvest with it: the next message need not fold again. */
export const remember = (bot: Reader, seq: number, harvest: Harvest): void => {
  if (seq > bot.facts.seq) bot.facts = { seq, facts: harvest.facts, harvest };
};

/** The harvest by the facts that have been read so far. */
export const knownHarvest = ({ roster, facts: cache, sharedTickets }: Reader): Harvest => {
  const harvest = cache.harvest ?? foldHarvest(roster, cache.facts);
  cache.harvest = harvest;
  const { tickets } = sharedTickets;
  return harvest.othersTickets === tickets ? harvest : { ...harvest, othersTickets: tickets };
};

/** The harvest by all facts of the book. Call it on the open page: nobody writes meanwhile. */
export const harvestOn = async (page: Page, bot: Reader): Promise<Harvest> => {
  await allFacts(bot, page);
  return knownHarvest(bot);
};
