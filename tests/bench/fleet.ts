/** What the answer to "do we need another truck?" costs once the line is forecast, on the bot's own thread. */
import { answer, waitsNeeded } from '../../src/core/answers/answer.ts';
import { personById } from '../../src/core/roster.ts';
import { hear } from '../../src/run/in/hear.ts';
import { harvestOn } from '../../src/run/host/bot.ts';
import { forecastWaits } from '../../src/run/line/service.ts';
import { cost, median } from './cost.ts';
import type { Cost } from './cost.ts';
import { NEXT_DAY_MS, onSeason } from './message.ts';
import { MINUTE_MS, messageOf } from './season.ts';

const ROUNDS = 15;
/** Of the day's messages; then there is a line to follow. */
const HEARD = 200;
const ASKED_MIN = 600;

/** The first answer of a process, when its code is cold, and the median of some. */
export const fleetCost = (days: number): Promise<{ first: Cost; cpuMs: number }> =>
  onSeason(days, false, async (bot) => {
    for (let step = 0; step < HEARD; step += 1) await hear(bot, messageOf(step, NEXT_DAY_MS));
    const harvest = await bot.book.inOneGo(bot.roster.operation, (page) => harvestOn(page, bot));
    const asker = personById(harvest.roster, 'ruth');
    if (!asker) throw new Error('The sample has a grower.');
    const question = { about: 'fleet' } as const;
    const asking = { asker, nowMs: NEXT_DAY_MS + ASKED_MIN * MINUTE_MS, clock: bot.clock };
    const waits = await forecastWaits(bot, harvest, waitsNeeded(question, harvest, asking), asking.nowMs);
    const costs: Cost[] = [];
    for (let round = 0; round < ROUNDS; round += 1)
      costs.push(await cost(async () => answer(question, harvest, asking, waits)));
    const [first] = costs;
    if (!first) throw new Error('Nothing was asked.');
    return { first, cpuMs: median(costs.map(({ cpuMs }) => cpuMs)) };
  });
