import type { EpochMs } from '../../core/units.ts';
import type { SharedTicket } from '../../core/harvest/harvest.ts';
import { NOTHING_SHARED } from '../../core/harvest/harvest.ts';

/** Others' tickets as last read. Those of earlier days are read once a day. */
export interface SharedTicketCache {
  dayFromMs: EpochMs;
  past: readonly SharedTicket[];
  tickets: readonly SharedTicket[];
}

export const noSharedTickets = (): SharedTicketCache => ({
  dayFromMs: -Infinity,
  past: [],
  tickets: NOTHING_SHARED,
});
