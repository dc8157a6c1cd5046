import { webApi } from '@slack/bolt';
import { MS_PER_SECOND } from '../../src/core/units.ts';
import type { LogLine } from '../../src/ports/log.ts';
import { LATELY_MS, SHIFT_MS } from './backfill.ts';
import { reasonOf } from './failure.ts';
import { backoffMs, pause } from './patience.ts';

/** Slack's own wish to wait comes first. */
const waitMs = (error: unknown, failures: number): number =>
  error instanceof webApi.WebAPIRateLimitedError ? error.retryAfter * MS_PER_SECOND : backoffMs(failures + 1);

/**
 * Reads up after every connection and, in between, every `everyMs`; a failed reading is tried again until it succeeds.
 */
export const sweeper = (
  readUp: (lookBackMs: number) => Promise<void>,
  everyMs: number,
  log: LogLine,
  closing: AbortSignal,
) => {
  let deaf = false;
  let nap = new AbortController();

  const sweep = async (lookBackMs: number): Promise<unknown> => {
    try {
      await readUp(lookBackMs);
      return null;
    } catch (error) {
      log('warn', `Missed Slack messages can't be read yet: ${reasonOf(error)}. It is tried again.`);
      return error;
    }
  };

  const isOpen = (): boolean => !closing.aborted;

  const run = async (): Promise<void> => {
    let lookBackMs = LATELY_MS;
    for (let failures = 0, error: unknown = null; isOpen();) {
      const restMs = error === null ? everyMs : waitMs(error, failures);
      if (!deaf || error !== null) await pause(restMs, AbortSignal.any([closing, nap.signal]));
      if (!isOpen()) return;
      nap = new AbortController();
      lookBackMs = deaf ? SHIFT_MS : lookBackMs;
      deaf = false;
      error = await sweep(lookBackMs);
      failures = error === null ? 0 : failures + 1;
      lookBackMs = error === null ? LATELY_MS : lookBackMs;
    }
  };

  return {
    /** Runs until closing. */
    run,
    /** A connection stands again after a time of deafness. */
    connected: (): void => {
      deaf = true;
      nap.abort();
    },
  };
};
