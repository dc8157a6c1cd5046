/** How long a bot takes to start on the book of a season, and how much memory it holds after a day on it. */
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { operate } from '../../src/command/operate.ts';
import type { DatabasePlace } from '../../src/store/database.ts';
import { startPostgres } from '../support/postgres.ts';
import { sampleRoster } from '../support/roster.ts';
import { median } from './cost.ts';
import { DAY_MS, MINUTE_MS, writeSeason } from './season.ts';

const BOT = new URL('./bot.ts', import.meta.url).pathname;
/** As `npm start` and the service have it: what is read at the start would else leave 100 MiB of room behind. */
const FLAGS = ['--max-semi-space-size=4'];
const STARTS = 3;
const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };

export interface StartCost {
  facts: number;
  startMs: number;
  rssMb: number;
}

/** The season ends yesterday, so that the bot learns its line from it as from its own. */
const today = (): number => Math.floor(Date.now() / DAY_MS) * DAY_MS + 300 * MINUTE_MS - DAY_MS;

const startOn = async (place: DatabasePlace, days: number): Promise<StartCost> => {
  const dayMs = today();
  const means = { platforms: ['local'], log: quiet, wakeDeliverer: () => undefined };
  const operation = await operate(sampleRoster, place, means);
  await writeSeason(operation.bot, dayMs - DAY_MS, days, false);
  await operation.close();
  const starts: StartCost[] = [];
  for (let nth = 0; nth < STARTS; nth += 1) {
    const given = JSON.stringify({ place, dayMs: dayMs + nth });
    const { stdout } = await promisify(execFile)(process.execPath, [...FLAGS, BOT, given]);
    starts.push(JSON.parse(stdout) as StartCost);
  }
  return {
    facts: starts[0]?.facts ?? 0,
    startMs: median(starts.map(({ startMs }) => startMs)),
    rssMb: median(starts.map(({ rssMb }) => rssMb)),
  };
};

export const startEmbedded = async (days: number): Promise<StartCost> => {
  const directory = mkdtempSync(join(tmpdir(), 'fieldbell-bench-'));
  try {
    return await startOn({ embedded: directory }, days);
  } finally {
    rmSync(directory, { recursive: true });
  }
};

/** Null = no Postgres here. */
export const startOnPostgres = async (days: number): Promise<StartCost | null> => {
  const server = await startPostgres();
  if (server.missing !== null) return null;
  try {
    return await startOn({ url: await server.emptyDatabase() }, days);
  } finally {
    await server.stop();
  }
};
