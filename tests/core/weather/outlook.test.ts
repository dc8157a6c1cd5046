import { describe, expect, it } from 'vitest';
import { OUTLOOK_OPTIONS, outlook } from '../../../src/core/weather/outlook.ts';
import type { Outlook, OutlookOptions } from '../../../src/core/weather/outlook.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { HOUR_MS, clearDay, clock, hours, shifted, station } from './forecasts.ts';

const DAY_MS = 24 * HOUR_MS;
const twoDays = (highF: number, nextHighF: number): ReturnType<typeof clearDay> => [
  ...clearDay(highF),
  ...shifted(clearDay(nextHighF), DAY_MS),
];
const look = (
  highF: number,
  nextHighF: number,
  time: string,
  addDays: number,
  options: Partial<OutlookOptions> = {},
): Outlook => {
  const forecast = { issuedMs: clock(time), hours: twoDays(highF, nextHighF) };
  return outlook(forecast, station, zoneClock, clock(time), addDays, { ...OUTLOOK_OPTIONS, ...options });
};

describe('the outlook', () => {
  it('of the evening tells of tomorrow: the stop and its chance', () => {
    const { dayMs, heat } = look(52, 65, '19:00', 1);
    expect(dayMs).toBe(clock('00:00') + DAY_MS);
    expect(heat).toMatchObject({
      likely: 'stop',
      chance: 0.98,
      peakF: 65,
      stopAtMs: clock('11:40') + DAY_MS,
      stopToppingMs: clock('11:10') + DAY_MS,
    });
  });

  it('of five in the morning tells of today', () => {
    expect(look(56, 40, '05:00', 0).heat).toMatchObject({
      likely: 'watch',
      peakF: 56,
      stopAtMs: clock('14:30'),
    });
    expect(look(52, 70, '05:00', 0).heat).toMatchObject({ likely: 'no-stop', stopAtMs: null, peakF: 52 });
  });

  it('gives the chance also where no stop is likely', () => {
    // 3 °F under the limit, 20 h ahead: it comes 0.89 °F warmer, give or take 2.68 °F, so 22 %.
    expect(look(70, 52, '19:00', 1).heat.chance).toBeCloseTo(0.216, 2);
  });

  it('knows how warm the roots will be under leaves and topped, and on what that rests', () => {
    const { roots } = look(65, 65, '05:00', 0);
    expect(roots?.canopiedF).toBeLessThan(60);
    expect(roots?.canopiedF).toBeGreaterThan(45);
    // Topped at 11:10, so 3 h 50 min of sun until 15:00: 13.5 °F, the most.
    expect(roots?.toppedF).toBeCloseTo((roots?.canopiedF ?? NaN) + 13.5, 10);
    expect(roots?.because).toMatchObject({ depthCm: 12, dampingCm: 11 });
  });

  it('says not to top ahead of a frost, by the forecast or by an alert', () => {
    const cold = hours(
      '2026-10-20T15:00-06:00',
      [44, 40, 36, 34, 32, 30, 28, 27, 26, 26, 26, 26, 27, 29, 33, 40, 45, 50],
    );
    const forecast = { issuedMs: clock('15:00'), hours: cold };
    const frost = outlook(forecast, station, zoneClock, clock('19:00'), 1).frost;
    expect(frost).toEqual({
      likely: 'watch',
      topAhead: false,
      lowF: 26,
      lowMs: clock('23:00'),
      thawMs: clock('04:45') + DAY_MS,
    });
    const alert = { id: 'a', event: 'Frost Advisory', onsetMs: clock('02:00') + DAY_MS, endsMs: null };
    const alerted = { frost: { ...OUTLOOK_OPTIONS.frost, alerts: [alert] } };
    expect(look(52, 52, '19:00', 1).frost).toMatchObject({ likely: 'no-frost', topAhead: true });
    expect(look(52, 52, '19:00', 1, alerted).frost).toMatchObject({ likely: 'watch', topAhead: false });
  });

  it('adds up the rain of the day and of three', () => {
    const rain = [
      { fromMs: clock('00:00') + DAY_MS, toMs: clock('06:00') + DAY_MS, inches: 0.27 },
      { fromMs: clock('00:00') + 3 * DAY_MS, toMs: clock('06:00') + 3 * DAY_MS, inches: 0.82 },
    ];
    const { rainInches } = look(52, 52, '19:00', 1, { rain });
    expect(rainInches.day).toBeCloseTo(0.27, 10);
    expect(rainInches.threeDays).toBeCloseTo(1.09, 10);
  });

  it('says nothing of a day that is not forecast', () => {
    const { heat, frost, roots } = outlook({ issuedMs: 0, hours: [] }, station, zoneClock, clock('05:00'), 0);
    expect(heat).toMatchObject({ likely: 'no-stop', chance: null, peakF: null });
    expect(frost).toMatchObject({ likely: 'no-frost', lowF: null });
    expect(roots).toBeNull();
  });
});
