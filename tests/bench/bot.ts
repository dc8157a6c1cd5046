/**
 * A bot of its own for start.ts: starts on the book of that place, hears one day more, and prints what both took as a
 * line of JSON.
 */
import { goLive } from '../../src/command/live.ts';
import { operate } from '../../src/command/operate.ts';
import { hear } from '../../src/run/in/hear.ts';
import type { DatabasePlace } from '../../src/store/database.ts';
import { sampleRoster } from '../support/roster.ts';
import { MESSAGES_A_DAY, messageOf } from './season.ts';

const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
const given = process.argv[2];
if (given === undefined) throw new Error('Give the place and the day as JSON.');
const { place, dayMs } = JSON.parse(given) as { place: DatabasePlace; dayMs: number };

const means = { platforms: ['local'], log: quiet, wakeDeliverer: () => undefined };
const operation = await operate(sampleRoster, place, means);
// Since the process began: Node itself, the modules, the database, the facts and their fold.
const startMs = performance.now();
const facts = operation.bot.known.seq;
const live = goLive(operation, [], null, quiet);
for (let step = 0; step < MESSAGES_A_DAY; step += 1) await hear(operation.bot, messageOf(step, dayMs));
const rssMb = process.memoryUsage().rss / 2 ** 20;
console.log(JSON.stringify({ startMs, rssMb, facts }));
await live.stop();
