/**
 * How good the wait forecast is: rules compared on simulated days that none of them has seen. `npm run backtest`
 *
 * `-- --stations 12 --days 10 --training 30 --busy-stations 5 --seed 1789 --workers 2 --out .fieldbell/backtest`
 * (the defaults: 240 days with 4-25 loads seen, 100 with 50). Fewer stations or days take less time. Other work
 * on the machine goes first.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { constants, setPriority } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { Worker } from 'node:worker_threads';
import { examplePicture, leadPicture, pngOf } from './picture.ts';
import { goalTable, gainLine, ruleTable, wrongTable } from './report.ts';
import type { Scored } from './scoring.ts';
import type { Season } from './season.ts';
import { COUNTS_30, COUNTS_60, PLAIN } from './sets.ts';
import type { Family } from './simulator/station.ts';
import type { Job } from './worker.ts';

const { values } = parseArgs({
  options: {
    stations: { type: 'string', default: '12' },
    days: { type: 'string', default: '10' },
    training: { type: 'string', default: '30' },
    'busy-stations': { type: 'string', default: '5' },
    seed: { type: 'string', default: '1789' },
    workers: { type: 'string', default: '2' },
    out: { type: 'string', default: '.fieldbell/backtest' },
  },
});
const [stations, testDays, trainingDays] = [values.stations, values.days, values.training].map(Number);
const [busyStations, seed, workers] = [values['busy-stations'], values.seed, values.workers].map(Number);
const FAMILIES: readonly Family[] = ['open', 'closed'];
const FEWEST_LOADS = 4;
const MOST_LOADS = 25;
const POOLED_LOADS = 50;
/** Stations of the pooled run are others. */
const BUSY_NUMBERS_FROM = 1000;

const jobsOf = (count: number, one: (family: Family, index: number) => Partial<Job>): Job[] =>
  Array.from({ length: count }, (_, index) => index).flatMap((index) =>
    FAMILIES.map((family): Job => ({
      family,
      number: index,
      ownLoads: POOLED_LOADS,
      seed: seed ?? 0,
      trainingDays: trainingDays ?? 0,
      testDays: testDays ?? 0,
      sets: 'no counts',
      example: false,
      ...one(family, index),
    })),
  );

const few = jobsOf(stations ?? 0, (family, index) => ({
  ownLoads: Math.round(
    FEWEST_LOADS + ((MOST_LOADS - FEWEST_LOADS) * (index + 0.5)) / Math.max(1, stations ?? 1),
  ),
  sets: 'all',
  example: family === 'open',
}));
const pooled = jobsOf(busyStations ?? 0, (_, index) => ({ number: BUSY_NUMBERS_FROM + index }));

const runAll = (jobs: readonly Job[]): Promise<Season[]> =>
  new Promise((resolve, reject) => {
    const seasons: Season[] = [];
    const left = jobs.map((job, index) => ({ job, index })).reverse();
    let done = 0;
    const begin = (): void => {
      const worker = new Worker(new URL('worker.ts', import.meta.url));
      let current = left.pop();
      if (current === undefined) {
        void worker.terminate();
        return;
      }
      worker.postMessage(current.job);
      worker.on('error', reject);
      worker.on('message', (season: Season) => {
        if (current !== undefined) seasons[current.index] = season;
        done += 1;
        process.stderr.write(`\r${done} of ${jobs.length} seasons`);
        current = left.pop();
        if (current !== undefined) worker.postMessage(current.job);
        else void worker.terminate();
        if (done === jobs.length) resolve(seasons);
      });
    };
    for (let worker = 0; worker < Math.max(1, workers ?? 1); worker += 1) begin();
  });

setPriority(constants.priority.PRIORITY_BELOW_NORMAL);
const begunMs = performance.now();
const seasons = await runAll([...few, ...pooled]);
process.stderr.write('\n');
const fewSeasons = seasons.slice(0, few.length);
const scored = fewSeasons.flatMap((season) => season.scored);
const pooledScored = seasons.slice(few.length).flatMap((season) => season.scored);

const groups = (all: readonly Scored[]): [string, Scored[]][] => [
  ['both families', [...all]],
  ...FAMILIES.map((family): [string, Scored[]] => [family, all.filter((one) => one.family === family)]),
];
const print = (text: string): void => {
  process.stdout.write(`${text}\n`);
};
const days = new Set(scored.map(({ day }) => day)).size;
const pooledDays = new Set(pooledScored.map(({ day }) => day)).size;
print(
  `Seed ${seed}: ${days} unseen days of ${few.length} stations with ${FEWEST_LOADS}-${MOST_LOADS} loads seen a day, ` +
    `${pooledDays} of ${pooled.length} stations with ${POOLED_LOADS}; ${trainingDays} earlier days of each. ` +
    `${Math.round((performance.now() - begunMs) / 1000)} s.`,
);
const plain = scored.filter(({ set }) => set === PLAIN);
for (const [name, group] of groups(plain))
  print(
    `\n## No head counts, ${FEWEST_LOADS}-${MOST_LOADS} loads: ${name}\n\n${ruleTable(group, group)}\n${gainLine(group)}`,
  );
for (const [name, group] of groups(pooledScored))
  print(
    `\n## No head counts, ${POOLED_LOADS} loads: ${name}\n\n${ruleTable(group, group)}\n${gainLine(group)}`,
  );
for (const set of [COUNTS_30, COUNTS_60])
  for (const [name, group] of groups(scored))
    print(
      `\n## ${set}, ${FEWEST_LOADS}-${MOST_LOADS} loads: ${name}\n\n` +
        ruleTable(
          group.filter((one) => one.set === set),
          group.filter((one) => one.set === PLAIN),
        ),
    );
print(`\n## One assumption wrong, both families\n\n${wrongTable(scored)}`);
print(`\n## Goals\n\n${goalTable(scored, pooledScored)}`);

mkdirSync(values.out, { recursive: true });
const save = (name: string, svg: string): void => {
  writeFileSync(join(values.out, `${name}.svg`), svg);
  writeFileSync(join(values.out, `${name}.png`), pngOf(svg));
};
save('error-by-lead', leadPicture(plain));
const example = fewSeasons.find((season) => season.example !== null)?.example ?? null;
if (example !== null) save('example-day', examplePicture(example));
print(`\nPictures are in ${values.out}.`);
