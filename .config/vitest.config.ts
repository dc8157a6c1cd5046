import { defineConfig, mergeConfig } from 'vitest/config';
import base from './vitest.base.ts';

/** These mostly wait, for a clock or for processes of their own: begun last they would stand alone at the end. */
const WAITING = ['tests/scenarios/platforms/*.test.ts', 'tests/command/{live,replay,slack-day}.test.ts'];
/** Against a homeserver, by a configuration of their own. */
const MATRIX = 'tests/matrix/**';

export default mergeConfig(
  base,
  defineConfig({
    test: {
      projects: [
        // What is isolated is begun first.
        { extends: true, test: { name: 'waiting', include: WAITING, isolate: true } },
        // The product's modules keep nothing between two uses, so that files may share them: loading them, and the
        // database's WebAssembly, anew for each file took as long as many tests.
        {
          extends: true,
          test: {
            name: 'working',
            include: ['tests/**/*.test.ts'],
            exclude: [...WAITING, MATRIX],
            isolate: false,
          },
        },
      ],
    },
  }),
);
