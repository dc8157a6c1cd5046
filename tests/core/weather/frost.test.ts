import { describe, expect, it } from 'vitest';
import type { NoticeStep } from '../../../src/core/book/facts.ts';
import { FROST_OPTIONS, frostHold } from '../../../src/core/weather/frost.ts';
import type { FrostDecision, FrostOptions } from '../../../src/core/weather/frost.ts';
import { rainWithin } from '../../../src/core/weather/rain.ts';
import { HOUR_MS, at, clock, hours, station } from './forecasts.ts';
import type { HourlyTemperature } from '../../../src/core/weather/types.ts';

/** From 15:00 on: 44 °F, falling 2 °F an hour to the low at 06:00, then 4 °F an hour up. */
const night = (lowF: number): HourlyTemperature[] =>
  hours(
    '2026-10-20T15:00-06:00',
    Array.from({ length: 24 }, (_, i) => (i <= 15 ? lowF + (15 - i) * 2 : lowF + (i - 15) * 4)),
  );
const hard = night(20);
const tomorrow = (time: string): number => clock(time) + 24 * HOUR_MS;

const ask = (
  current: NoticeStep | null,
  forecast: readonly HourlyTemperature[],
  nowMs: number,
  { issuedMs = nowMs, ...options }: Partial<FrostOptions> & { issuedMs?: number } = {},
): FrostDecision =>
  frostHold(current, { issuedMs, hours: forecast }, station, nowMs, 'frost-1', {
    ...FROST_OPTIONS,
    ...options,
  });

const hold = (): NoticeStep => {
  const { step } = ask(null, hard, clock('15:00'));
  if (!step) throw new Error('a hard frost must raise a hold');
  return step;
};

