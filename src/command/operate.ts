/** Puts an operation together: lists, book, clock, forecast of the line. Live bot, replay and demo all start here. */
import type { Roster } from '../core/roster.ts';
import { lineHere } from '../run/line/service.ts';
import { createMetrics } from '../run/host/metrics.ts';
import type { Metrics } from '../run/host/metrics.ts';
import { emptyCache, harvestOn, lastHarvest } from '../run/host/operation.ts';
import type { Running } from '../run/host/operation.ts';
import { zoneClock } from '../run/host/zone-clock.ts';
import { openStore } from '../store/open.ts';
import type { Store } from '../store/open.ts';
import type { Harvest } from '../core/harvest/harvest.ts';
import type { Log } from '../ports/log.ts';
import { noSharedTickets } from '../run/line/shared-ticket-cache.ts';

export type Place = Parameters<typeof openStore>[0];

export interface Operation {
  running: Running;
  store: Store;
  metrics: Metrics;
  /** The lists as they stand now, changes made in chat included. */
  roster: () => Roster;
  /** The state of the harvest as the book has it. */
  day: () => Harvest;
  close: () => Promise<void>;
}

interface Means {
  platforms: readonly string[];
  log: Log;
  wakeDeliverer: () => void;
}

export const operate = async (roster: Roster, place: Place, means: Means): Promise<Operation> =>
  operateOn(await openStore(place, [roster.operation]), roster, means);

/** The operation on a store that is open already. */
export const operateOn = async (store: Store, roster: Roster, means: Means): Promise<Operation> => {
  const metrics = createMetrics();
  const running: Running = {
    ...means,
    roster,
    book: store.book,
    clock: zoneClock,
    line: lineHere(),
    weatherBy: null,
    iso: (atMs) => new Date(atMs).toISOString(),
    metrics,
    known: emptyCache(roster),
    sharedTickets: noSharedTickets(),
  };
  await store.book.inOneGo(roster.operation, (page) => harvestOn(running, page));
  return {
    running,
    store,
    metrics,
    roster: () => lastHarvest(running).roster,
    day: () => lastHarvest(running),
    close: store.close,
  };
};
