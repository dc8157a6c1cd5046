import { describe, expect, it } from 'vitest';
import type { NoticeStep } from '../../../src/core/book/facts.ts';
import { HEAT_OPTIONS, heatStop } from '../../../src/core/weather/heat-stop.ts';
import type { HeatDecision, HeatOptions } from '../../../src/core/weather/heat-stop.ts';
import type { HourlyTemperature } from '../../../src/core/weather/types.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { clearDay, clock, station, warm } from './forecasts.ts';

const at5 = { issuedMs: clock('05:00'), hours: warm };
const told = heatStop(null, at5, station, zoneClock, clock('05:00'), 'heat-1').step;
if (!told) throw new Error('a warm day must raise a stop');
/** "Dig on: station agreed" at noon, against a forecast high of 65. */
const overridden: NoticeStep = {
  ...told,
  number: 2,
  stage: 'all-clear',
  source: 'person',
  resumeAtMs: clock('12:00'),
  words: 'station agreed',
};
const ask = (
  now: string,
  forecast: readonly HourlyTemperature[],
  more: Partial<HeatOptions> = {},
): HeatDecision =>
  heatStop(overridden, { issuedMs: clock(now), hours: forecast }, station, zoneClock, clock(now), 'heat-2', {
    ...HEAT_OPTIONS,
    lastStepMs: clock('12:00'),
    ...more,
  });

describe('a stop that a person ended', () => {
  it('stays quiet by the same forecast, for four hours at most', () => {
    expect(ask('12:10', warm)).toEqual({ step: null, wakeAtMs: clock('16:00') });
    expect(ask('15:59', warm).step).toBeNull();
    expect(ask('16:00', warm).step).toMatchObject({ event: 'heat-2', number: 1, stage: 'stop' });
  });

  it('counts from the hour for which the dig was ordered again', () => {
    const later = { ...overridden, resumeAtMs: clock('14:00') };
    const decision = heatStop(later, at5, station, zoneClock, clock('17:00'), 'e', {
      ...HEAT_OPTIONS,
      lastStepMs: clock('12:00'),
    });
    expect(decision).toEqual({ step: null, wakeAtMs: clock('18:00') });
  });

  it('comes back for roots measured above their limit since, not for those measured before', () => {
    const root = (time: string, temperatureF: number) => ({
      rootReadings: [{ atMs: clock(time), temperatureF }],
    });
    expect(ask('13:00', warm, root('12:55', 58)).step).toMatchObject({
      event: 'heat-2',
      stage: 'stop',
      stopAtMs: clock('13:00'),
      basis: { measured: { what: 'root', temperatureF: 58 } },
    });
    expect(ask('13:00', warm, root('11:55', 58)).step).toBeNull();
    expect(ask('13:00', warm, root('12:55', 55)).step).toBeNull();
  });

  it('comes back for roots that were measured before but told since', () => {
    const rootReadings = [{ atMs: clock('11:55'), heardMs: clock('12:58'), temperatureF: 58 }];
    expect(ask('13:00', warm, { rootReadings }).step).toMatchObject({ stage: 'stop' });
  });

  it('comes back for air measured clearly above what was overridden', () => {
    const air = (temperatureF: number) => ({ air: [{ atMs: clock('12:53'), temperatureF }] });
    expect(ask('13:10', warm, air(66.9)).step).toBeNull();
    expect(ask('13:10', warm, air(67)).step).toMatchObject({ basis: { measured: { what: 'air' } } });
  });

  it('comes back for a forecast clearly above the one that was overridden', () => {
    expect(ask('13:20', clearDay(66.9)).step).toBeNull();
    expect(ask('13:20', clearDay(67)).step).toMatchObject({ event: 'heat-2', stage: 'stop', peakF: 67 });
  });
});
