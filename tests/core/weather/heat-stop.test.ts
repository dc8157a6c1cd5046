import { describe, expect, it } from 'vitest';
import type { NoticeStep } from '../../../src/core/book/facts.ts';
import { HEAT_OPTIONS, heatStop } from '../../../src/core/weather/heat-stop.ts';
import type { HeatDecision, HeatOptions } from '../../../src/core/weather/heat-stop.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, clearDay, clock, cold, day, hours, shifted, station, warm } from './forecasts.ts';
import type { HourlyTemperature } from '../../../src/core/weather/types.ts';

/** What the rule says at a clock time, to a forecast issued then unless told. */
const ask = (
  current: NoticeStep | null,
  forecast: readonly HourlyTemperature[],
  now: string,
  { issued = now, ...options }: Partial<HeatOptions> & { issued?: string } = {},
): HeatDecision =>
  heatStop(current, { issuedMs: clock(issued), hours: forecast }, station, zoneClock, clock(now), 'heat-1', {
    ...HEAT_OPTIONS,
    ...options,
  });

const raised = (): NoticeStep => {
  const { step } = ask(null, warm, '05:00');
  if (!step) throw new Error('a warm day must raise a stop');
  return step;
};

describe('raising a heat stop', () => {
  it('tells when to stop topping and digging, and the likely restart', () => {
    // 3 °F an hour from 38 at 06:00 passes 55 at 11:40; from 65 at 15:00 it falls 3 °F an hour to 53 at 19:00.
    expect(raised()).toEqual({
      event: 'heat-1',
      number: 1,
      notice: 'heat',
      stage: 'stop',
      source: 'forecast',
      place: 'north-station',
      stopToppingMs: clock('11:10'),
      stopAtMs: clock('11:40'),
      resumeAtMs: clock('21:00'),
      peakF: 65,
      peakMs: clock('15:00'),
      limitF: 55,
      chance: 0.98,
      words: null,
      basis: { forecastMs: clock('05:00'), measured: null },
    });
  });

  it('rounds the stop down and the restart up to five minutes', () => {
    const { step } = ask(
      null,
      day([
        [0, 40],
        [8, 40],
        [15, 64],
        [23, 41],
      ]),
      '05:00',
      { rootLagMin: 0 },
    );
    // Passes 55 at 8 h + 15/24*7 h = 12:22:30; below 53 at 15 h + 11/23*8 h = 18:49:34.
    expect(step).toMatchObject({ stopAtMs: clock('12:20'), resumeAtMs: clock('18:50') });
  });

  it('works back from the crossing so that the last load is piled before it', () => {
    const haul = { fillMin: 12, haulMin: 25, lineWaitMin: 30, unloadMin: 10, marginMin: 15 };
    // Passes 55 at 13:30: the last truck leaves at 12:10, the digger starts its load at 11:58.
    const forecast = day([
      [0, 40],
      [6, 40],
      [14, 56],
      [16, 64],
      [23, 41],
    ]);
    expect(ask(null, forecast, '05:00', { haul }).step).toMatchObject({
      stopAtMs: clock('11:55'),
      stopToppingMs: clock('11:25'),
    });
  });

  it('never tells a time that is past', () => {
    expect(ask(null, warm, '11:25').step).toMatchObject({
      stopToppingMs: clock('11:25'),
      stopAtMs: clock('11:40'),
    });
    expect(ask(null, warm, '13:07').step).toMatchObject({
      stopToppingMs: clock('13:07'),
      stopAtMs: clock('13:07'),
    });
  });

  it('leaves a cool day, and a day whose warmth is over, alone', () => {
    expect(ask(null, cold, '05:00').step).toBeNull();
    expect(ask(null, warm, '20:00').step).toBeNull();
    expect(ask(null, [], '05:00')).toEqual({ step: null, wakeAtMs: null });
  });

  it('leaves tomorrow alone, but looks again at five in the morning', () => {
    const forecast = { issuedMs: at('2026-10-20T02:00Z'), hours: warm };
    const decision = heatStop(null, forecast, station, zoneClock, at('2026-10-20T02:00Z'), 'e');
    expect(decision).toEqual({ step: null, wakeAtMs: clock('05:00') });
  });

  it('gives no restart where the forecast ends before it is cool', () => {
    expect(ask(null, warm.slice(0, 18), '05:00').step).toMatchObject({ stage: 'stop', resumeAtMs: null });
  });

  it('may be raised by an old forecast', () => {
    const forecast = { issuedMs: clock('05:00') - 30 * 3_600_000, hours: warm };
    expect(heatStop(null, forecast, station, zoneClock, clock('05:00'), 'e').step).toMatchObject({
      stage: 'stop',
    });
  });

  it('takes the afternoon of the wall clock on the day of 25 hours', () => {
    // Warm only from 17:10 to 17:50 CST, which is 23:10-23:50Z; the window taken with the summer offset ends at 23:00Z.
    const temperatures = Array.from({ length: 30 }, (_, i) => (i === 23 ? 54 : i === 24 ? 60 : 50));
    const chicago = { ...station, zone: 'America/Chicago' };
    const forecast = { issuedMs: at('2026-11-01T11:00Z'), hours: hours('2026-11-01T00:00Z', temperatures) };
    const { step } = heatStop(null, forecast, chicago, zoneClock, at('2026-11-01T11:00Z'), 'e');
    expect(step?.stopAtMs).toBe(at('2026-11-01T23:10Z'));
  });
});

