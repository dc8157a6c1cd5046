/** Inputs shared by the heat stop and the day plan, so that they agree. */
import type { FactOf } from '../book/facts.ts';
import { usualHaul } from '../harvest/usual-times.ts';
import type { Station, StationId } from '../roster.ts';
import { MS_PER_MINUTE } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { forecastPairs } from './forecast-pairs.ts';
import type { HeatOptions } from './heat-stop.ts';
import type { ZoneClock } from '../zone-clock.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { FROST_OPTIONS } from './frost.ts';
import type { FreezeAlert } from './types.ts';

/** Half a day of hourly ones: no stop that counts began before. */
const MEASUREMENTS_LOOKED_AT = 12;

/** Forecasts issued by now, oldest first. */
export const forecastsBy = (
  harvest: Harvest,
  station: StationId,
  nowMs: EpochMs,
): FactOf<'forecast-issued'>[] =>
  harvest.forecasts.get(station)?.filter(({ issuedMs }) => issuedMs <= nowMs) ?? [];

/** Forecasts before the newest one, how forecasts of this place have erred, the air as measured, and the haul to the pile. */
export const heatBasis = (
  harvest: Harvest,
  station: Station,
  clock: ZoneClock,
  nowMs: EpochMs,
): Pick<HeatOptions, 'earlier' | 'pairs' | 'haul' | 'air' | 'workHours'> => ({
  earlier: forecastsBy(harvest, station.id, nowMs).slice(0, -1),
  pairs: forecastPairs(
    harvest.issued.get(station.id) ?? [],
    harvest.observed.get(station.id) ?? [],
    station.zone,
    clock,
  ),
  haul: usualHaul(harvest, station.id, nowMs),
  workHours: harvest.roster.workHours,
  air: (harvest.observed.get(station.id) ?? []).slice(-MEASUREMENTS_LOOKED_AT),
});

/** Alerts that came with the newest forecast whose alerts could be read; none if that is too old. */
export const freezeAlerts = (
  forecasts: readonly FactOf<'forecast-issued'>[],
  nowMs: EpochMs,
): readonly FreezeAlert[] => {
  const oldestMs = nowMs - FROST_OPTIONS.maxAgeMin * MS_PER_MINUTE;
  return forecasts.findLast((f) => f.freezeAlerts !== null && f.heardMs >= oldestMs)?.freezeAlerts ?? [];
};
