import { describe, inject } from 'vitest';

/** Why there is no Synapse, as the set-up before all suites has found; null = there is. */
const missing = inject('synapseMissing');

/** A suite against a real homeserver; skipped with the reason where none can be had. */
export const describeWithSynapse = (name: string, body: () => void): void => {
  describe.skipIf(missing !== null)(missing === null ? name : `${name} (no Synapse: ${missing})`, body);
};
