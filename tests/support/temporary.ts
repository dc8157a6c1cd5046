import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** An empty directory that goes with the test. */
export const temporaryDirectory = (): string => {
  const directory = mkdtempSync(join(tmpdir(), 'fieldbell-test-'));
  onTestFinished(() => {
    rmSync(directory, { recursive: true, force: true });
  });
  return directory;
};
