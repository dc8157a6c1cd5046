import { describe, expect, it } from 'vitest';
import type { NoticeStep } from '../../../src/core/book/facts.ts';
import { HEAT_OPTIONS, heatStop } from '../../../src/core/weather/heat-stop.ts';
import type { HeatDecision, HeatOptions } from '../../../src/core/weather/heat-stop.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { HOUR_MS, clock, day, hours, shifted, station, warm } from './forecasts.ts';
import type { HourlyTemperature } from '../../../src/core/weather/types.ts';

/** A stop that was told at 05:00 for 11:40; by the same forecast the air is at 53 °F at 19:00. */
const stop: NoticeStep = {
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
};

const ask = (
  forecast: readonly HourlyTemperature[],
  now: string,
  { issued = '05:00', ...options }: Partial<HeatOptions> & { issued?: string } = {},
): HeatDecision =>
  heatStop(stop, { issuedMs: clock(issued), hours: forecast }, station, zoneClock, clock(now), 'heat-2', {
    ...HEAT_OPTIONS,
    lastStepMs: clock('05:00'),
    ...options,
  });

describe('the restart after a heat stop', () => {
  it('comes two hours after the air is cool, and not before, with no newer forecast needed', () => {
    expect(ask(warm, '20:59')).toEqual({ step: null, wakeAtMs: clock('21:00') });
    expect(ask(warm, '21:00').step).toEqual({
      ...stop,
      number: 2,
      stage: 'all-clear',
      resumeAtMs: clock('21:00'),
      basis: { forecastMs: clock('05:00'), measured: null },
    });
  });

  it('is not put off by each hourly forecast, though each begins now', () => {
    const issued = (hour: number): { issuedMs: number; hours: HourlyTemperature[] } => ({
      issuedMs: clock(`${hour}:00`),
      hours: warm.filter((entry) => entry.startMs >= clock(`${hour}:00`)),
    });
    const earlier = [{ issuedMs: clock('05:00'), hours: warm }, ...[17, 18, 19, 20].map(issued)];
    expect(ask(issued(21).hours, '21:00', { issued: '21:00', earlier }).step).toMatchObject({
      stage: 'all-clear',
    });
  });

  it('needs the forecast before to agree', () => {
    const late = [{ issuedMs: clock('04:00'), hours: shifted(warm, HOUR_MS) }];
    expect(ask(warm, '21:30', { earlier: late })).toMatchObject({ wakeAtMs: clock('22:00') });
    expect(ask(warm, '22:00', { earlier: late }).step).toMatchObject({ stage: 'all-clear' });
  });

  it('does not mind a forecast before that is too old', () => {
    const old = [{ issuedMs: clock('21:00') - 19 * HOUR_MS, hours: shifted(warm, HOUR_MS) }];
    expect(ask(warm, '21:00', { earlier: old }).step).toMatchObject({ stage: 'all-clear' });
  });

  it('does not come of the forecast before where the newest sees no end of the warmth', () => {
    const before = [{ issuedMs: clock('04:00'), hours: warm }];
    const staysWarm = day([
      [0, 40],
      [6, 38],
      [15, 65],
      [23, 65],
    ]);
    expect(ask(staysWarm, '22:00', { earlier: before })).toEqual({ step: null, wakeAtMs: null });
  });

  it('never comes of an old forecast', () => {
    const forecast = { issuedMs: clock('21:05') - 18 * HOUR_MS - 1, hours: warm };
    expect(heatStop(stop, forecast, station, zoneClock, clock('21:05'), 'e')).toEqual({
      step: null,
      wakeAtMs: null,
    });
  });

  it('comes no sooner than an hour after the last step', () => {
    expect(ask(warm, '21:30', { lastStepMs: clock('20:45') })).toEqual({
      step: null,
      wakeAtMs: clock('21:45'),
    });
    expect(ask(warm, '21:45', { lastStepMs: clock('20:45') }).step).toMatchObject({ stage: 'all-clear' });
  });

  it('waits for an hour two degrees below the limit', () => {
    // 54 °F from 16:00 on is within the limit of 55, but no restart; below 53 °F for forty minutes around 20:00 neither.
    const hanging = day([
      [0, 40],
      [6, 38],
      [15, 65],
      [16, 54],
      [23, 54],
    ]);
    expect(ask(hanging, '22:00')).toEqual({ step: null, wakeAtMs: null });
    const dip = day([
      [0, 40],
      [6, 38],
      [15, 65],
      [16, 54],
      [19, 54],
      [20, 52.5],
      [21, 54],
      [23, 54],
    ]);
    expect(ask(dip, '22:30')).toEqual({ step: null, wakeAtMs: null });
  });

  /** 65 °F at 15:00, 53 °F at 16:00 (two degrees below the limit), then as given. */
  const from4pm = (...corners: readonly (readonly [number, number])[]): HourlyTemperature[] =>
    day([[0, 40], [6, 38], [15, 65], [16, 53], ...corners]);

  it('comes of little more than an hour two degrees below the limit', () => {
    // Above 53 °F again at 17:24, but never above 55 °F.
    expect(ask(from4pm([17, 52], [18, 54.5], [23, 54.5]), '18:00').step).toMatchObject({
      stage: 'all-clear',
    });
  });

  it('comes where the dig may then go on for four hours, and not for less', () => {
    // Above 55 °F again at 21:00, and at 19:30.
    expect(ask(from4pm([17, 50], [20, 50], [21, 55], [22, 60], [23, 60]), '18:00').step).toMatchObject({
      stage: 'all-clear',
    });
    expect(ask(from4pm([17, 50], [18, 50], [19, 54], [20, 56], [23, 60]), '18:00').step).toBeNull();
  });

  it('does not come for a short cool spell before it is warm again', () => {
    const front = day([
      [0, 40],
      [6, 38],
      [12, 60],
      [13, 50],
      [15, 50],
      [16, 60],
      [18, 60],
      [23, 40],
    ]);
    expect(ask(front, '15:10').step).toBeNull();
    expect(ask(front, '15:10').wakeAtMs).toBeGreaterThan(clock('18:00'));
  });

  it('is told anew when it moves by an hour, and not by less', () => {
    expect(ask(shifted(warm, 55 * 60_000), '16:00', { issued: '16:00' }).step).toBeNull();
    expect(ask(shifted(warm, HOUR_MS), '16:00', { issued: '16:00' }).step).toEqual({
      ...stop,
      number: 2,
      stage: 'update',
      resumeAtMs: clock('22:00'),
      restartOnly: true,
    });
  });

  it('comes next morning where the night stays warm', () => {
    const night = hours('2026-10-20T00:00-06:00', [
      ...warm.slice(0, 16).map((hour) => hour.temperatureF),
      ...Array.from({ length: 16 }, () => 58),
      ...Array.from({ length: 16 }, () => 45),
    ]);
    const nextMorning = clock('09:15') + 24 * HOUR_MS;
    const forecast = { issuedMs: clock('23:00'), hours: night };
    const options = { ...HEAT_OPTIONS, lastStepMs: clock('05:00') };
    // 58 at 07:00 and 45 at 08:00: 53 at 07:23:05, and two hours for the roots.
    expect(heatStop(stop, forecast, station, zoneClock, nextMorning, 'e', options)).toMatchObject({
      wakeAtMs: clock('09:25') + 24 * HOUR_MS,
    });
    const later = nextMorning + 10 * 60_000;
    expect(heatStop(stop, forecast, station, zoneClock, later, 'e', options).step).toMatchObject({
      stage: 'all-clear',
    });
  });

  it('does not flip-flop while the forecast wobbles around the limit', () => {
    let current: NoticeStep | null = null;
    let lastStepMs: number | null = null;
    const stages: string[] = [];
    for (let minute = 5 * 60; minute < 24 * 60; minute += 20) {
      const wobble = [-0.1, 0.1, -0.1, 0.15][(minute / 20) % 4] ?? 0;
      const forecast = day([
        [0, 40],
        [12, 54],
        [14, 55],
        [16, 54],
        [23, 41],
      ]).map((hour) => ({
        ...hour,
        temperatureF: hour.temperatureF + wobble,
      }));
      const nowMs = clock('00:00') + minute * 60_000;
      const options: HeatOptions = { ...HEAT_OPTIONS, lastStepMs };
      const { step } = heatStop(
        current,
        { issuedMs: nowMs, hours: forecast },
        station,
        zoneClock,
        nowMs,
        'e',
        options,
      );
      if (step) {
        stages.push(step.stage);
        current = step;
        lastStepMs = nowMs;
      }
    }
    expect(stages.filter((stage) => stage !== 'update')).toEqual(['watch', 'stop', 'all-clear']);
    expect(stages.length).toBeLessThan(6);
  });

  it('is not followed by another stop that evening', () => {
    const { step } = ask(warm, '21:00');
    const again = heatStop(
      step,
      { issuedMs: clock('21:00'), hours: warm },
      station,
      zoneClock,
      clock('21:05'),
      'e',
    );
    expect(again.step).toBeNull();
  });
});

