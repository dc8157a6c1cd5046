/** The periodic look at the lines in which trucks of ours wait. */
import { lineWarnings, lookAtLines, nextLookMs } from '../../core/notices/line-look.ts';
import type { LineDoubt } from '../../core/notices/line-look.ts';
import { withFacts } from '../../core/harvest/fold.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import type { Fact } from '../../core/book/facts.ts';
import { stirsLine } from '../../core/book/kinds.ts';
import { addMinutes } from '../../core/units.ts';
import type { EpochMs, Minutes } from '../../core/units.ts';
import type { Page } from '../../ports/book.ts';
import { harvestOn } from '../host/bot.ts';
import type { Bot } from '../host/bot.ts';
import { reasonOf } from '../../core/reason.ts';
import { forecastWaits } from '../line/service.ts';
import { withSharedTickets } from '../line/shared-tickets.ts';
import { outgoingOf } from '../out/outgoing.ts';
import { alarmName } from './alarms.ts';

const LINE_ALARM = alarmName({ is: 'line' });

/** After these facts the lines are looked at soon. */
export const wakeForLine = async (page: Page, news: readonly Fact[], nowMs: EpochMs): Promise<void> => {
  if (news.some(stirsLine)) await page.wakeAt(LINE_ALARM, nextLookMs(nowMs));
};

/** A line of an hour ago is past: after a stop of the bot, looks missed before that are left out. */
const OLDEST_LOOK_MIN: Minutes = 60;

/** What may be worth a warning, as it was at `nowMs`. */
export interface LineLook {
  doubts: readonly LineDoubt[];
  harvest: Harvest;
  nowMs: EpochMs;
}

/** A fault here must not hold up the alarms that stop and start the dig. */
const logged = (bot: Pick<Bot, 'log'>, error: unknown): void => {
  bot.log.error(
    { why: reasonOf(error) },
    'The line could not be looked at; it is looked at again in five minutes',
  );
};

/** Looks at the lines and sets the alarm for the next look. Null = nothing is in doubt. */
export const lookAtLine = async (
  page: Page,
  bot: Bot,
  known: Harvest,
  { dueMs, nowMs: tickMs }: { dueMs: EpochMs; nowMs: EpochMs },
): Promise<LineLook | null> => {
  const nowMs = Math.max(dueMs, tickMs - addMinutes(0, OLDEST_LOOK_MIN));
  const harvest = await withSharedTickets(bot, page, known, nowMs);
  try {
    const { doubts, wakeAtMs } = lookAtLines(harvest, bot.clock, nowMs);
    await page.wakeAt(LINE_ALARM, wakeAtMs);
    return doubts.length === 0 ? null : { doubts, harvest, nowMs };
  } catch (error) {
    logged(bot, error);
    await page.wakeAt(LINE_ALARM, nextLookMs(nowMs));
    return null;
  }
};

/** Messages may have come in while the line was forecast: what is in doubt no longer is not warned of. */
const stillIn = (doubts: readonly LineDoubt[], fact: ReturnType<typeof lineWarnings>[number]): boolean =>
  doubts.some(({ station, about }) => station === fact.station && about === fact.warning.about);

/** Forecasts the lines, then writes and sends the warnings that they deserve. Never rejects. */
export const warnOfLine = async (bot: Bot, { doubts, harvest, nowMs }: LineLook): Promise<void> => {
  try {
    const needs = doubts.map(({ need }) => need);
    const warnings = lineWarnings(doubts, await forecastWaits(bot, harvest, needs, nowMs), nowMs);
    if (warnings.length === 0) return;
    await bot.book.inOneGo(bot.roster.operation, async (page) => {
      const before = await harvestOn(page, bot);
      const now = lookAtLines(before, bot.clock, nowMs).doubts;
      const facts = warnings.filter((fact) => stillIn(now, fact));
      await page.write(facts);
      await page.enqueue(outgoingOf(facts, withFacts(before, facts), nowMs, bot));
    });
    bot.wakeDeliverer();
  } catch (error) {
    logged(bot, error);
  }
};
