import { describe, expect, it } from 'vitest';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { temperatureChart } from '../../src/saying/outlook/chart.ts';
import { HOUR_MS, at, clock, station, warm } from '../core/weather/forecasts.ts';

const DAY_MS = 24 * HOUR_MS;

describe('the chart of a day', () => {
  it('holds the curve and round edges', () => {
    const chart = temperatureChart(warm, 55, station.zone, zoneClock, clock('13:00'));
    expect(chart.span).toEqual({ fromMs: clock('00:00'), toMs: clock('00:00') + DAY_MS });
    expect(chart.points).toHaveLength(25);
    expect([chart.lowestF, chart.highestF]).toEqual([30, 70]);
  });

  it('has room for a limit far above the curve', () => {
    expect(temperatureChart(warm, 85, station.zone, zoneClock, clock('13:00')).highestF).toBe(90);
  });

  it('has 25 hours on the day that daylight time ends', () => {
    const chart = temperatureChart([], 55, 'America/Boise', zoneClock, at('2026-11-01T18:00Z'));
    expect(chart.span.toMs - chart.span.fromMs).toBe(25 * HOUR_MS);
    expect(chart.ticks.map((tick) => (tick.atMs - chart.span.fromMs) / HOUR_MS)).toEqual([0, 7, 13, 19]);
    expect(chart.points).toEqual([]);
  });
});
