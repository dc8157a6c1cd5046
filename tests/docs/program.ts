/** What the documents are held against. The only file here that knows where things are in the program. */
export { rendered } from '../../adapters/local/render.ts';
export { drawPicture } from '../../adapters/picture/resvg.ts';
export { learnedRankers } from '../../src/command/learned-ranker.ts';
export { logTo } from '../../src/command/log.ts';
export { operate } from '../../src/command/operate.ts';
export { parseReplayLine } from '../../src/command/replay-line.ts';
export { playLine } from '../../src/command/replay.ts';
export { personById } from '../../src/core/roster.ts';
export type { Roster } from '../../src/core/roster.ts';
export type { Claimed } from '../../src/ports/outbox.ts';
export { hearWords } from '../../src/reading/ear.ts';
export { deliver } from '../../src/run/out/deliver.ts';
export { isZone, zoneClock } from '../../src/run/host/zone-clock.ts';
export { dataOf } from '../../src/saying/data.ts';
export { loadSettings } from '../../src/settings/load.ts';
export { tellings } from '../support/tellings.ts';

// From the root of the repository.
export const MAIN = 'src/main.ts';
export const DEMO_DAY = 'src/command/demo-day.ndjson';
export const SAMPLE_OPERATION = 'deploy/operation.yaml';
/** Where environment variables are read that are no settings of the bot. */
export const OTHER_VARIABLES = ['src/main.ts', 'deploy/compose.yaml', 'tests/support/synapse/root.ts'];
