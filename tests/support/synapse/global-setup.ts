import type { TestProject } from 'vitest/node';
import { synapseMissing } from './root.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Why there is no Synapse; null = there is. */
    synapseMissing: string | null;
  }
}

/** Once before all suites: where it can't be had, seven files must not each try for a quarter of an hour. */
export default async ({ provide }: TestProject): Promise<void> => {
  const missing = await synapseMissing();
  if (missing !== null) process.stderr.write(`Skipped, because there is no Synapse: ${missing}.\n`);
  provide('synapseMissing', missing);
};
