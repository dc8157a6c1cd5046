import { defineConfig } from 'vitest/config';

/** What every run of the tests has. */
export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    testTimeout: 30_000,
    hookTimeout: 120_000,
    // Two cores are the smallest machine that the suite must finish on.
    maxWorkers: 2,
  },
});
