/** Tells grower and foreman when forecasts do not come, and when they come again. */
import { withFacts } from '../../core/harvest/fold.ts';
import { forecastNews } from '../../core/notices/forecast-gaps.ts';
import type { ForecastSupply } from '../../core/notices/forecast-gaps.ts';
import type { StationId } from '../../core/roster.ts';
import { MS_PER_MINUTE } from '../../core/units.ts';
import type { EpochMs } from '../../core/units.ts';
import { harvestOn } from '../host/bot.ts';
import type { Bot } from '../host/bot.ts';
import { shownChanges } from '../out/shown-changes.ts';
import { outgoingOf } from '../out/outgoing.ts';

/** True once in each minute: forecasts come by the hour, and to look means to open the book. */
export const onceAMinute = (): ((nowMs: EpochMs) => boolean) => {
  const state = { lookedMs: -Infinity };
  return (nowMs) => {
    if (Math.abs(nowMs - state.lookedMs) < MS_PER_MINUTE) return false;
    state.lookedMs = nowMs;
    return true;
  };
};

/** Tells what is to be told now of forecasts that do not come. */
export const watchForecasts = async (
  bot: Bot,
  supplyOf: (place: StationId) => ForecastSupply | null,
  nowMs: EpochMs,
): Promise<void> => {
  const told = await bot.book.inOneGo(bot.roster.operation, async (page) => {
    const before = await harvestOn(page, bot);
    const facts = forecastNews(before, bot.clock, nowMs, supplyOf);
    if (facts.length === 0) return 0;
    const after = withFacts(before, facts);
    await page.write(facts);
    const messages = outgoingOf(facts, after, nowMs, bot);
    const cause = facts[0]?.cause ?? `timer:${nowMs}`;
    const boards = await shownChanges(page, bot, { before, after, cause, nowMs, messages });
    await page.enqueue([...messages, ...boards]);
    return facts.length;
  });
  if (told > 0) bot.wakeDeliverer();
};