describe('how sure it is', () => {
  // At 05:00 a 15:00 high comes 0.81 °F warmer, and is off by 2.52 °F (standard deviation): 56 is 76 % above 55, 57 is 87 %.
  const likely = clearDay(56);

  it('makes a watch of what is likely, and a stop of what is nearly sure', () => {
    const watch = ask(null, likely, '05:00').step;
    expect(watch).toMatchObject({ stage: 'watch', number: 1, peakF: 56 });
    expect(watch?.chance).toBeCloseTo(0.764, 2);
    expect(ask(null, clearDay(57), '05:00').step).toMatchObject({ stage: 'stop' });
    // At the limit the bias alone takes it over.
    expect(ask(null, clearDay(55), '05:00').step).toMatchObject({ stage: 'watch', peakF: 55 });
    expect(ask(null, clearDay(54), '05:00').step).toBeNull();
  });

  it('looks at a watch again an hour before the topper must stop, and then likely is enough', () => {
    // 56 at 15:00 after 38 at 06:00: 55 is passed at 14:30.
    const { step, wakeAtMs } = ask(null, likely, '05:00');
    expect(step).toMatchObject({ stopAtMs: clock('14:30'), stopToppingMs: clock('14:00') });
    expect(wakeAtMs).toBe(clock('13:00'));
    expect(ask(step, likely, '12:59', { issued: '05:00' }).step).toBeNull();
    expect(ask(step, likely, '13:00', { issued: '05:00' }).step).toMatchObject({
      event: 'heat-1',
      number: 2,
      stage: 'stop',
      stopAtMs: clock('14:30'),
    });
  });

  it('turns a watch into a stop by a warmer forecast, and calls it off by a cool one', () => {
    const { step } = ask(null, likely, '05:00');
    expect(ask(step, clearDay(60), '08:00').step).toMatchObject({ stage: 'stop', number: 2 });
    expect(ask(step, clearDay(52), '08:00').step).toMatchObject({ stage: 'all-clear', number: 2 });
    expect(ask(step, clearDay(53), '08:00').step).toBeNull();
    expect(ask(step, clearDay(54), '08:00').step).toBeNull();
  });

  it('lets a watch that came to nothing lapse with its day', () => {
    const { step } = ask(null, likely, '05:00');
    const dayMs = 86_400_000;
    const forecast = { issuedMs: clock('05:00') + dayMs, hours: shifted(warm, dayMs) };
    expect(heatStop(step, forecast, station, zoneClock, clock('05:00') + dayMs, 'heat-2').step).toMatchObject(
      {
        event: 'heat-2',
        number: 1,
        stage: 'stop',
      },
    );
  });

  it('learns that forecasts of this place run cool', () => {
    const pairs = Array.from({ length: 90 }, (_, i) => ({
      leadHours: 10,
      forecastF: 50,
      observedF: 52 + (i % 2 === 0 ? 1 : -1),
    }));
    // Three quarters of 2 °F, and a quarter of 0.81: the forecast of 53.9 counts as 55.6.
    expect(ask(null, clearDay(53.9), '05:00', { pairs }).step).toMatchObject({
      stage: 'watch',
      peakF: 53.9,
    });
    expect(ask(null, clearDay(53.9), '05:00').step).toBeNull();
  });
});

