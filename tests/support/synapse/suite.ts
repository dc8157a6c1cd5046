import { describe } from 'vitest';
import { synapseMissing } from './root.ts';

/** Setting the folder up may take long on a busy machine, and happens before the first suite. */
const missing = await synapseMissing();
if (missing !== null) process.stderr.write(`Skipped, because there is no Synapse: ${missing}.\n`);

/** A suite against a real homeserver; skipped with the reason where none can be had. */
export const describeWithSynapse = (name: string, body: () => void): void => {
  describe.skipIf(missing !== null)(missing === null ? name : `${name} (no Synapse: ${missing})`, body);
};
