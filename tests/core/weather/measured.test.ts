import { describe, expect, it } from 'vitest';
import type { NoticeStep } from '../../../src/core/book/facts.ts';
import { HEAT_OPTIONS, heatStop } from '../../../src/core/weather/heat-stop.ts';
import type { HeatDecision, HeatOptions } from '../../../src/core/weather/heat-stop.ts';
import type { HourlyTemperature } from '../../../src/core/weather/types.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { clearDay, clock, cold, station, warm } from './forecasts.ts';

const air = (...readings: readonly (readonly [string, number])[]): Pick<HeatOptions, 'air'> => ({
  air: readings.map(([time, temperatureF]) => ({ atMs: clock(time), temperatureF })),
});
const ask = (
  current: NoticeStep | null,
  forecast: readonly HourlyTemperature[],
  now: string,
  options: Partial<HeatOptions>,
): HeatDecision =>
  heatStop(current, { issuedMs: clock(now), hours: forecast }, station, zoneClock, clock(now), 'heat-1', {
    ...HEAT_OPTIONS,
    ...options,
  });
/** Told at 05:00 for 11:40; cool by the forecast at 19:00, and the roots have followed at 21:00. */
const told = heatStop(
  null,
  { issuedMs: clock('05:00'), hours: warm },
  station,
  zoneClock,
  clock('05:00'),
  'e',
).step;
if (!told) throw new Error('a warm day must raise a stop');
const begun = (now: string, options: Partial<HeatOptions>): HeatDecision =>
  ask(told, warm, now, { lastStepMs: clock('05:00'), ...options });

describe('air measured above the limit', () => {
  it('stops the dig at once, whatever the forecast', () => {
    expect(ask(null, cold, '14:10', air(['13:53', 63])).step).toMatchObject({
      stage: 'stop',
      stopAtMs: clock('14:10'),
      peakF: 63,
      peakMs: clock('13:53'),
      limitF: 55,
      chance: 1,
      basis: { measured: { what: 'air', temperatureF: 63, atMs: clock('13:53') } },
    });
  });

  it('stops it without any forecast', () => {
    const none = { issuedMs: -Infinity, hours: [] };
    const options = { ...HEAT_OPTIONS, ...air(['13:53', 63]) };
    expect(heatStop(null, none, station, zoneClock, clock('14:10'), 'e', options).step).toMatchObject({
      stage: 'stop',
      resumeAtMs: null,
      basis: { forecastMs: null },
    });
  });

  it('stops nothing at the limit, nor an hour and a half later', () => {
    expect(ask(null, cold, '14:10', air(['13:53', 55])).step).toBeNull();
    expect(ask(null, cold, '15:24', air(['13:53', 63])).step).toBeNull();
    expect(ask(null, cold, '14:10', air(['12:53', 63], ['13:53', 54])).step).toBeNull();
  });

  it('brings a told stop forward', () => {
    expect(begun('10:10', air(['09:53', 56])).step).toMatchObject({
      stage: 'update',
      stopAtMs: clock('10:10'),
    });
  });

  it('keeps a watch or a stop that has not begun from being called off', () => {
    const calledOff = (options: Partial<HeatOptions>) =>
      ask(told, cold, '10:10', { lastStepMs: clock('10:00'), ...options });
    expect(calledOff({}).step).toMatchObject({ stage: 'all-clear' });
    expect(calledOff(air(['09:53', 54])).step).toBeNull();
    expect(calledOff(air(['09:53', 52])).step).toMatchObject({ stage: 'all-clear' });
  });
});

describe('an all-clear by the forecast', () => {
  it('says what was measured, and of when the forecast is', () => {
    expect(begun('21:00', air(['18:53', 52], ['20:53', 47])).step).toMatchObject({
      stage: 'all-clear',
      basis: {
        forecastMs: clock('21:00'),
        measured: { what: 'air', temperatureF: 47, atMs: clock('20:53') },
      },
    });
  });

  it('waits while the air is measured above the limit less 2 °F, and two hours for the roots', () => {
    expect(begun('21:00', air(['20:53', 56])).step).toMatchObject({
      stage: 'update',
      resumeAtMs: clock('22:55'),
    });
    expect(begun('21:10', air(['19:53', 54], ['20:53', 52]))).toMatchObject({
      step: null,
      wakeAtMs: clock('21:55'),
    });
    expect(begun('21:55', air(['19:53', 54], ['20:53', 52])).step).toMatchObject({ stage: 'all-clear' });
  });

  it('waits for the air alone where the roots were measured cool', () => {
    const root = { rootReadings: [{ atMs: clock('20:30'), temperatureF: 50 }] };
    expect(begun('21:00', { ...root, ...air(['20:53', 54]) }).step).toMatchObject({
      stage: 'update',
      resumeAtMs: clock('22:25'),
    });
    expect(begun('21:00', { ...root, ...air(['19:53', 54], ['20:53', 52]) }).step).toMatchObject({
      stage: 'all-clear',
    });
  });

  it('is put off with a new time once, then without one, and then without a word', () => {
    const next = (current: NoticeStep, now: string, ...readings: readonly (readonly [string, number])[]) =>
      ask(current, warm, now, { lastStepMs: clock(now) - 3_600_000, ...air(...readings) }).step;
    const first = begun('21:00', air(['20:53', 56])).step;
    if (!first) throw new Error('it is put off');
    const second = next(first, '22:00', ['20:53', 56], ['21:53', 55]);
    expect(second).toMatchObject({ stage: 'update', number: 3, resumeAtMs: null });
    if (!second) throw new Error('it is put off again');
    expect(next(second, '23:00', ['21:53', 55], ['22:53', 54])).toBeNull();
  });

  it('goes by the forecast where nothing was measured', () => {
    expect(begun('21:00', {}).step).toMatchObject({ stage: 'all-clear' });
    expect(ask(null, clearDay(50), '14:00', {}).step).toBeNull();
  });
});
