/**
 * What the tests of the core would let through: changes it in small ways, one at a time, and lists each change that no
 * test fails on. `npm run mutate`
 *
 * `-- --files src/core/weather --files src/core/quiet.ts --most 200 --seed 1789`: only files whose paths begin so, and
 * of these at most 200 lines of code, drawn by the seed. Without `--files` and `--most` the whole core, which takes
 * hours. The changes are made in a copy in the folder for temporary files, never in the working tree.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { constants, setPriority, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { Stryker } from '@stryker-mutator/core';
import { filesIn, linesOfCode, sampleOf } from './sample.ts';

const { values } = parseArgs({
  options: {
    files: { type: 'string', multiple: true, default: ['src/core'] },
    most: { type: 'string' },
    seed: { type: 'string', default: '1789' },
  },
});

/** The compiler refuses nearly all of these: the core's strings are members of unions, and functions say what they return. */
const LEFT_TO_THE_COMPILER = ['StringLiteral', 'ObjectLiteral', 'ArrowFunction'];

const strykerIn = (folder: string, places: readonly string[]): Stryker =>
  new Stryker({
    mutate: [...places],
    mutator: { excludedMutations: LEFT_TO_THE_COMPILER },
    // Each of those that are read once, at loading, would take a run of all tests.
    ignoreStatic: true,
    tempDirName: folder,
    ignorePatterns: ['.fieldbell', 'coverage', 'deploy', 'migrations'],
    testRunner: 'vitest',
    plugins: ['@stryker-mutator/vitest-runner'],
    vitest: { configFile: '.config/vitest.mutate.config.ts', related: true },
    concurrency: 1,
    reporters: ['clear-text'],
    clearTextReporter: { logTests: false, reportTests: false, skipFull: true },
    allowConsoleColors: false,
  });

const files = filesIn(values.files);
const seed = Number(values.seed);
const most = values.most === undefined ? null : Number(values.most);
if (Number.isNaN(most) || Number.isNaN(seed)) throw new Error('--most and --seed take numbers');
const places = most === null ? files : sampleOf(linesOfCode(files), most, seed);

setPriority(constants.priority.PRIORITY_LOW);
const folder = mkdtempSync(join(tmpdir(), 'mutate-'));
try {
  const changes = await strykerIn(folder, places).runMutationTest();
  const count = (...statuses: readonly string[]): number =>
    changes.filter(({ status }) => statuses.includes(status)).length;
  const [killed, survived] = [count('Killed', 'Timeout'), count('Survived', 'NoCoverage')];
  const share = Math.round((100 * killed) / Math.max(1, killed + survived));
  process.stdout.write(
    `${killed} killed, ${survived} survived (${count('NoCoverage')} of them reached by no test): ${share} % killed\n`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
