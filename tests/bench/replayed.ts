/**
 * Processor time of a replayed season in which nobody asks anything and no truck stands in the line for so long that the
 * bot asks itself: what is left is the book.
 */
import { replay } from '../../src/command/replay.ts';
import { sampleRoster } from '../support/roster.ts';
import { cost } from './cost.ts';
import { DAY_MS, messageOf } from './season.ts';

const LOADS_A_DAY = 25;
const MESSAGES_A_LOAD = 5;
const START_MS = Date.parse('2026-09-20T05:00:00-06:00');
const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };

async function* seasonOf(days: number): AsyncIterable<string> {
  for (let day = 0; day < days; day += 1)
    for (let step = 0; step < LOADS_A_DAY * MESSAGES_A_LOAD; step += 1) {
      const { id, user, room, sentMs, event } = messageOf(step, START_MS + day * DAY_MS);
      const text = event.is === 'message' ? event.text : '';
      yield JSON.stringify({ at: new Date(sentMs).toISOString(), id, from: user, room, text });
    }
}

/** Seconds of processor time a day. */
export const replayCost = async (days: number): Promise<number> => {
  const faults: string[] = [];
  const { cpuMs } = await cost(() =>
    replay({
      lines: seasonOf(days),
      roster: sampleRoster,
      place: { memory: true },
      print: () => undefined,
      complain: (fault) => faults.push(fault),
      log: quiet,
    }),
  );
  if (faults.length > 0) throw new Error(faults.join('\n'));
  return cpuMs / 1000 / days;
};
