import type { HeatStation } from '../../../src/core/weather/heat-stop.ts';
import type { HourlyTemperature } from '../../../src/core/weather/types.ts';

export const HOUR_MS = 3_600_000;
export const at = (iso: string): number => Date.parse(iso);

export const station: HeatStation = {
  id: 'north-station',
  airLimitF: 55,
  rootLimitF: 55,
  zone: 'America/Boise',
};

/** Local clock time on 2026-10-20 in Boise (UTC-6). */
export const clock = (time: string): number => at(`2026-10-20T${time}-06:00`);

/** Hourly temperatures from `startIso` on. */
export const hours = (startIso: string, temperaturesF: readonly number[]): HourlyTemperature[] =>
  temperaturesF.map((temperatureF, i) => ({ startMs: at(startIso) + i * HOUR_MS, temperatureF }));

/** The 24 hours of 2026-10-20 in Boise: straight lines between the given [hour, °F] corners. */
export const day = (corners: readonly (readonly [number, number])[]): HourlyTemperature[] =>
  hours(
    '2026-10-20T00:00-06:00',
    Array.from({ length: 24 }, (_, hour) => {
      const right = corners.find(([h]) => h >= hour) ?? corners.at(-1) ?? [0, 0];
      const left = corners.findLast(([h]) => h <= hour) ?? right;
      const share = right[0] === left[0] ? 0 : (hour - left[0]) / (right[0] - left[0]);
      return left[1] + share * (right[1] - left[1]);
    }),
  );

/** 38 °F at 06:00, the given high at 15:00, 41 °F at 23:00. */
export const clearDay = (highF: number): HourlyTemperature[] =>
  day([
    [0, 40],
    [6, 38],
    [15, highF],
    [23, 41],
  ]);
export const warm = clearDay(65);
export const cold = clearDay(52);

export const shifted = (forecast: readonly HourlyTemperature[], byMs: number): HourlyTemperature[] =>
  forecast.map((hour) => ({ ...hour, startMs: hour.startMs + byMs }));
