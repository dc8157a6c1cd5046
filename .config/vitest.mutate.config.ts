import { defineConfig } from 'vitest/config';

/** The tests that run the core without a database: each change of the core is tried on all of them that reach it. */
export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/{contracts,core,outside}/**/*.test.ts'],
    setupFiles: ['tests/mutate/setup.ts'],
    testTimeout: 30_000,
  },
});
