/** Warmth at any hour that is worked stops the dig, not in the afternoon alone. */
import { describe, expect, it } from 'vitest';
import { HEAT_OPTIONS, heatStop } from '../../../src/core/weather/heat-stop.ts';
import type { HeatDecision, HeatOptions } from '../../../src/core/weather/heat-stop.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { clock, day, shifted, station, warm } from './forecasts.ts';
import type { HourlyTemperature } from '../../../src/core/weather/types.ts';

const ask = (
  hours: readonly HourlyTemperature[],
  now: string,
  workHours: HeatOptions['workHours'] = [0, 24],
): HeatDecision =>
  heatStop(null, { issuedMs: clock(now), hours }, station, zoneClock, clock(now), 'heat-1', {
    ...HEAT_OPTIONS,
    workHours,
  });

/** Above 55 °F from 6 to 10 in the morning, then a front. */
const morning = day([
  [0, 50],
  [5, 53],
  [6, 55],
  [8, 64],
  [10, 55],
  [11, 45],
  [23, 40],
]);
/** Above 55 °F from 19 to 23. */
const evening = day([
  [0, 40],
  [17, 50],
  [19, 55],
  [20, 66],
  [22, 66],
  [23, 55],
]);

describe('warmth outside the afternoon', () => {
  it('in the morning stops the dig', () => {
    expect(ask(morning, '03:00').step).toMatchObject({
      stage: 'stop',
      stopAtMs: clock('06:00'),
      peakF: 64,
      peakMs: clock('08:00'),
    });
  });

  it('in the evening stops it, also while it is warm already', () => {
    expect(ask(evening, '12:00').step).toMatchObject({ stage: 'stop', stopAtMs: clock('19:00'), peakF: 66 });
    expect(ask(evening, '21:30').step).toMatchObject({ stage: 'stop', stopAtMs: clock('21:30') });
  });

  it('is left alone beyond the hours that the operation works', () => {
    expect(ask(evening, '12:00', [5, 18]).step).toBeNull();
    expect(ask(evening, '21:30', [5, 20]).step).toBeNull();
    expect(ask(evening, '12:00', [5, 22]).step).toMatchObject({ stopAtMs: clock('19:00') });
    expect(ask(morning, '03:00', [11, 22]).step).toBeNull();
  });
});

describe('two warm spells of one day', () => {
  const both = day([
    [0, 64],
    [1, 64],
    [2, 50],
    [12, 50],
    [13, 55],
    [15, 65],
    [18, 55],
    [23, 40],
  ]);

  it('are two stops: the first does not hold the dig all day', () => {
    const { step } = ask(both, '00:30');
    expect(step).toMatchObject({ stage: 'stop', stopAtMs: clock('00:30'), peakF: 64 });
    // Two degrees below the limit at 1:47, and the roots take two hours.
    expect(step?.resumeAtMs).toBe(clock('03:50'));
    expect(ask(both, '05:00').step).toMatchObject({ stopAtMs: clock('13:00'), peakF: 65 });
  });

  it('less than four hours apart are one', () => {
    const near = day([
      [0, 40],
      [9, 55],
      [10, 60],
      [11, 50],
      [13, 50],
      [14, 60],
      [17, 50],
      [23, 40],
    ]);
    expect(ask(near, '05:00').step?.resumeAtMs).toBeGreaterThan(clock('17:00'));
  });
});

describe('warmth before dawn', () => {
  it('is looked at the evening before, in time for the topper of the night', () => {
    const tomorrow = [
      ...day([
        [0, 45],
        [23, 45],
      ]),
      ...shifted(morning, 86_400_000),
    ];
    const { step, wakeAtMs } = ask(tomorrow, '20:00');
    expect(step).toBeNull();
    // Topping stops at 5:30, an hour before that at 4:30: before the day begins at 5.
    expect(wakeAtMs).toBe(clock('04:30') + 86_400_000);
    expect(ask(warm, '20:00').wakeAtMs).toBeNull();
  });
});
