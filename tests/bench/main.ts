/**
 * What the bot costs over a season, against its aims: `npm run bench`. The figures of the last run stand in
 * figures.json. Ratios are of processor time, which other work on the machine disturbs less than the clock on the wall.
 */
import { writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { rounded } from './cost.ts';
import { fleetCost } from './fleet.ts';
import { messageCost, stopBesideForecast, undosCost } from './message.ts';
import type { MessageCost } from './message.ts';
import { replayCost } from './replayed.ts';
import { startEmbedded, startOnPostgres } from './start.ts';

const SEASON_DAYS = 60;
const REPLAYED_DAYS = 30;

interface Figure {
  of: string;
  figure: number;
  unit: string;
  aim: number;
}

const figures: Figure[] = [];
const note = (of: string, figure: number, unit: string, aim: number): void => {
  figures.push({ of, figure: rounded(figure), unit, aim });
  console.log(`${of}: ${rounded(figure)} ${unit} (aim: at most ${aim})`);
};

const noteMessage = (of: string, { message, floor, ratio }: MessageCost, aim: number): void => {
  const [took, least] = [rounded(message.cpuMs, 1), rounded(floor.cpuMs, 1)];
  console.log(`${of}: ${took} ms, floor ${least} ms, by the wall clock ${rounded(ratio.wall)} times`);
  note(of, ratio.cpu, 'times the floor', aim);
};

for (const days of [1, 30, SEASON_DAYS])
  noteMessage(`A message with ${days} days behind it`, await messageCost(days, false), 3);
const plain = figures.map(({ figure }) => figure);
note('Spread of the three', (Math.max(...plain) / Math.min(...plain) - 1) * 100, '%', 10);
for (const days of [1, 30, SEASON_DAYS])
  noteMessage(`A message with ${days} days behind it, an undo in each`, await messageCost(days, true), 3.3);
const undos = await undosCost(SEASON_DAYS);
note(`390 times "undo" in a message, ${SEASON_DAYS} days behind it`, undos.cpuMs, 'ms', 50);
const stop = await stopBesideForecast(SEASON_DAYS);
note('A stop order beside a forecast that hangs', stop.wallMs, 'ms', 100);
const fleet = await fleetCost(SEASON_DAYS);
console.log(`An answer about the fleet, the first of a process: ${rounded(fleet.first.cpuMs, 1)} ms`);
note('An answer about the fleet once the line is forecast', fleet.cpuMs, 'ms', 20);
const embedded = await startEmbedded(SEASON_DAYS);
note(`Start on the embedded book of ${SEASON_DAYS} days`, embedded.startMs / 1000, 's', 4);
note('Memory after a season, embedded', embedded.rssMb, 'MiB', 350);
const postgres = await startOnPostgres(SEASON_DAYS);
if (postgres) {
  note(`Start on a Postgres book of ${SEASON_DAYS} days`, postgres.startMs / 1000, 's', 2);
  note('Memory after a season, Postgres', postgres.rssMb, 'MiB', 200);
} else console.log('No Postgres here: its start and memory are left out.');
note('A replayed day of 25 loads without questions', await replayCost(REPLAYED_DAYS), 's of processor', 1);

const ran = { loadAverage: rounded(loadavg()[0] ?? 0, 1), node: process.version, facts: embedded.facts };
writeFileSync(new URL('./figures.json', import.meta.url), `${JSON.stringify({ ran, figures }, null, 2)}\n`);
