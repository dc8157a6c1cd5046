import type { FactOf } from '../book/facts.ts';
import { MS_PER_HOUR } from '../units.ts';
import type { EpochMs, Fahrenheit, Span } from '../units.ts';
import { wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import {
  AFTERNOON_HOURS,
  COMPARED_DAYS_AHEAD,
  COMPARED_FORECAST_HOUR,
  COMPARED_WITHIN_HOURS,
  FEWEST_HOURS_MEASURED,
} from './assumptions.ts';
import { covers, crossings, nodesOf } from './crossing.ts';
import { leadHours } from './forecast-error.ts';
import type { ForecastPair } from './forecast-error.ts';

const COMPARED_WITHIN_MS = COMPARED_WITHIN_HOURS * MS_PER_HOUR;

interface MeasuredAfternoon {
  window: Span;
  measured: FactOf<'air-observed'>[];
}

/** What was measured in the afternoon of each day. Zone lookups are slow, so there is one for each day. */
const afternoons = (
  observed: readonly FactOf<'air-observed'>[],
  zone: string,
  clock: ZoneClock,
): MeasuredAfternoon[] => {
  const [from, to] = AFTERNOON_HOURS;
  const found: MeasuredAfternoon[] = [];
  let endMs: EpochMs = -Infinity;
  for (const one of observed.toSorted((a, b) => a.atMs - b.atMs)) {
    const at = (hour: number, days = 0): EpochMs => wallTimeOfDayMs(clock, zone, one.atMs, hour, 0, days);
    if (one.atMs >= endMs) {
      endMs = at(0, 1);
      found.push({ window: { fromMs: at(from), toMs: at(to) }, measured: [] });
    }
    const last = found.at(-1);
    if (last && one.atMs >= last.window.fromMs && one.atMs <= last.window.toMs) last.measured.push(one);
  }
  return found;
};

/** Null = too few hours were measured. */
const highOf = ({ measured }: MeasuredAfternoon): Fahrenheit | null => {
  const hours = new Set(measured.map(({ atMs }) => Math.floor(atMs / MS_PER_HOUR)));
  return hours.size < FEWEST_HOURS_MEASURED
    ? null
    : Math.max(...measured.map(({ temperatureF }) => temperatureF));
};

/**
 * Afternoon highs of one place, as forecast and as measured. One forecast a day for each lead: successive
 * forecasts have nearly the same error, and would count as many pairs where there is one.
 */
export const forecastPairs = (
  forecasts: readonly FactOf<'forecast-issued'>[],
  observed: readonly FactOf<'air-observed'>[],
  zone: string,
  clock: ZoneClock,
): ForecastPair[] => {
  const pairOf = (window: Span, observedF: Fahrenheit, daysAhead: number): ForecastPair[] => {
    const dueMs = wallTimeOfDayMs(clock, zone, window.fromMs, COMPARED_FORECAST_HOUR, 0, -daysAhead);
    const inTime = forecasts.filter(
      ({ issuedMs }) => issuedMs <= dueMs && issuedMs > dueMs - COMPARED_WITHIN_MS,
    );
    const newestMs = Math.max(...inTime.map(({ issuedMs }) => issuedMs));
    const forecast = inTime.find(({ issuedMs }) => issuedMs === newestMs);
    if (!forecast || !covers(nodesOf(forecast.hours), window)) return [];
    const { peakF } = crossings(forecast.hours, Infinity, window);
    const lead = leadHours(forecast.issuedMs, (window.fromMs + window.toMs) / 2);
    return peakF === null ? [] : [{ leadHours: lead, forecastF: peakF, observedF }];
  };
  return afternoons(observed, zone, clock).flatMap((day) => {
    const highF = highOf(day);
    return highF === null ? [] : COMPARED_DAYS_AHEAD.flatMap((days) => pairOf(day.window, highF, days));
  });
};
