/** The harvest days of the backtest: as they came, and as they were forecast. */
import { fahrenheitFromCelsius } from '../../src/core/units.ts';
import { diurnalTemperature } from '../support/diurnal.ts';
import { seattleDays } from '../support/seattle-hours.ts';
import type { HourlyTemperature } from '../../src/core/weather/types.ts';

export const HOUR_MS = 3_600_000;

export interface HarvestDay {
  midnightMs: number;
  /** 48 hours from midnight. */
  actual: HourlyTemperature[];
}

/** 15 September to 15 November of four years, each hour from the day's extremes by Campbell & Norman's curve. */
export const harvestDays = (): HarvestDay[] => {
  const days = seattleDays();
  const hourly = days.flatMap((today, i) => {
    const [before, after] = [days[i - 1] ?? today, days[i + 1] ?? today];
    const midnightMs = Date.parse(`${today.date.replaceAll('/', '-')}T00:00Z`);
    return Array.from({ length: 24 }, (_, hour) => ({
      startMs: midnightMs + hour * HOUR_MS,
      temperatureF: fahrenheitFromCelsius(diurnalTemperature(before, today, after, hour)),
    }));
  });
  return days.flatMap(({ date }, i) => {
    const monthDay = date.slice(5).replace('/', '-');
    if (monthDay < '09-15' || monthDay > '11-15') return [];
    const actual = hourly.slice(i * 24, i * 24 + 48);
    return [{ midnightMs: actual[0]?.startMs ?? NaN, actual }];
  });
};

/** Numbers from 0 to 1, the same for the same seed (Mulberry32 of Tommy Ettinger, public domain). */
export const randomOf = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
};

/** A normal deviate of standard deviation 1 (Box & Muller 1958). */
export const deviate = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

export interface Issue {
  issuedMs: number;
  hours: HourlyTemperature[];
}

/** Error of the day's high by hours of lead, °F: falls to 0.8 at its hour, 3.0 a day ahead as in the product's model. */
const sdAt = (leadHours: number): number => 0.8 + (2.2 * Math.min(leadHours, 24)) / 24;

/**
 * Forecasts of one day, one every three hours from 03:00, in whole °F. Their errors are those of one walk that ends at
 * the day's high: two issues in a row are off in much the same way, as real ones are.
 */
export const issuesOf = (day: HarvestDay, scale: number, random: () => number): Issue[] => {
  const issueHours = [21, 18, 15, 12, 9, 6, 3];
  let error = 0;
  let variance = 0;
  const errors = issueHours.map((hour) => {
    const next = (scale * sdAt(Math.max(0, 15 - hour))) ** 2;
    error += deviate(random) * Math.sqrt(Math.max(0, next - variance));
    variance = Math.max(next, variance);
    return { hour, error };
  });
  return errors.toReversed().map(({ hour, error: off }) => ({
    issuedMs: day.midnightMs + hour * HOUR_MS,
    hours: day.actual
      .filter(({ startMs }) => startMs >= day.midnightMs + hour * HOUR_MS)
      .map(({ startMs, temperatureF }) => ({ startMs, temperatureF: Math.round(temperatureF + off) })),
  }));
};
