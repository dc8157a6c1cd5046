import { defineConfig, mergeConfig } from 'vitest/config';
import base from './vitest.base.ts';

/** The suites against a real homeserver, which is set up once before them. */
export default mergeConfig(
  base,
  defineConfig({
    test: {
      include: ['tests/**/*.test.ts'],
      globalSetup: ['tests/support/synapse/global-setup.ts'],
      // Every test runs Python and a homeserver beside the bot.
      testTimeout: 120_000,
    },
  }),
);
