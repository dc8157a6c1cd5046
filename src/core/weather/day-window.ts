import type { EpochMs, Span } from '../units.ts';
import { startOfDayMs, wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { covers, nodesOf } from './crossing.ts';
import { AFTERNOON_HOURS } from './assumptions.ts';
import type { HeatCase } from './heat-options.ts';

const hoursOf = (
  { clock, station }: HeatCase,
  atMs: EpochMs,
  [from, to]: readonly [fromHour: number, toHour: number],
): Span => ({
  fromMs: wallTimeOfDayMs(clock, station.zone, atMs, from, 0),
  toMs: wallTimeOfDayMs(clock, station.zone, atMs, to, 0),
});

/** The afternoon, by wall time, of the calendar day at the station that contains `atMs`: when its high is forecast for. */
export const afternoonOf = (heatCase: HeatCase, atMs: EpochMs): Span =>
  hoursOf(heatCase, atMs, AFTERNOON_HOURS);

/** All hours that the operation works on that day. */
export const workOf = (heatCase: HeatCase, atMs: EpochMs): Span =>
  hoursOf(heatCase, atMs, heatCase.options.workHours);

/** What is left of the hours that the operation works on that day; null = they are over. */
export const workLeft = (heatCase: HeatCase, atMs: EpochMs): Span | null => {
  const { fromMs, toMs } = workOf(heatCase, atMs);
  const leftMs = Math.max(fromMs, heatCase.nowMs);
  return leftMs < toMs ? { fromMs: leftMs, toMs } : null;
};

export const isSameDay = (clock: ZoneClock, zone: string, aMs: EpochMs, bMs: EpochMs): boolean =>
  startOfDayMs(clock, zone, aMs) === startOfDayMs(clock, zone, bMs);

/** Whether the forecast is known from now (or the span's start) to the span's end, without a gap. */
export const coversRest = ({ forecast, nowMs }: HeatCase, span: Span): boolean =>
  covers(nodesOf(forecast.hours), { fromMs: Math.max(nowMs, span.fromMs), toMs: span.toMs });