describe('a stop that is told but not begun', () => {
  it('is not told again by the same forecast', () => {
    expect(ask(raised(), warm, '05:00')).toEqual({ step: null, wakeAtMs: clock('21:00') });
    expect(ask(raised(), warm, '11:39').step).toBeNull();
  });

  it('moves when its time moves by half an hour, and not by less', () => {
    expect(ask(raised(), shifted(warm, 25 * 60_000), '06:00').step).toBeNull();
    expect(ask(raised(), shifted(warm, 30 * 60_000), '06:00').step).toMatchObject({
      event: 'heat-1',
      number: 2,
      stage: 'update',
      stopAtMs: clock('12:10'),
    });
    expect(ask(raised(), shifted(warm, -30 * 60_000), '06:00').step).toMatchObject({
      stage: 'update',
      stopAtMs: clock('11:10'),
    });
  });

  it('stays when the chance falls a little, and is called off only well below the limit', () => {
    expect(ask(raised(), clearDay(56), '08:00').step).toMatchObject({
      stage: 'update',
      stopAtMs: clock('14:30'),
    });
    expect(ask(raised(), clearDay(54), '08:00').step).toBeNull();
    expect(ask(raised(), cold, '08:00').step).toMatchObject({
      number: 2,
      stage: 'all-clear',
      event: 'heat-1',
    });
  });

  it('is called off only by a fresh forecast of the whole rest of the window', () => {
    expect(ask(raised(), cold.slice(0, 16), '08:00').step).toBeNull();
    const stale = { issuedMs: clock('08:00') - 18 * 3_600_000 - 1, hours: cold };
    expect(heatStop(raised(), stale, station, zoneClock, clock('08:00'), 'e').step).toBeNull();
  });
});

describe('measured roots', () => {
  const reading = (time: string, temperatureF: number): Pick<HeatOptions, 'rootReadings'> => ({
    rootReadings: [{ atMs: clock(time), temperatureF }],
  });

  it('above their limit stop the dig at once, whatever the forecast', () => {
    expect(ask(null, cold, '10:00', reading('09:58', 57)).step).toMatchObject({
      stage: 'stop',
      stopAtMs: clock('10:00'),
      stopToppingMs: clock('10:00'),
      peakF: 57,
      peakMs: clock('09:58'),
      limitF: 55,
      chance: 1,
    });
  });

  it('have a limit of their own', () => {
    const western = { ...station, airLimitF: 65, rootLimitF: 50 };
    const options = { ...HEAT_OPTIONS, ...reading('09:58', 51) };
    const forecast = { issuedMs: clock('09:00'), hours: warm.map((hour) => ({ ...hour, temperatureF: 52 })) };
    expect(heatStop(null, forecast, western, zoneClock, clock('10:00'), 'e', options).step).toMatchObject({
      stage: 'stop',
      limitF: 50,
    });
  });

  it('at their limit, or measured long ago, stop nothing', () => {
    expect(ask(null, cold, '10:00', reading('09:58', 55)).step).toBeNull();
    expect(ask(null, cold, '14:00', reading('09:58', 57)).step).toBeNull();
  });

  it('bring a told stop forward', () => {
    expect(
      ask(raised(), warm, '10:00', { ...reading('09:58', 57), lastStepMs: clock('05:00') }).step,
    ).toMatchObject({
      stage: 'update',
      stopAtMs: clock('10:00'),
    });
  });

  it('raise a stop once, not again after an all-clear that came later', () => {
    const { step } = ask(null, cold, '10:00', reading('09:58', 57));
    const ended: NoticeStep | null = step && { ...step, stage: 'all-clear', number: 2 };
    expect(
      ask(ended, cold, '11:10', { ...reading('09:58', 57), lastStepMs: clock('11:05') }).step,
    ).toBeNull();
  });
});

describe('what people ordered', () => {
  it('is never ended by the forecast', () => {
    const ordered: NoticeStep = { ...raised(), source: 'person', words: 'stop for today' };
    expect(ask(ordered, cold, '08:00').step).toBeNull();
    expect(ask(ordered, warm, '23:00').step).toBeNull();
  });

  it('is not raised again on the day a person gave the all-clear, but is on the next', () => {
    const resumed: NoticeStep = { ...raised(), source: 'person', stage: 'all-clear', number: 2 };
    const lastStepMs = clock('12:30');
    expect(ask(resumed, warm, '13:00', { lastStepMs }).step).toBeNull();
    const dayMs = 86_400_000;
    const forecast = { issuedMs: clock('06:00') + dayMs, hours: shifted(warm, dayMs) };
    const options = { ...HEAT_OPTIONS, lastStepMs };
    expect(
      heatStop(resumed, forecast, station, zoneClock, clock('06:00') + dayMs, 'heat-2', options).step,
    ).toMatchObject({ event: 'heat-2', number: 1, stage: 'stop' });
  });
});