describe('measured roots', () => {
  it('within their limit since the stop need no more waiting once the air is cool', () => {
    const rootReadings = [{ atMs: clock('18:50'), temperatureF: 54 }];
    expect(ask(warm, '19:00', { rootReadings }).step).toMatchObject({ stage: 'all-clear' });
    expect(ask(warm, '18:55', { rootReadings }).step).toMatchObject({
      stage: 'update',
      resumeAtMs: clock('19:00'),
    });
    const before = [{ atMs: clock('11:30'), temperatureF: 50 }];
    expect(ask(warm, '15:00', { rootReadings: before })).toEqual({ step: null, wakeAtMs: clock('21:00') });
  });

  it('still too warm put the restart off, until they are measured again or the reading is four hours old', () => {
    const hot = { atMs: clock('20:30'), temperatureF: 57 };
    expect(ask(warm, '21:00', { rootReadings: [hot] }).step).not.toMatchObject({ stage: 'all-clear' });
    const cool = { atMs: clock('21:10'), temperatureF: 54 };
    expect(ask(warm, '21:15', { rootReadings: [hot, cool] }).step).toMatchObject({ stage: 'all-clear' });
    const afternoon = [{ atMs: clock('16:00'), temperatureF: 57 }];
    expect(ask(warm, '21:00', { rootReadings: afternoon }).step).toMatchObject({ stage: 'all-clear' });
  });
});

