/** Forecasts that do not come: without them nobody is warned, so that must be news too. */
import type { FactOf, MissingForecast } from '../book/facts.ts';
import type { Harvest } from '../harvest/harvest.ts';
import type { StationId } from '../roster.ts';
import { MS_PER_MINUTE, minutesBetween } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { FORECAST_MAX_AGE_MIN } from '../weather/assumptions.ts';
import { forecastsBy } from '../weather/heat-basis.ts';
import { startOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { FORECAST_MISSED_MIN } from './assumptions.ts';
import { isNight } from './quiet.ts';

/** Where the forecasts of a place come from, and how that went since the bot was started. */
export type ForecastSupply =
  | {
      by: 'service';
      startedMs: EpochMs;
      goodMs: EpochMs | null;
      refusal: string | null;
      fault: string | null;
    }
  /** Somebody else puts them there. */
  | { by: 'file' }
  | { by: 'nobody'; startedMs: EpochMs };

const newestIssuedMs = (harvest: Harvest, place: StationId, nowMs: EpochMs): EpochMs | null =>
  forecastsBy(harvest, place, nowMs).at(-1)?.issuedMs ?? null;

const isOld = (issuedMs: EpochMs | null, nowMs: EpochMs): boolean =>
  issuedMs === null || nowMs - issuedMs > FORECAST_MAX_AGE_MIN * MS_PER_MINUTE;

/** What is missing; null = nothing; 'unknown' = it is too early to say. */
const missingNow = (
  supply: ForecastSupply,
  issuedMs: EpochMs | null,
  nowMs: EpochMs,
): MissingForecast | null | 'unknown' => {
  const isDue = (fromMs: EpochMs): boolean => minutesBetween(fromMs, nowMs) >= FORECAST_MISSED_MIN;
  switch (supply.by) {
    case 'service': {
      const { startedMs, goodMs, refusal, fault } = supply;
      const sinceMs = goodMs ?? issuedMs;
      if (refusal !== null) return { why: 'refused', sinceMs, words: refusal };
      if (isDue(goodMs ?? startedMs)) return { why: 'silent', sinceMs, words: fault };
      if (goodMs === null) return 'unknown';
      return isOld(issuedMs, nowMs) ? { why: 'old', sinceMs: issuedMs, words: null } : null;
    }
    case 'file':
      return isOld(issuedMs, nowMs) ? { why: 'old', sinceMs: issuedMs, words: null } : null;
    case 'nobody':
      if (!isOld(issuedMs, nowMs)) return null;
      return isDue(supply.startedMs) ? { why: 'settings', sinceMs: issuedMs, words: null } : 'unknown';
  }
};

/** A refusal is told at once, since only people end it; all else in the daytime; each once a day for as long as it lasts. */
const isToldNow = (
  missing: MissingForecast,
  told: FactOf<'forecast-warned'> | undefined,
  { harvest, clock, nowMs }: { harvest: Harvest; clock: ZoneClock; nowMs: EpochMs },
): boolean => {
  const { zone } = harvest.roster;
  const isFirst = told?.missing == null;
  if (isFirst && missing.why === 'refused') return true;
  const isToday = !isFirst && startOfDayMs(clock, zone, told.atMs) === startOfDayMs(clock, zone, nowMs);
  return !isToday && !isNight(clock, zone, nowMs);
};

const warned = (
  place: StationId,
  missing: MissingForecast | null,
  nowMs: EpochMs,
): FactOf<'forecast-warned'> => {
  const cause = `forecast-warned:${place}:${nowMs}`;
  const times = { atMs: nowMs, sentMs: nowMs, heardMs: nowMs };
  return {
    id: `${cause}#0`,
    cause,
    ...times,
    by: null,
    timeStated: false,
    kind: 'forecast-warned',
    place,
    missing,
  };
};

/** What grower and foreman must be told now of forecasts that do not come, or come again. */
export const forecastNews = (
  harvest: Harvest,
  clock: ZoneClock,
  nowMs: EpochMs,
  supplyOf: (place: StationId) => ForecastSupply | null,
): FactOf<'forecast-warned'>[] =>
  harvest.roster.stations.flatMap(({ id }) => {
    const supply = supplyOf(id);
    if (supply === null) return [];
    const told = harvest.forecastWarnings.get(id);
    const missing = missingNow(supply, newestIssuedMs(harvest, id, nowMs), nowMs);
    if (missing === 'unknown') return [];
    if (missing === null) return told?.missing == null ? [] : [warned(id, null, nowMs)];
    return isToldNow(missing, told, { harvest, clock, nowMs }) ? [warned(id, missing, nowMs)] : [];
  });

/** A station for which no usable forecast is at hand. `sinceMs` null = there never was one. */
export interface Unforecast {
  station: StationId;
  sinceMs: EpochMs | null;
}

/** The stations whose weather nobody watches: no forecast at all, one too old, or the service has been silent. */
export const unforecast = (harvest: Harvest, nowMs: EpochMs): Unforecast[] =>
  harvest.roster.stations.flatMap(({ id }) => {
    const newest = forecastsBy(harvest, id, nowMs).at(-1);
    const warning = harvest.forecastWarnings.get(id);
    if (newest === undefined || isOld(newest.issuedMs, nowMs))
      return [{ station: id, sinceMs: newest?.issuedMs ?? null }];
    return warning?.missing == null || newest.heardMs > warning.atMs
      ? []
      : [{ station: id, sinceMs: warning.missing.sinceMs }];
  });
