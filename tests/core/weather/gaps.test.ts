/** A gap in a forecast is unknown, not cool. */
import { describe, expect, it } from 'vitest';
import type { NoticeStep } from '../../../src/core/book/facts.ts';
import { FROST_OPTIONS, coldSpell } from '../../../src/core/weather/cold-spell.ts';
import { crossings, nodesOf, temperatureAt } from '../../../src/core/weather/crossing.ts';
import { frostHold } from '../../../src/core/weather/frost.ts';
import { HEAT_OPTIONS, heatStop } from '../../../src/core/weather/heat-stop.ts';
import type { HourlyTemperature, IssuedForecast } from '../../../src/core/weather/types.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { clearDay, clock, cold, station, warm } from './forecasts.ts';

const HOUR_MS = 3_600_000;
const without = (hours: readonly HourlyTemperature[], from: string, to: string): HourlyTemperature[] =>
  hours.filter(({ startMs }) => startMs < clock(from) || startMs >= clock(to));
const issued = (time: string, hours: readonly HourlyTemperature[]): IssuedForecast => ({
  issuedMs: clock(time),
  hours,
});
const told = heatStop(null, issued('05:00', warm), station, zoneClock, clock('05:00'), 'e').step;
if (!told) throw new Error('a warm day must raise a stop');
const next = (
  forecast: IssuedForecast,
  now: string,
  ...earlier: readonly IssuedForecast[]
): NoticeStep | null =>
  heatStop(told, forecast, station, zoneClock, clock(now), 'e2', { ...HEAT_OPTIONS, earlier }).step;

describe('a line', () => {
  const nodes = (hour: number) =>
    nodesOf([
      { startMs: clock('10:00'), temperatureF: 50 },
      { startMs: clock('10:00') + hour * HOUR_MS, temperatureF: 60 },
    ]);

  it('is drawn across two hours, and no further', () => {
    expect(temperatureAt(nodes(2), clock('11:00'))).toBe(55);
    expect(temperatureAt(nodes(3), clock('11:00'))).toBeNull();
    expect(temperatureAt(nodes(3), clock('13:00'))).toBe(60);
  });

  it('is not drawn through a missing afternoon: warmth on either side reaches into it', () => {
    const window = { fromMs: clock('12:00'), toMs: clock('18:00') };
    const found = crossings(without(warm, '13:00', '20:00'), 55, window);
    // Above 55 from 11:40 to 12:00, and not known to be cool before 20:00.
    expect(found).toMatchObject({ upMs: clock('11:40'), downMs: clock('20:00') });
    const late = crossings(without(clearDay(75), '07:00', '14:00'), 55, window);
    expect(late.upMs).toBe(clock('12:00'));
  });
});

describe('a forecast whose afternoon is missing', () => {
  const gappy = without(warm, '12:00', '18:00');

  it('calls no stop off, however cool its other hours are', () => {
    const coolGap = without(cold, '12:00', '18:00');
    expect(next(issued('08:00', coolGap), '08:00', issued('07:00', coolGap))).toBeNull();
    expect(next(issued('08:00', cold), '08:00', issued('07:00', cold))).toMatchObject({
      stage: 'all-clear',
    });
  });

  it('ends no stop before it is known to be cool', () => {
    // The hours after 14:00 are missing until 22:00, and then the roots take two more.
    expect(next(issued('13:00', without(warm, '15:00', '22:00')), '21:00')).toMatchObject({
      stage: 'update',
      resumeAtMs: clock('22:00') + 2 * HOUR_MS,
    });
    expect(next(issued('13:00', gappy), '13:05')).toBeNull();
  });
});

describe('an early call-off', () => {
  it('needs two issues that agree; the same one heard twice is one', () => {
    expect(next(issued('08:00', cold), '08:00', issued('05:00', warm))).toBeNull();
    expect(next(issued('09:00', cold), '09:00', issued('05:00', warm), issued('08:00', cold))).toMatchObject({
      stage: 'all-clear',
    });
  });
});

describe('a frost hold', () => {
  const night = (lowF: number): HourlyTemperature[] =>
    Array.from({ length: 18 }, (_, hour) => ({
      startMs: clock('15:00') + hour * HOUR_MS,
      temperatureF: hour < 4 ? 45 : hour < 16 ? lowF : 40,
    }));
  const hold = frostHold(null, issued('15:00', night(20)), station, clock('15:00'), 'f').step;
  if (!hold) throw new Error('a hard frost must raise a hold');
  const after = (hours: readonly HourlyTemperature[], ...earlier: readonly IssuedForecast[]) =>
    frostHold(hold, issued('17:00', hours), station, clock('17:00'), 'f', { ...FROST_OPTIONS, earlier }).step;

  it('is not called off by a night that is missing, nor by one issue alone', () => {
    const mild = night(35);
    expect(after(mild)).toMatchObject({ stage: 'all-clear' });
    expect(after(mild, issued('15:00', night(20)))).toBeNull();
    expect(after(mild, issued('16:00', mild))).toMatchObject({ stage: 'all-clear' });
    const missing = mild.filter((_, hour) => hour < 3 || hour > 15);
    expect(after(missing)).toBeNull();
  });

  it('begins as soon as the cold may have come, and thaws no sooner than is known', () => {
    const gappy = night(20).filter((_, hour) => hour < 2 || hour > 9);
    const spell = coldSpell(issued('15:00', gappy), clock('15:00'), FROST_OPTIONS);
    expect(spell?.holdMs).toBe(clock('15:00') + 8 * HOUR_MS);
    const dark = night(20).filter((_, hour) => hour < 6 || hour === 17);
    expect(coldSpell(issued('15:00', dark), clock('15:00'), FROST_OPTIONS)?.thawMs).toBe(
      clock('15:00') + 17 * HOUR_MS,
    );
  });
});
