/** The periodic look at the lines where trucks of ours stand. */
import type { Fact } from '../../core/book/facts.ts';
import { stirsLine } from '../../core/book/kinds.ts';
import { nextLookMs, lookAtLines } from '../../core/notices/line-look.ts';
import { addMinutes } from '../../core/units.ts';
import type { EpochMs, Minutes } from '../../core/units.ts';
import type { Page } from '../../ports/book.ts';
import { withWaitForecasts } from '../line/service.ts';
import { withSharedTickets } from '../line/shared-tickets.ts';
import { outgoingOf } from '../out/outgoing.ts';
import { withFacts } from '../../core/harvest/fold.ts';
import type { Running } from '../host/operation.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';

export const LINE_ALARM = 'line';

/** After these facts the lines are looked at soon. */
export const wakeForLine = async (page: Page, news: readonly Fact[], nowMs: EpochMs): Promise<void> => {
  if (news.some(stirsLine)) await page.wakeAt(LINE_ALARM, nextLookMs(nowMs));
};

/** A line of an hour ago is past: after a stop of the bot the looks that were missed before that are left out. */
const OLDEST_LOOK_MIN: Minutes = 60;

export const lookAtMs = (dueMs: EpochMs, nowMs: EpochMs): EpochMs =>
  Math.max(dueMs, nowMs - addMinutes(0, OLDEST_LOOK_MIN));

interface Look {
  facts: readonly Fact[];
  wakeAtMs: EpochMs | null;
}

/** A fault in it must not stand in the way of the alarms that stop and start the dig: it is logged, and tried again. */
const lookSafely = async (running: Running, nowMs: EpochMs, before: Harvest): Promise<Look> => {
  try {
    return await withWaitForecasts(running, before, nowMs, (forecastWait) =>
      lookAtLines(before, running.clock, nowMs, forecastWait),
    );
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    running.log.error({ why }, 'The line could not be looked at; it is looked at again in five minutes');
    return { facts: [], wakeAtMs: nextLookMs(nowMs) };
  }
};

/** Notes and tells what is worth a word at `nowMs`, and sets the alarm for the next look. */
export const lookAtLine = async (
  page: Page,
  running: Running,
  nowMs: EpochMs,
  before: Harvest,
): Promise<void> => {
  const { facts, wakeAtMs } = await lookSafely(
    running,
    nowMs,
    await withSharedTickets(running, page, before, nowMs),
  );
  if (facts.length > 0) {
    const harvest = withFacts(before, facts);
    await page.write(facts);
    await page.enqueue(outgoingOf(facts, harvest, running, nowMs));
  }
  await page.wakeAt(LINE_ALARM, wakeAtMs);
};
