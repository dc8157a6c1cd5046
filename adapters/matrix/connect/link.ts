import { ClientEvent, SyncState } from 'matrix-js-sdk';
import type { MatrixClient } from 'matrix-js-sdk';
import type { LogLine } from '../../../src/ports/log.ts';

/** The states of a client whose newest sync failed; in "catchup" only a smaller request has succeeded since. */
const outOfStep = new Set<SyncState | null>([
  SyncState.Reconnecting,
  SyncState.Error,
  SyncState.Catchup,
  SyncState.Stopped,
]);

/** Whether the client knows what the homeserver knows. The SDK retries a lost homeserver every 5 to 10 s. */
export const isInStep = (client: MatrixClient): boolean => !outOfStep.has(client.getSyncState());

/** Logs when the homeserver is lost and when it is back. */
export const logLink = (client: MatrixClient, log: LogLine): void => {
  let wasInStep = true;
  client.on(ClientEvent.Sync, (state) => {
    if (state === SyncState.Stopped || isInStep(client) === wasInStep) return;
    wasInStep = !wasInStep;
    if (wasInStep) log('info', 'Connected to Matrix again.');
    else log('warn', 'The Matrix homeserver is unreachable; trying again.');
  });
};
