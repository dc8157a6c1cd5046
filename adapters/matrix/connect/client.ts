import { Filter, MatrixClient, MatrixScheduler, MemoryStore, PendingEventOrdering } from 'matrix-js-sdk';
import type { CryptoCallbacks } from 'matrix-js-sdk/lib/crypto-api/index.js';
import type { LogLine } from '../../../src/ports/log.ts';
import type { Batch } from '../catch-up.ts';
import { sdkLogger } from '../log.ts';
import type { Session } from './session.ts';

/** Shorter than the outbox lends a message for. The long poll of a sync sets its own limit. */
const ANSWER_WITHIN_MS = 20_000;
/** Enough that an ordinary sync has no gap; a longer one is paged. */
const EVENTS_PER_SYNC = 50;

/** Messages go out as they come and are never sent again by the SDK: the outbox keeps the order and tries again. */
const directly = () =>
  new MatrixScheduler(
    () => -1,
    () => null,
  );

/**
 * The SDK moves its sync token on before it has handled the events (`doSync` in
 * https://github.com/matrix-org/matrix-js-sdk/blob/develop/src/sync.ts), but it hands every sync to its store and
 * waits for it before it asks for the next one. That is where the events are taken: one sync at a time, none lost.
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
    // Nobody verifies a bot by comparing emoji: it is trusted through cross-signing.
    verificationMethods: [],
  });

/** Typing, receipts and presence are left out: they wake the bot for nothing. */
const filterFor = (user: string): Filter =>
  Filter.fromJson(user, 'fieldbell', {
    presence: { types: [] },
    room: {
      ephemeral: { types: [] },
      timeline: { limit: EVENTS_PER_SYNC, lazy_load_members: true },
      state: { lazy_load_members: true },
    },
  });

/** Every start is a fresh sync, because the SDK keeps no rooms outside a browser. */
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
