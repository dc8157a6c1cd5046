/** The air of the past days at a place: as it was measured, and where it was not, as it was last forecast. */
import { MS_PER_DAY, MS_PER_HOUR } from '../units.ts';
import type { EpochMs, Fahrenheit } from '../units.ts';
import { ROOT_ERROR_F } from './assumptions.ts';
import { withPast } from './heat-options.ts';
import type { HourlyTemperature, IssuedForecast } from './types.ts';

/** A day more than roots remember: the day that is asked for may be tomorrow. */
const DAYS_BACK = ROOT_ERROR_F.length + 1;

/** `issued`: all forecasts of the season by then, `measured`: all measurements, both oldest first. */
export const airWithPast = (
  forecast: IssuedForecast,
  issued: readonly IssuedForecast[],
  measured: readonly { atMs: EpochMs; temperatureF: Fahrenheit }[],
  nowMs: EpochMs,
): HourlyTemperature[] => {
  const fromMs = nowMs - DAYS_BACK * MS_PER_DAY;
  const recent = issued.filter(({ issuedMs }) => issuedMs >= fromMs && issuedMs <= nowMs);
  const air = measured
    .filter(({ atMs }) => atMs >= fromMs && atMs <= nowMs)
    .map(({ atMs, temperatureF }) => ({ startMs: atMs, temperatureF }));
  const isMeasured = ({ startMs }: HourlyTemperature): boolean =>
    air.some((one) => Math.abs(one.startMs - startMs) < MS_PER_HOUR);
  const { hours } = withPast(forecast, recent);
  return [...hours.filter((hour) => !isMeasured(hour)), ...air];
};
