import { ClientEvent, SyncState } from 'matrix-js-sdk';
import type { MatrixClient } from 'matrix-js-sdk';
import type { LogLine } from '../../../src/ports/log.ts';

/** The states of a client whose newest sync failed; in "catchup" only a smaller request has come through since. */
const outOfStep = new Set<SyncState | null>([
  SyncState.Reconnecting,
  SyncState.Error,
  SyncState.Catchup,
  SyncState.Stopped,
]);

/** Does the client know what the homeserver knows? One that is lost is looked for every 5 to 10 s by the SDK. */
export const isInStep = (client: MatrixClient): boolean => !outOfStep.has(client.getSyncState());

/** Tells when the homeserver is lost and when it is found again. */
export const logLink = (client: MatrixClient, log: LogLine): void => {
  let wasInStep = true;
  client.on(ClientEvent.Sync, (state) => {
    if (state === SyncState.Stopped || isInStep(client) === wasInStep) return;
    wasInStep = !wasInStep;
    if (wasInStep) log('info', 'Connected to Matrix again.');
    else log('warn', 'The Matrix homeserver is out of reach; it is looked for.');
  });
};
