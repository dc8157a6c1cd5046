import type { EpochMs, Fahrenheit, Span } from '../../core/units.ts';
import { wallTimeOfDayMs } from '../../core/zone-clock.ts';
import type { ZoneClock } from '../../core/zone-clock.ts';
import { nodesOf, within } from '../../core/weather/crossing.ts';
import type { Node } from '../../core/weather/crossing.ts';
import type { HourlyTemperature } from '../../core/weather/types.ts';

/** A day's temperature curve against the limit, in instants and degrees. */
export interface TemperatureChart {
  span: Span;
  /** The curve, in order; neighbours are joined by straight lines. Empty = nothing is forecast. */
  points: readonly Node[];
  limitF: Fahrenheit;
  /** Lower and upper edge, in whole tens, with room for the limit. */
  lowestF: Fahrenheit;
  highestF: Fahrenheit;
  /** Vertical lines at these wall-clock hours. On a day of 25 hours they are not evenly spaced. */
  ticks: readonly { atMs: EpochMs; hour: number }[];
}

const TICK_HOURS = [0, 6, 12, 18];

/** The chart of the calendar day in the zone that contains `atMs`. */
export const temperatureChart = (
  hours: readonly HourlyTemperature[],
  limitF: Fahrenheit,
  zone: string,
  clock: ZoneClock,
  atMs: EpochMs,
): TemperatureChart => {
  const at = (hour: number, addDays = 0): EpochMs => wallTimeOfDayMs(clock, zone, atMs, hour, 0, addDays);
  const span = { fromMs: at(0), toMs: at(0, 1) };
  const points = within(nodesOf(hours), span);
  const temperatures = [limitF, ...points.map((point) => point.temperatureF)];
  return {
    span,
    points,
    limitF,
    lowestF: Math.floor((Math.min(...temperatures) - 1) / 10) * 10,
    highestF: Math.ceil((Math.max(...temperatures) + 1) / 10) * 10,
    ticks: TICK_HOURS.map((hour) => ({ atMs: at(hour), hour })),
  };
};
