/** What weather and time ask for: notices are raised, moved and ended, and people are reminded of them. */
import { withFacts } from '../../core/harvest/fold.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import { timePasses } from '../../core/notices/tells.ts';
import type { EpochMs } from '../../core/units.ts';
import type { Page } from '../../ports/book.ts';
import type { Sayer } from '../host/bot.ts';
import { shownChanges } from '../out/shown-changes.ts';
import { outgoing, outgoingOf } from '../out/outgoing.ts';
import { withReach } from '../out/undelivered.ts';
import { alarmName } from './alarms.ts';

/**
 * Raises what weather and time ask for at `nowMs`, sends it, and sets the alarm for the next look. `before`: the harvest
 * with the facts that this page has just been given.
 */
export const lookAtWeather = async (
  page: Page,
  bot: Sayer,
  before: Harvest,
  nowMs: EpochMs,
): Promise<void> => {
  const { clock } = bot;
  const passed = timePasses(before, clock, nowMs);
  const { facts: raised, tells } = passed;
  const harvest = withFacts(before, raised);
  if (raised.length > 0) await page.write(raised);
  const messages = [
    ...outgoingOf(raised, harvest, nowMs, bot),
    ...outgoing(
      await withReach(page, bot, harvest.roster, tells),
      { cause: `timer:${nowMs}`, origin: null, harvest, nowMs },
      bot,
    ),
  ];
  const cause = raised.at(-1)?.cause ?? `timer:${nowMs}`;
  const boards = await shownChanges(page, bot, { before, after: harvest, cause, nowMs, messages });
  await page.enqueue([...messages, ...boards]);
  // Asked again: what was just raised must be confirmed, and may end at a time of its own.
  const { wakeAtMs } = raised.length > 0 ? timePasses(harvest, clock, nowMs) : passed;
  await page.wakeAt(alarmName({ is: 'weather' }), wakeAtMs);
};
