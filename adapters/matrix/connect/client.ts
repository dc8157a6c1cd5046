import { Filter, MatrixClient, MatrixScheduler, MemoryStore, PendingEventOrdering } from 'matrix-js-sdk';
import type { CryptoCallbacks } from 'matrix-js-sdk/lib/crypto-api/index.js';
import type { LogLine } from '../../../src/ports/log.ts';
import type { Batch } from '../catch-up.ts';
import { sdkLogger } from '../log.ts';
import type { Session } from './session.ts';

/** Must stay below the outbox lease (LEASE_MS, src/run/out/deliver.ts). Syncs have their own limit. Grade: chosen. */
const ANSWER_WITHIN_MS = 20_000;
/** Enough for an ordinary sync; the rest of a longer one is read in pages. Grade: chosen. */
const EVENTS_PER_SYNC = 50;

/** Sends messages at once, and never again: the outbox keeps the order and retries. */
const directly = () =>
  new MatrixScheduler(
    () => -1,
    () => null,
  );

/**
 * The SDK advances its sync token before it has handled the events (`doSync` in
 * https://github.com/matrix-org/matrix-js-sdk/blob/develop/src/sync.ts), but it passes every sync to its store and waits
 * for that before it requests the next. So the store takes the events in: one sync at a time, none lost.
 */
const storeThat = (takes: (batch: Batch) => Promise<void>): MemoryStore => {
  const store = new MemoryStore();
  store.setSyncData = takes;
  return store;
};

export const clientOf = (
  session: Session,
  log: LogLine,
  takes: (batch: Batch) => Promise<void>,
  cryptoCallbacks: CryptoCallbacks = {},
): MatrixClient =>
  new MatrixClient({
    baseUrl: session.homeserver,
    userId: session.user,
    deviceId: session.device,
    accessToken: session.token,
    store: storeThat(takes),
    scheduler: directly(),
    logger: sdkLogger(log),
    localTimeoutMs: ANSWER_WITHIN_MS,
    cryptoCallbacks,
    // Nobody can compare emoji with a bot: it is trusted through cross-signing.
    verificationMethods: [],
  });

/** Without typing, receipts and presence, which would only wake the bot. */
const filterFor = (user: string): Filter =>
  Filter.fromJson(user, 'fieldbell', {
    presence: { types: [] },
    room: {
      ephemeral: { types: [] },
      timeline: { limit: EVENTS_PER_SYNC, lazy_load_members: true },
      state: { lazy_load_members: true },
    },
  });

/** Every start is a full sync, because the SDK stores no rooms outside a browser. */
export const startSyncing = async (client: MatrixClient, session: Session): Promise<void> => {
  await client.startClient({
    initialSyncLimit: 1,
    lazyLoadMembers: true,
    disablePresence: true,
    // With "detached", one message that failed blocks all later ones of its room, urgent ones too (`addPendingEvent` in
    // https://github.com/matrix-org/matrix-js-sdk/blob/develop/src/models/room.ts).
    pendingEventOrdering: PendingEventOrdering.Chronological,
    filter: filterFor(session.user),
  });
};
