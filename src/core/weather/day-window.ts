import type { EpochMs, Span } from '../units.ts';
import { startOfDayMs, wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { covers, nodesOf } from './crossing.ts';
import type { HeatCase } from './heat-options.ts';

/** The afternoon, by wall time, of the calendar day at the station that contains `atMs`. */
export const afternoonOf = ({ clock, station, options }: HeatCase, atMs: EpochMs): Span => {
  const [from, to] = options.windowHours;
  return {
    fromMs: wallTimeOfDayMs(clock, station.zone, atMs, from, 0),
    toMs: wallTimeOfDayMs(clock, station.zone, atMs, to, 0),
  };
};

export const isSameDay = (clock: ZoneClock, zone: string, aMs: EpochMs, bMs: EpochMs): boolean =>
  startOfDayMs(clock, zone, aMs) === startOfDayMs(clock, zone, bMs);

/** Whether the forecast is known from now (or the span's start) to the span's end, without a gap. */
export const coversRest = ({ forecast, nowMs }: HeatCase, span: Span): boolean =>
  covers(nodesOf(forecast.hours), { fromMs: Math.max(nowMs, span.fromMs), toMs: span.toMs });
