/** Forecasts and measured air come in. */
import type { Fact, FactHeader, FactOf } from '../../core/book/facts.ts';
import { isTold, standingFactsOf } from '../../core/book/standing.ts';
import { withFacts } from '../../core/harvest/fold.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';
import { stationById } from '../../core/roster.ts';
import type { StationId } from '../../core/roster.ts';
import type { EpochMs, Fahrenheit } from '../../core/units.ts';
import { sameAlerts, saysNothingNew } from '../../core/weather/kept-forecast.ts';
import { harvestOn } from '../host/bot.ts';
import type { Bot } from '../host/bot.ts';
import { setOutlook } from '../time/outlook-look.ts';
import { lookAtWeather } from '../time/weather-look.ts';

export interface ForecastHeard extends Omit<FactOf<'forecast-issued'>, keyof FactHeader | 'kind'> {
  heardMs: EpochMs;
}

type ForecastFact = FactOf<'forecast-issued'>;

const isForecast = (fact: Fact): fact is ForecastFact => fact.kind === 'forecast-issued';

/** The fact of a forecast; null if nothing is new. The same issue may come again with other alerts. */
const forecastFact = (forecast: ForecastHeard, { standing }: Harvest): ForecastFact | null => {
  const { heardMs, ...issued } = forecast;
  const cause = `forecast:${issued.place}:${issued.issuedMs}`;
  const known = standingFactsOf(standing, cause).filter(isForecast);
  const newest = known.at(-1);
  if (newest && sameAlerts(issued.freezeAlerts, newest.freezeAlerts)) return null;
  const times = { atMs: heardMs, sentMs: heardMs, heardMs };
  const id = `${cause}#${known.length}`;
  return { id, cause, ...times, by: null, timeStated: false, kind: 'forecast-issued', ...issued };
};

/**
 * A forecast comes in. The same issue twice changes nothing, unless its alerts have changed, nor does a newer one that
 * says nothing new; one for a place that is not on the list is refused.
 */
export const hearForecast = async (
  bot: Bot,
  forecast: ForecastHeard,
): Promise<{ refused: 'unknown-place' } | null> => {
  const { place, heardMs } = forecast;
  const refused = await bot.book.inOneGo(bot.roster.operation, async (page) => {
    const harvest = await harvestOn(page, bot);
    if (!stationById(harvest.roster, place)) return { refused: 'unknown-place' as const };
    const fact = forecastFact(forecast, harvest);
    const before = harvest.forecasts.get(place) ?? [];
    const news = fact && !saysNothingNew(fact, before, heardMs) ? [fact] : [];
    await page.write(news);
    const after = withFacts(harvest, news);
    await lookAtWeather(page, bot, after, heardMs);
    await setOutlook(page, bot, after, heardMs);
    return null;
  });
  bot.wakeDeliverer();
  return refused;
};

/** What a weather station measured near that place; written once, however often it comes. It may stop the dig. */
export const hearObservation = async (
  bot: Bot,
  place: StationId,
  { atMs, temperatureF }: { atMs: EpochMs; temperatureF: Fahrenheit },
  heardMs: EpochMs,
): Promise<void> => {
  await bot.book.inOneGo(bot.roster.operation, async (page) => {
    const cause = `observed:${place}:${atMs}`;
    const harvest = await harvestOn(page, bot);
    if (isTold(harvest.standing, cause)) return;
    const header = { id: `${cause}#0`, cause, atMs, sentMs: atMs, heardMs, by: null, timeStated: false };
    const fact: Fact = { ...header, kind: 'air-observed', place, temperatureF };
    await page.write([fact]);
    await lookAtWeather(page, bot, withFacts(harvest, [fact]), heardMs);
  });
  bot.wakeDeliverer();
};