describe("the station's own word", () => {
  const said = (
    time: string,
    open: boolean,
    until: string | null = null,
  ): Pick<HeatOptions, 'stationWord'> => ({
    stationWord: { atMs: clock(time), open, untilMs: until === null ? null : clock(until) },
  });

  it('ends a stop while the forecast is still warm, and keeps it ended that day', () => {
    const { step } = ask(warm, '14:00', said('13:55', true));
    expect(step).toMatchObject({ stage: 'all-clear', source: 'person' });
    const options = { ...HEAT_OPTIONS, lastStepMs: clock('14:00') };
    const forecast = { issuedMs: clock('14:30'), hours: warm };
    expect(heatStop(step, forecast, station, zoneClock, clock('14:30'), 'e', options).step).toBeNull();
  });

  it('of the morning does not end the stop of the afternoon', () => {
    expect(ask(warm, '14:00', said('06:00', true)).step).toBeNull();
  });

  it('holds a stop that the forecast would end', () => {
    expect(ask(warm, '21:00', said('14:00', false)).step).toBeNull();
    expect(ask(warm, '21:00', said('14:00', false, '22:30'))).toMatchObject({ wakeAtMs: clock('22:30') });
    expect(ask(warm, '22:30', said('14:00', false, '22:30')).step).toMatchObject({ stage: 'all-clear' });
  });

  it('keeps a stop from being raised where it takes beets in the heat', () => {
    const forecast = { issuedMs: clock('13:00'), hours: warm };
    const options = { ...HEAT_OPTIONS, ...said('12:30', true) };
    expect(heatStop(null, forecast, station, zoneClock, clock('13:00'), 'e', options).step).toBeNull();
  });
});
