/**
 * What rooms and people see of messages with a slot (boards, notices). The bot asks with every message, though there mostly is
 * none: a bound that is read with the lock on the operation's book then answers without a query. It stands in the
 * database, because another process may have queued one.
 */
import { and, asc, desc, eq, gte, isNotNull } from 'drizzle-orm';
import type { SQL } from 'drizzle-orm';
import type { EpochMs } from '../core/units.ts';
import { MS_PER_HOUR } from '../core/units.ts';
import type { Page, Reach, Shown } from '../ports/book.ts';
import type { Outgoing } from '../ports/outbox.ts';
import { rowFrom } from './outbox-row.ts';
import { seriesOf } from './claim.ts';
import { operations, outbox } from './schema.ts';
import type { Tx } from './db.ts';

/** The bound goes ahead of the newest message by this, so that it is not moved with each. Grade: chosen. */
const AHEAD_MS = MS_PER_HOUR;

/** `untilMs`: no message with a slot is due later; null = there is none. */
export const slotsOn = (
  tx: Tx,
  operation: string,
  untilMs: EpochMs | null,
): Pick<Page, 'shown' | 'showing' | 'reach' | 'enqueue'> => {
  let boundMs = untilMs ?? -Infinity;
  return {
    shown: async (kind, sinceMs) =>
      sinceMs > boundMs
        ? []
        : shown(tx, operation, and(eq(outbox.kind, kind), gte(outbox.notBeforeMs, sinceMs))),

    showing: (slot) => shown(tx, operation, eq(outbox.slot, slot)),

    reach: (series) => reach(tx, operation, series),

    enqueue: async (messages) => {
      if (messages.length === 0) return;
      await tx
        .insert(outbox)
        .values(messages.map((message) => rowFrom(operation, message)))
        .onConflictDoNothing();
      const newestMs = newestSlotMs(messages);
      if (newestMs <= boundMs) return;
      boundMs = newestMs + AHEAD_MS;
      await tx.update(operations).set({ slotsUntilMs: boundMs }).where(eq(operations.operation, operation));
    },
  };
};

const newestSlotMs = (messages: readonly Outgoing[]): EpochMs =>
  Math.max(...messages.map(({ slot, notBeforeMs }) => (slot === null ? -Infinity : notBeforeMs)));

/** The newest such message of each lane. Leaves out messages that were never delivered. */
const shown = async (tx: Tx, operation: string, isSuch: SQL | undefined): Promise<Shown[]> => {
  const { lane, slot, recipient, platform, to, notBeforeMs, outcome } = outbox;
  const rows = await tx
    .selectDistinctOn([lane], { slot, recipient, platform, to, notBeforeMs, outcome })
    .from(outbox)
    .where(and(eq(outbox.operation, operation), isSuch, isNotNull(slot)))
    .orderBy(asc(lane), desc(outbox.id));
  return rows.flatMap(({ slot: known, outcome: became, ...row }) =>
    known === null || became === 'gave-up' || became === 'expired' ? [] : [{ ...row, slot: known }],
  );
};

const stateOf = ({
  outcome,
  attempts,
  why,
}: Pick<typeof outbox.$inferSelect, 'outcome' | 'attempts' | 'why'>) => {
  if (outcome === 'sent') return 'sent';
  return outcome === null && (attempts === 0 || why === null) ? 'waiting' : 'refused';
};

const reach = async (tx: Tx, operation: string, series: string): Promise<Reach[]> => {
  const { id, lane, slot, recipient, outcome, attempts, why } = outbox;
  const rows = await tx
    .selectDistinctOn([lane], { id, recipient, outcome, attempts, why })
    .from(outbox)
    .where(and(eq(outbox.operation, operation), isNotNull(slot), eq(seriesOf(slot), series)))
    .orderBy(asc(lane), desc(id));
  return rows.map((row) => ({ id: row.id, recipient: row.recipient, state: stateOf(row) }));
};
