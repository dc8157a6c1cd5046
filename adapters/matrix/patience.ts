import { reasonOf } from '../../src/core/reason.ts';
import { setTimeout as sleep } from 'node:timers/promises';
import type { LogLine } from '../../src/ports/log.ts';
import { failureOf, isLoggedOut } from './failure.ts';

const FIRST_WAIT_MS = 500;
const LONGEST_WAIT_MS = 10_000;

/** Wait before the next try: 0.5, 1, 2 ... at most 10 s. Grade: chosen. */
export const backoffMs = (failures: number): number =>
  Math.min(FIRST_WAIT_MS * 2 ** (failures - 1), LONGEST_WAIT_MS);

/** Resolves after the time; rejects when the signal is aborted. */
export const pause = async (ms: number, closing: AbortSignal): Promise<void> => {
  await sleep(ms, undefined, { signal: closing });
};

export interface RetryContext {
  closing: AbortSignal;
  log: LogLine;
}

/**
 * Repeats the work until it succeeds, waiting in between as the server asks. Rejects only if the work can never succeed,
 * if the bot was logged out, or when closing.
 */
export const persistently = async <T>(
  { closing, log }: RetryContext,
  what: string,
  work: () => Promise<T>,
): Promise<T> => {
  for (let failures = 1; ; failures += 1) {
    closing.throwIfAborted();
    try {
      return await work();
    } catch (error) {
      const failure = failureOf(error);
      if (closing.aborted || failure.result === 'gone' || isLoggedOut(error)) throw error;
      const waitMs = failure.result === 'retry-after' ? failure.waitMs : backoffMs(failures);
      log('warn', `${what} failed: ${reasonOf(error)}. Trying again in ${waitMs / 1000} s.`);
      await pause(waitMs, closing);
    }
  }
};
