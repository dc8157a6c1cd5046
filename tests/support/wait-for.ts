import { setTimeout as sleep } from 'node:timers/promises';

const LOOK_EVERY_MS = 5;

/** Looks until `look` finds something (not undefined, null or false); fails with `what` after `deadlineMs`. */
export const waitFor = async <T>(
  what: string,
  look: () => T | undefined | null | false | Promise<T | undefined | null | false>,
  deadlineMs = 10_000,
): Promise<T> => {
  const endMs = performance.now() + deadlineMs;
  for (;;) {
    const found = await look();
    if (found !== undefined && found !== null && found !== false) return found;
    if (performance.now() > endMs) throw new Error(`After ${deadlineMs} ms there is still no ${what}.`);
    await sleep(LOOK_EVERY_MS);
  }
};
