import { webApi } from '@slack/bolt';
import { MS_PER_SECOND } from '../../src/core/units.ts';
import type { LogLine } from '../../src/ports/log.ts';
import { LATELY_MS, SHIFT_MS } from './backfill.ts';
import { reasonOf } from './failure.ts';
import { backoffMs, pause } from './patience.ts';

/** Slack's own wait takes precedence. */
const waitMs = (error: unknown, failures: number): number =>
  error instanceof webApi.WebAPIRateLimitedError ? error.retryAfter * MS_PER_SECOND : backoffMs(failures + 1);

/**
 * Reads missed messages after every connection and, in between, every `everyMs`; a failed reading is repeated until it
 * succeeds.
 */
export const sweeper = (
  readUp: (lookBackMs: number) => Promise<void>,
  everyMs: number,
  log: LogLine,
  closing: AbortSignal,
) => {
  let hasGap = false;
  let nap = new AbortController();

  const sweep = async (lookBackMs: number): Promise<unknown> => {
    try {
      await readUp(lookBackMs);
      return null;
    } catch (error) {
      log('warn', `Missed Slack messages can't be read yet: ${reasonOf(error)}. Trying again.`);
      return error;
    }
  };

  const isOpen = (): boolean => !closing.aborted;

  const run = async (): Promise<void> => {
    let lookBackMs = LATELY_MS;
    for (let failures = 0, error: unknown = null; isOpen();) {
      const restMs = error === null ? everyMs : waitMs(error, failures);
      if (!hasGap || error !== null) await pause(restMs, AbortSignal.any([closing, nap.signal]));
      if (!isOpen()) return;
      nap = new AbortController();
      lookBackMs = hasGap ? SHIFT_MS : lookBackMs;
      hasGap = false;
      error = await sweep(lookBackMs);
      failures = error === null ? 0 : failures + 1;
      lookBackMs = error === null ? LATELY_MS : lookBackMs;
    }
  };

  return {
    /** Runs until closing. */
    run,
    /** There is a connection again after a gap. */
    connected: (): void => {
      hasGap = true;
      nap.abort();
    },
  };
};
