/** Forecasts come in and time passes: notices are raised, moved and ended. */
import { withFacts } from '../../core/harvest/fold.ts';
import { timePasses } from '../../core/notices/tells.ts';
import type { Fact, FactHeader, FactOf } from '../../core/book/facts.ts';
import { isTold, standingFactsOf } from '../../core/book/standing.ts';
import { nextOutlookMs, outlookTells } from '../../core/answers/outlooks.ts';
import { stationById } from '../../core/roster.ts';
import type { StationId } from '../../core/roster.ts';
import type { EpochMs, Fahrenheit } from '../../core/units.ts';
import { sameAlerts, saysNothingNew } from '../../core/weather/kept-forecast.ts';
import type { Page } from '../../ports/book.ts';
import { LINE_ALARM, lookAtMs, lookAtLine } from './line-look.ts';
import { boardChanges } from '../out/boards.ts';
import { outgoing, outgoingOf } from '../out/outgoing.ts';
import { harvestOn } from '../host/operation.ts';
import type { Running } from '../host/operation.ts';
import type { Harvest } from '../../core/harvest/harvest.ts';

const WEATHER_ALARM = 'weather';
const OUTLOOK_ALARM = 'outlook';

/**
 * Raises what time and weather ask for at `nowMs`, tells it, and sets the alarm for the next look. `before`: the day with
 * the facts that this page has just been given.
 */
export const lookAtWeatherNow = async (
  page: Page,
  running: Running,
  nowMs: EpochMs,
  before: Harvest,
): Promise<void> => {
  const { clock } = running;
  const passed = timePasses(before, clock, nowMs);
  const { facts: raised, tells } = passed;
  const harvest = withFacts(before, raised);
  if (raised.length > 0) await page.write(raised);
  const messages = [
    ...outgoingOf(raised, harvest, running, nowMs),
    ...outgoing(tells, `timer:${nowMs}`, null, harvest, running, nowMs),
  ];
  const cause = raised.at(-1)?.cause ?? `timer:${nowMs}`;
  const boards = await boardChanges(page, running, { before, after: harvest, cause, nowMs, messages });
  await page.enqueue([...messages, ...boards]);
  // Asked anew: what was just raised is to be confirmed, and may be over at a time of its own.
  const { wakeAtMs } = raised.length > 0 ? timePasses(harvest, clock, nowMs) : passed;
  await page.wakeAt(WEATHER_ALARM, wakeAtMs);
};

/**
 * What a person says of roots, crowns, the station or its limits may stop the dig, or start it again, at once; an order is
 * to be confirmed.
 */
export const bearsOnWeather = (fact: Fact): boolean => {
  switch (fact.kind) {
    case 'root-measured':
    case 'station-reported':
    case 'crown-checked':
    case 'notice-raised':
    case 'list-changed':
    case 'entry-withdrawn':
    case 'entry-corrected':
      return true;
    case 'truck-reported':
    case 'ticket-booked':
    case 'line-seen':
    case 'pilers-seen':
    case 'field-dug':
    case 'truck-taken':
    case 'forecast-issued':
    case 'air-observed':
    case 'notice-seen':
    case 'line-warned':
    case 'shift-told':
    case 'emergency-called':
    case 'stranger-heard':
    case 'language-chosen':
      return false;
  }
};

export interface ForecastHeard extends Omit<FactOf<'forecast-issued'>, keyof FactHeader | 'kind'> {
  heardMs: EpochMs;
}

type ForecastFact = FactOf<'forecast-issued'>;

const isForecast = (fact: Fact): fact is ForecastFact => fact.kind === 'forecast-issued';

/** The fact of a forecast; null where nothing is new. The same issue may come again with other alerts. */
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
  running: Running,
  forecast: ForecastHeard,
): Promise<{ refused: 'unknown-place' } | null> => {
  const refused = await running.book.inOneGo(running.roster.operation, async (page) => {
    const harvest = await harvestOn(running, page);
    if (!stationById(harvest.roster, forecast.place)) return { refused: 'unknown-place' as const };
    const fact = forecastFact(forecast, harvest);
    const before = harvest.forecasts.get(forecast.place) ?? [];
    const news = fact && !saysNothingNew(fact, before, forecast.heardMs) ? [fact] : [];
    await page.write(news);
    const after = withFacts(harvest, news);
    await lookAtWeatherNow(page, running, forecast.heardMs, after);
    await setOutlook(page, running, forecast.heardMs, after);
    return null;
  });
  running.wakeDeliverer();
  return refused;
};

/** What a weather station measured near that place; written once, however often it is told. */
export const hearObservation = (
  running: Running,
  place: StationId,
  { atMs, temperatureF }: { atMs: EpochMs; temperatureF: Fahrenheit },
  heardMs: EpochMs,
): Promise<void> =>
  running.book.inOneGo(running.roster.operation, async (page) => {
    const cause = `observed:${place}:${atMs}`;
    const { standing } = await harvestOn(running, page);
    if (isTold(standing, cause)) return;
    const header = { id: `${cause}#0`, cause, atMs, sentMs: atMs, heardMs, by: null, timeStated: false };
    await page.write([{ ...header, kind: 'air-observed', place, temperatureF }]);
  });

/** Each has an alarm of its own, so that a forecast that comes while one is due does not move that on to the next. */
const outlookAlarm = (dueMs: EpochMs): string => `${OUTLOOK_ALARM} ${dueMs}`;

const setOutlook = async (page: Page, running: Running, nowMs: EpochMs, harvest: Harvest): Promise<void> => {
  const dueMs = nextOutlookMs(harvest, running.clock, nowMs);
  if (dueMs !== null) await page.wakeAt(outlookAlarm(dueMs), dueMs);
};

/** The evening's outlook or the morning's plan, and the alarm for the next one. */
const tellOutlook = async (page: Page, running: Running, nowMs: EpochMs, harvest: Harvest): Promise<void> => {
  const tells = outlookTells(harvest, running.clock, nowMs);
  await page.enqueue(outgoing(tells, `timer:outlook:${nowMs}`, null, harvest, running, nowMs));
  await page.wakeAt(outlookAlarm(nowMs), null);
  await setOutlook(page, running, nowMs, harvest);
};

/** What each alarm looks at; any other is the weather's. */
const LOOKS: Partial<Record<string, typeof lookAtWeatherNow>> = {
  [LINE_ALARM]: lookAtLine,
  [OUTLOOK_ALARM]: tellOutlook,
};

/** Time passes: all alarms due by `nowMs` go off in order, each at its own time. */
export const tick = async (running: Running, nowMs: EpochMs): Promise<void> => {
  const wentOff = await running.book.inOneGo(running.roster.operation, async (page) => {
    const alarm = await page.nextAlarm(nowMs);
    if (alarm === null) return false;
    const look = LOOKS[alarm.name.split(' ')[0] ?? ''] ?? lookAtWeatherNow;
    const atMs = alarm.name === LINE_ALARM ? lookAtMs(alarm.dueMs, nowMs) : alarm.dueMs;
    await look(page, running, atMs, await harvestOn(running, page));
    return true;
  });
  if (!wentOff) return;
  running.wakeDeliverer();
  await tick(running, nowMs);
};
