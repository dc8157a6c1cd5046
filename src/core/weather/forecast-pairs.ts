import type { FactOf } from '../book/facts.ts';
import type { EpochMs, Fahrenheit, Span } from '../units.ts';
import { wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { crossings, nodesOf } from './crossing.ts';
import { leadHours } from './forecast-error.ts';
import type { ForecastPair } from './forecast-error.ts';
import { HEAT_OPTIONS } from './heat-options.ts';

const MS_PER_HOUR = 3_600_000;

/** With fewer hours of an afternoon measured its high may have been missed. */
const FEWEST_HOURS = 5;

/**
 * The forecasts that are compared: the last one before five in the morning of the day itself and of the day before.
 * One a day for each lead, since the errors of forecasts that follow each other are nearly the same and would count as
 * many pairs where they are one.
 */
const ISSUE_HOUR = 5;
const DAYS_AHEAD = [0, 1];
const ISSUED_WITHIN_MS = 12 * MS_PER_HOUR;

interface Afternoon {
  window: Span;
  measured: FactOf<'air-observed'>[];
}

/** What was measured in the afternoon of each day. Zones are slow to ask, so each day is asked for once. */
const afternoons = (
  observed: readonly FactOf<'air-observed'>[],
  zone: string,
  clock: ZoneClock,
): Afternoon[] => {
  const [from, to] = HEAT_OPTIONS.windowHours;
  const found: Afternoon[] = [];
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

/** Null = not measured well enough. */
const highOf = ({ measured }: Afternoon): Fahrenheit | null => {
  const hours = new Set(measured.map(({ atMs }) => Math.floor(atMs / MS_PER_HOUR)));
  return hours.size < FEWEST_HOURS ? null : Math.max(...measured.map(({ temperatureF }) => temperatureF));
};

const covers = ({ hours }: FactOf<'forecast-issued'>, { fromMs, toMs }: Span): boolean => {
  const nodes = nodesOf(hours);
  const [first, last] = [nodes[0], nodes.at(-1)];
  return first !== undefined && last !== undefined && first.atMs <= fromMs && last.atMs >= toMs;
};

/** Afternoon highs of one place as they were forecast and as they came. */
export const forecastPairs = (
  forecasts: readonly FactOf<'forecast-issued'>[],
  observed: readonly FactOf<'air-observed'>[],
  zone: string,
  clock: ZoneClock,
): ForecastPair[] => {
  const pairOf = (window: Span, observedF: Fahrenheit, daysAhead: number): ForecastPair[] => {
    const dueMs = wallTimeOfDayMs(clock, zone, window.fromMs, ISSUE_HOUR, 0, -daysAhead);
    const inTime = forecasts.filter(
      ({ issuedMs }) => issuedMs <= dueMs && issuedMs > dueMs - ISSUED_WITHIN_MS,
    );
    const newestMs = Math.max(...inTime.map(({ issuedMs }) => issuedMs));
    const forecast = inTime.find(({ issuedMs }) => issuedMs === newestMs);
    if (!forecast || !covers(forecast, window)) return [];
    const { peakF } = crossings(forecast.hours, Infinity, window);
    const lead = leadHours(forecast.issuedMs, (window.fromMs + window.toMs) / 2);
    return peakF === null ? [] : [{ leadHours: lead, forecastF: peakF, observedF }];
  };
  return afternoons(observed, zone, clock).flatMap((day) => {
    const highF = highOf(day);
    return highF === null ? [] : DAYS_AHEAD.flatMap((days) => pairOf(day.window, highF, days));
  });
};
