/** The periodic look at the lines where trucks of ours stand. */
import type { Day } from '../core/day.ts';
import { tellsOf } from '../core/decide.ts';
import type { Fact } from '../core/facts.ts';
import { nextLookMs, watchLines } from '../core/line/watch.ts';
import type { EpochMs } from '../core/units.ts';
import type { Page } from '../ports/book.ts';
import { withForecasts } from './line-forecasts.ts';
import { outgoing } from './outgoing.ts';
import { dayOf } from './running.ts';
import type { Running } from './running.ts';

export const LINE_ALARM = 'line';

/** A truck has moved, or somebody has seen the line. */
const bearsOnLine = ({ kind }: Fact): boolean => kind === 'truck-reported' || kind === 'line-seen';

/** After these facts the lines are looked at soon. */
export const wakeForLine = async (page: Page, news: readonly Fact[], nowMs: EpochMs): Promise<void> => {
  if (news.some(bearsOnLine)) await page.wakeAt(LINE_ALARM, nextLookMs(nowMs));
};

/** Notes and tells what is worth a word at `nowMs`, and sets the alarm for the next look. */
export const watchLine = async (page: Page, running: Running, nowMs: EpochMs, before: Day): Promise<void> => {
  const { facts, wakeAtMs } = await withForecasts(running, before, nowMs, (forecastWait) =>
    watchLines(before, running.clock, nowMs, forecastWait),
  );
  if (facts.length > 0) {
    const day = dayOf(running, [...before.facts, ...facts]);
    await page.write(facts);
    await page.enqueue(
      facts.flatMap((fact) => outgoing(tellsOf(fact, day, running.clock), fact.cause, null, day, running, nowMs)),
    );
  }
  await page.wakeAt(LINE_ALARM, wakeAtMs);
};