describe('a frost hold', () => {
  it('is raised the evening before, and says until when to top', () => {
    // 28 °F at 02:00, 24 °F at 04:00, 20 °F at 06:00, above 32 °F from 09:00.
    expect(ask(null, hard, clock('15:00'))).toEqual({
      step: {
        event: 'frost-1',
        number: 1,
        notice: 'frost',
        stage: 'stop',
        source: 'forecast',
        place: 'north-station',
        stopToppingMs: tomorrow('01:30'),
        stopAtMs: tomorrow('04:00'),
        resumeAtMs: null,
        peakF: 20,
        peakMs: tomorrow('06:00'),
        limitF: 24,
        chance: null,
        words: null,
        basis: { forecastMs: clock('15:00'), measured: null },
      },
      wakeAtMs: null,
      thawMs: tomorrow('09:00'),
    });
  });

  it('is a watch on a light frost: do not top ahead, but dig', () => {
    expect(ask(null, night(26), clock('15:00')).step).toMatchObject({
      stage: 'watch',
      stopAtMs: null,
      stopToppingMs: tomorrow('04:30'),
      limitF: 28,
    });
    expect(ask(null, night(29), clock('15:00')).step).toBeNull();
  });

  it('is a watch on an alert where the forecast is milder', () => {
    const alert = { id: 'a', event: 'Freeze Warning', onsetMs: tomorrow('02:00'), endsMs: tomorrow('09:00') };
    expect(ask(null, night(33), clock('15:00'), { alerts: [alert] }).step).toMatchObject({
      stage: 'watch',
      stopToppingMs: tomorrow('01:30'),
    });
    const over = { ...alert, onsetMs: clock('01:00'), endsMs: clock('09:00') };
    expect(ask(null, night(33), clock('15:00'), { alerts: [over] }).step).toBeNull();
  });

  it('looks a day ahead, and again when the cold comes within a day', () => {
    expect(ask(null, hard, clock('01:00'))).toMatchObject({ step: null, wakeAtMs: clock('02:00') });
    expect(ask(null, hard, clock('02:00')).step).toMatchObject({ stage: 'watch' });
  });

  it('grows from a watch, moves by half an hour, and is called off before it begins', () => {
    const watch = ask(null, night(26), clock('15:00')).step;
    expect(ask(watch, hard, clock('16:00')).step).toMatchObject({
      stage: 'stop',
      number: 2,
      event: 'frost-1',
    });
    expect(ask(hold(), night(19), clock('16:00')).step).toMatchObject({
      stage: 'update',
      stopAtMs: tomorrow('03:30'),
    });
    expect(ask(hold(), hard, clock('16:00')).step).toBeNull();
    expect(ask(hold(), night(25), clock('16:00')).step).toBeNull();
    expect(ask(hold(), night(26), clock('16:00')).step).toMatchObject({ stage: 'all-clear' });
    const stale = { issuedMs: clock('16:00') - 19 * HOUR_MS };
    expect(ask(hold(), night(26), clock('16:00'), stale).step).toBeNull();
  });

  it('is told once as a watch: the same light frost, or a mild night after all, is not told again', () => {
    const watch = ask(null, night(26), clock('15:00')).step;
    expect(ask(watch, night(26), clock('16:00')).step).toBeNull();
    expect(ask(watch, night(40), clock('16:00')).step).toBeNull();
  });

  it('once begun is ended by no forecast, however warm', () => {
    expect(ask(hold(), night(60), tomorrow('05:00')).step).toBeNull();
    expect(ask(hold(), night(60), tomorrow('14:00')).step).toBeNull();
  });

  it('is ended by a sound crown cut since it began, if no later one was found frozen', () => {
    const check = (time: string, sound: boolean): { atMs: number; sound: boolean } => ({
      atMs: tomorrow(time),
      sound,
    });
    const at11 = (...crownChecks: FrostOptions['crownChecks']): NoticeStep | null =>
      ask(hold(), hard, tomorrow('11:00'), { crownChecks }).step;
    expect(at11(check('10:30', true))).toMatchObject({ stage: 'all-clear', source: 'person', number: 2 });
    expect(at11(check('10:30', false))).toBeNull();
    expect(at11(check('09:00', true), check('10:30', false))).toBeNull();
    expect(at11(check('10:30', true), check('09:00', false))).toMatchObject({ stage: 'all-clear' });
    expect(at11(check('03:00', true))).toBeNull();
    expect(at11(check('11:30', true))).toBeNull();
  });

  it('is not raised again for the cold that a person has judged, but is for the next night', () => {
    const ended: NoticeStep = { ...hold(), stage: 'all-clear', source: 'person', number: 2 };
    expect(ask(ended, hard, tomorrow('07:30')).step).toBeNull();
    const next = hard.map((hour) => ({ ...hour, startMs: hour.startMs + 24 * HOUR_MS }));
    expect(ask(ended, next, tomorrow('15:00')).step).toMatchObject({ stage: 'stop', number: 1 });
  });

  it('ordered by a person is left to people, and another notice is none of its business', () => {
    expect(ask({ ...hold(), source: 'person' }, night(60), clock('16:00')).step).toBeNull();
    expect(ask({ ...hold(), notice: 'heat' }, hard, clock('16:00')).step).toMatchObject({
      number: 1,
      notice: 'frost',
    });
  });

  it('is not raised without a forecast', () => {
    expect(ask(null, [], clock('15:00'))).toEqual({ step: null, wakeAtMs: null, thawMs: null });
  });
});

describe('rain', () => {
  const totals = [
    { fromMs: at('2026-10-20T12:00Z'), toMs: at('2026-10-20T18:00Z'), inches: 0.3 },
    { fromMs: at('2026-10-20T18:00Z'), toMs: at('2026-10-21T00:00Z'), inches: 0.12 },
  ];

  it('of whole periods is added up, of those at the ends shared out', () => {
    const within = (from: string, to: string): number =>
      rainWithin(totals, { fromMs: at(from), toMs: at(to) });
    expect(within('2026-10-20T00:00Z', '2026-10-22T00:00Z')).toBeCloseTo(0.42, 10);
    expect(within('2026-10-20T15:00Z', '2026-10-20T20:00Z')).toBeCloseTo(0.15 + 0.04, 10);
    expect(within('2026-10-21T00:00Z', '2026-10-22T00:00Z')).toBe(0);
  });
});
