/** Assembles an operation: lists, book, clock, line forecast. Live bot, replay and demo all start here. */
import type { Roster } from '../core/roster.ts';
import { lineHere } from '../run/line/service.ts';
import { createMetrics } from '../run/host/metrics.ts';
import type { Metrics } from '../run/host/metrics.ts';
import { allFacts, harvestOf, emptyCache } from '../run/host/operation.ts';
import type { Running } from '../run/host/operation.ts';
import { zoneClock } from '../run/host/zone-clock.ts';
import { openStore } from '../store/open.ts';
import type { DatabasePlace } from '../store/database.ts';
import type { Store } from '../store/open.ts';
import type { Harvest } from '../core/harvest/harvest.ts';
import type { Log } from '../ports/log.ts';
import { noSharedTickets } from '../run/line/shared-ticket-cache.ts';

export interface Operation {
  running: Running;
  store: Store;
  metrics: Metrics;
  /** The current lists, including changes made in chat. */
  roster: () => Roster;
  /** The state of the harvest by the book. */
  day: () => Harvest;
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
  const running: Running = {
    ...deps,
    roster,
    book: store.book,
    clock: zoneClock,
    line: lineHere(),
    weatherBy: null,
    iso: (atMs) => new Date(atMs).toISOString(),
    metrics,
    facts: emptyCache(),
    sharedTickets: noSharedTickets(),
  };
  await store.book.inOneGo(roster.operation, (page) => allFacts(running, page));
  return {
    running,
    store,
    metrics,
    roster: () => harvestOf(running, running.facts.facts).roster,
    day: () => harvestOf(running, running.facts.facts),
    close: store.close,
  };
};
