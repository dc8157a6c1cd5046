/** Assembles an operation: lists, book, clock, line forecast. Live bot, replay and demo all start here. */
import { learnedRankers } from './learned-ranker.ts';
import type { Roster } from '../core/roster.ts';
import { lineHere } from '../run/line/service.ts';
import { createMetrics } from '../run/host/metrics.ts';
import type { Metrics } from '../run/host/metrics.ts';
import { emptyCache, harvestOn, knownHarvest } from '../run/host/bot.ts';
import type { Bot } from '../run/host/bot.ts';
import { zoneClock } from '../run/host/zone-clock.ts';
import { openStore } from '../store/open.ts';
import type { DatabasePlace } from '../store/database.ts';
import type { Store } from '../store/open.ts';
import type { Harvest } from '../core/harvest/harvest.ts';
import type { Log } from '../ports/log.ts';
import { noSharedTickets } from '../run/line/shared-ticket-cache.ts';

export interface Operation {
  bot: Bot;
  store: Store;
  metrics: Metrics;
  /** The current lists, including changes made in chat. */
  roster: () => Roster;
  /** The state of the harvest by the book. */
  harvest: () => Harvest;
  close: () => Promise<void>;
}

interface OperationDeps {
  platforms: readonly string[];
  log: Log;
  wakeDeliverer: () => void;
}

export const operate = async (
  roster: Roster,
  place: DatabasePlace,
  deps: OperationDeps,
): Promise<Operation> => operateOn(await openStore(place, [roster.operation]), roster, deps);

/** `operate` on a store that is already open. */
export const operateOn = async (store: Store, roster: Roster, deps: OperationDeps): Promise<Operation> => {
  const metrics = createMetrics();
  const bot: Bot = {
    ...deps,
    roster,
    book: store.book,
    clock: zoneClock,
    rankers: learnedRankers(),
    line: lineHere(),
    editable: [],
    weatherBy: null,
    iso: (atMs) => new Date(atMs).toISOString(),
    metrics,
    known: emptyCache(roster),
    sharedTickets: noSharedTickets(),
  };
  await store.book.inOneGo(roster.operation, (page) => harvestOn(page, bot));
  return {
    bot,
    store,
    metrics,
    roster: () => knownHarvest(bot).roster,
    harvest: () => knownHarvest(bot),
    close: store.close,
  };
};
