import { describe, expect, it } from 'vitest';
import type { NoticeStep } from '../../../src/core/book/facts.ts';
import { HEAT_OPTIONS, heatStop } from '../../../src/core/weather/heat-stop.ts';
import type { HourlyTemperature, IssuedForecast } from '../../../src/core/weather/types.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { clock, cold, shifted, station, warm } from './forecasts.ts';

const issued = (time: string, hours: readonly HourlyTemperature[]): IssuedForecast => ({
  issuedMs: clock(time),
  hours,
});
const later = (minutes: number): HourlyTemperature[] => shifted(warm, minutes * 60_000);

/** Told at five in the morning: stop digging at 11:40. */
const told = heatStop(null, issued('05:00', warm), station, zoneClock, clock('05:00'), 'heat-1').step;

/** What is told at eight, when that forecast is new and those others came before it. */
const tellsAtEight = (
  hours: readonly HourlyTemperature[],
  ...earlier: readonly IssuedForecast[]
): NoticeStep | null =>
  heatStop(told, issued('08:00', hours), station, zoneClock, clock('08:00'), 'heat-2', {
    ...HEAT_OPTIONS,
    earlier,
  }).step;

describe('a stop that the newest forecast has later', () => {
  it('stays where the forecast before still had it at the old time: one forecast may be wrong', () => {
    expect(tellsAtEight(later(30), issued('05:00', warm))).toBeNull();
    expect(tellsAtEight(later(120), issued('05:00', warm))).toBeNull();
  });

  it('moves where the forecast before had it half an hour later too, and not for less', () => {
    const update = { stage: 'update', number: 2, stopAtMs: clock('12:10') };
    expect(tellsAtEight(later(30), issued('07:00', later(30)))).toMatchObject(update);
    expect(tellsAtEight(later(30), issued('07:00', later(25)))).toBeNull();
  });

  it('moves where the forecast before saw no stop at all, or is the first', () => {
    expect(tellsAtEight(later(30), issued('07:00', cold))).toMatchObject({ stopAtMs: clock('12:10') });
    expect(tellsAtEight(later(30))).toMatchObject({ stopAtMs: clock('12:10') });
  });

  it('goes by the forecast just before, not by those before that', () => {
    const [first, second] = [issued('06:00', warm), issued('07:00', later(30))];
    expect(tellsAtEight(later(30), first, second)).toMatchObject({ stopAtMs: clock('12:10') });
    expect(tellsAtEight(later(30), issued('06:00', later(30)), issued('07:00', warm))).toBeNull();
  });
});

describe('a stop that the newest forecast has sooner', () => {
  it('moves at once by half an hour, whatever the forecast before said, and not for less', () => {
    const before = issued('07:00', warm);
    expect(tellsAtEight(later(-30), before)).toMatchObject({ stage: 'update', stopAtMs: clock('11:10') });
    expect(tellsAtEight(later(-25), before)).toBeNull();
  });
});
