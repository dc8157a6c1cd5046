import { describe, expect, it } from 'vitest';
import { freezeAlerts } from '../../../adapters/nws/alerts.ts';
import { parseInterval } from '../../../adapters/nws/interval.ts';
import { parseGrid, parseHourly } from '../../../adapters/nws/parse.ts';
import type { NwsForecast, Checked } from '../../../adapters/nws/parse.ts';
import { alertFields, alertsReply, gridReply, hourlyReply, period } from '../../support/nws-replies.ts';
import type { GridParts } from '../../support/nws-replies.ts';

const HOUR_MS = 3_600_000;
const at = (iso: string): number => Date.parse(iso);
const nowMs = at('2026-10-15T13:20Z');
const updateTime = '2026-10-15T11:20:00+00:00';

const read = (reading: Checked<NwsForecast>): NwsForecast => {
  if ('faulty' in reading) throw new Error(reading.faulty);
  return reading.read;
};
const grid = (parts: Partial<GridParts>, now = nowMs): NwsForecast =>
  read(
    parseGrid(
      gridReply({ updateTime, temperature: [['2026-10-15T13:00:00+00:00/PT1H', 10]], ...parts }),
      now,
    ),
  );

describe('intervals of a grid', () => {
  it.each([
    ['2026-10-15T05:00:00+00:00/PT1H', 1],
    ['2026-10-15T05:00:00+00:00/P1D', 24],
    ['2026-10-15T05:00:00+00:00/P1DT1H', 25],
    ['2026-10-15T05:00:00+00:00/P7DT6H', 174],
    ['2026-10-15T05:00:00+00:00/PT72H', 72],
    ['2026-10-15T05:00:00+00:00/2026-10-15T08:00:00+00:00', 3],
    ['PT3H/2026-10-15T08:00:00+00:00', 3],
  ])('%s is %d hours', (text, hours) => {
    const interval = parseInterval(text, nowMs);
    expect(interval?.fromMs).toBe(at('2026-10-15T05:00Z'));
    expect((interval?.toMs ?? NaN) - (interval?.fromMs ?? NaN)).toBe(hours * HOUR_MS);
  });

  it('count 24 hours a day also over the end of daylight time', () => {
    const interval = parseInterval('2026-11-01T00:00:00-05:00/P1DT1H', nowMs);
    expect(interval?.toMs).toBe(at('2026-11-02T06:00Z'));
    expect(parseInterval('2026-10-29T00:00:00+00:00/P7DT14H', nowMs)?.toMs).toBe(at('2026-11-05T14:00Z'));
  });

  it('may say NOW', () => {
    expect(parseInterval('NOW/PT2H', nowMs)).toEqual({ fromMs: nowMs, toMs: nowMs + 2 * HOUR_MS });
  });

  it.each([
    '',
    '2026-10-15',
    'PT1H',
    'P1M/2026-10-15T08:00Z',
    'a/b',
    '2026-10-15T05:00Z/PT0H',
    'NOW/PT1H/PT1H',
  ])('are none in "%s"', (text) => {
    expect(parseInterval(text, nowMs)).toBeNull();
  });
});

describe('a grid', () => {
  it('starts in the past, and is clipped to the hour that holds now', () => {
    const { hours, issuedMs } = grid({
      temperature: [
        ['2026-10-15T05:00:00+00:00/PT8H', 5],
        ['2026-10-15T13:00:00+00:00/PT2H', 10],
      ],
    });
    expect(issuedMs).toBe(at('2026-10-15T11:20Z'));
    expect(hours).toEqual([
      { startMs: at('2026-10-15T13:00Z'), temperatureF: 50 },
      { startMs: at('2026-10-15T14:00Z'), temperatureF: 50 },
    ]);
  });

  it('spreads a merged interval over the 25 hours of a day, each with its own instant', () => {
    const { hours } = grid({ temperature: [['2026-11-01T05:00:00+00:00/P1DT1H', 10]] });
    expect(hours).toHaveLength(25);
    expect(new Set(hours.map((hour) => hour.startMs)).size).toBe(25);
  });

  it('does not take 55 °F that went through °C for more than 55 °F', () => {
    const of = (celsius: number): number | undefined =>
      grid({ temperature: [['2026-10-15T13:00:00+00:00/PT1H', celsius]] }).hours[0]?.temperatureF;
    expect(of(12.777777777777779)).toBe(55);
    expect(of(12.77777777777778)).toBe(55);
    expect(of(13.333333333333334)).toBe(56);
  });

  it('leaves out nulls in silence, and what cannot be with a remark', () => {
    const { hours, remarks } = grid({
      temperature: [
        ['2026-10-15T13:00:00+00:00/PT1H', null],
        ['2026-10-15T14:00:00+00:00/PT1H', 200],
        ['tomorrow/PT1H', 10],
        ['2026-10-15T15:00:00+00:00/PT1H', 10],
      ],
    });
    expect(hours).toEqual([{ startMs: at('2026-10-15T15:00Z'), temperatureF: 50 }]);
    expect(remarks).toEqual([
      'temperature has a time that cannot be read: "tomorrow/PT1H"',
      'temperature has 1 values beyond ±60 °C: left out',
    ]);
  });

  it.each(['wmoUnit:degF', 'wmoUnit:K', ''])(
    'is refused, not guessed at, in unit "%s"',
    (temperatureUnit) => {
      const temperature = [['2026-10-15T13:00:00+00:00/PT1H', 50]] as const;
      expect(parseGrid(gridReply({ updateTime, temperature, temperatureUnit }), nowMs)).toHaveProperty(
        'faulty',
      );
    },
  );

  it('understands the older way of naming the unit', () => {
    expect(grid({ temperatureUnit: 'unit:degC' }).hours).toHaveLength(1);
  });

  it('is faulty without temperatures to come, and with a time of issue that cannot be read', () => {
    expect(parseGrid(gridReply({ updateTime }), nowMs)).toHaveProperty('faulty');
    expect(
      parseGrid(gridReply({ updateTime, temperature: [['2026-10-15T05:00:00+00:00/PT8H', 5]] }), nowMs),
    ).toHaveProperty('faulty');
    expect(
      parseGrid(
        gridReply({ updateTime: 'soon', temperature: [['2026-10-15T13:00:00+00:00/PT1H', 10]] }),
        nowMs,
      ),
    ).toHaveProperty('faulty');
  });

  it('gives the highs of periods to come as the service states them', () => {
    const { highs } = grid({
      maxTemperature: [
        ['2026-10-14T13:00:00+00:00/PT13H', 25],
        ['2026-10-15T13:00:00+00:00/PT13H', 13.333333333333334],
      ],
    });
    expect(highs).toEqual([
      { fromMs: at('2026-10-15T13:00Z'), toMs: at('2026-10-16T02:00Z'), temperatureF: 56 },
    ]);
  });

  it('gives rain as totals of whole intervals', () => {
    const { rain } = grid({ rain: [['2026-10-15T12:00:00+00:00/PT6H', 25.4]] });
    expect(rain).toEqual([{ fromMs: at('2026-10-15T12:00Z'), toMs: at('2026-10-15T18:00Z'), inches: 1 }]);
  });
});

describe('an hourly forecast', () => {
  const hourly = (...periods: readonly unknown[]): NwsForecast =>
    read(parseHourly(hourlyReply(updateTime, periods), nowMs));

  it('carries local offsets and either plain °F or quantities', () => {
    const { hours } = hourly(
      period('2026-10-15T07:00:00-06:00', '2026-10-15T08:00:00-06:00', 50),
      period('2026-10-15T08:00:00-06:00', '2026-10-15T09:00:00-06:00', {
        unitCode: 'wmoUnit:degC',
        value: 15,
      }),
      period('2026-10-15T09:00:00-06:00', '2026-10-15T10:00:00-06:00', 10, 'C'),
    );
    expect(hours).toEqual([
      { startMs: at('2026-10-15T13:00Z'), temperatureF: 50 },
      { startMs: at('2026-10-15T14:00Z'), temperatureF: 59 },
      { startMs: at('2026-10-15T15:00Z'), temperatureF: 50 },
    ]);
  });

  it('leaves out a unit it does not know, and says so', () => {
    const { hours, remarks } = hourly(
      period('2026-10-15T07:00:00-06:00', '2026-10-15T08:00:00-06:00', 50),
      period('2026-10-15T08:00:00-06:00', '2026-10-15T09:00:00-06:00', 288, 'K'),
    );
    expect(hours).toHaveLength(1);
    expect(remarks).toEqual(['2026-10-15T08:00:00-06:00 is in degK: left out']);
  });

  it('keeps apart the two hours named 01:00 on the day of 25 hours', () => {
    const { hours } = hourly(
      period('2026-11-01T01:00:00-05:00', '2026-11-01T01:00:00-06:00', 50),
      period('2026-11-01T01:00:00-06:00', '2026-11-01T02:00:00-06:00', 48),
    );
    expect(hours.map((hour) => hour.startMs)).toEqual([at('2026-11-01T06:00Z'), at('2026-11-01T07:00Z')]);
  });
});

describe('frost alerts', () => {
  const eventsOf = (...alerts: readonly Record<string, unknown>[]): string[] | undefined =>
    freezeAlerts([alertsReply(...alerts)], nowMs)?.map((alert) => alert.event);
  const vtec = (code: string): Record<string, unknown> => ({ parameters: { VTEC: [code] } });

  it('are those in force, with their times', () => {
    expect(
      freezeAlerts([alertsReply(alertFields({}), alertFields({ id: '2', event: 'Wind Advisory' }))], nowMs),
    ).toEqual([
      {
        id: 'urn:oid:2.49.0.1.840.0.1',
        event: 'Freeze Warning',
        onsetMs: at('2026-10-16T08:00Z'),
        endsMs: at('2026-10-16T15:00Z'),
      },
    ]);
  });

  it.each(['FROST ADVISORY', 'freeze watch', 'Hard Freeze Warning'])(
    'go by %s in any case of letters',
    (event) => {
      expect(eventsOf(alertFields({ event }))).toEqual([event]);
    },
  );

  it.each([
    ['upgraded', vtec('/O.UPG.KBOI.FZ.A.0007.261016T0800Z-261016T1500Z/')],
    ['cancelled', vtec('/O.CAN.KBOI.FZ.W.0026.261016T0800Z-261016T1500Z/')],
    ['expired', vtec('/O.EXP.KBOI.FZ.W.0026.261016T0800Z-261016T1500Z/')],
    ['a test by its code', vtec('/T.NEW.KBOI.FZ.W.0026.261016T0800Z-261016T1500Z/')],
    ['a test by its status', { status: 'Test' }],
    ['past', { urgency: 'Past' }],
    ['an all-clear', { response: 'AllClear' }],
    ['a cancellation', { messageType: 'Cancel' }],
    ['over', { ends: '2026-10-15T07:00:00-06:00' }],
  ])('leave out one that is %s, though it is listed', (_, changes) => {
    expect(eventsOf(alertFields(changes))).toEqual([]);
  });

  it('outlast the lapse of the message while the cold is still to come', () => {
    expect(eventsOf(alertFields({ expires: '2026-10-15T06:00:00-06:00' }))).toHaveLength(1);
  });

  it('count once where an older copy is listed too', () => {
    const newer = alertFields({ id: 'b', event: 'Freeze Warning', references: [{ identifier: 'a' }] });
    const bodies = [alertsReply(alertFields({ id: 'a', event: 'Freeze Watch' }), newer), alertsReply(newer)];
    expect(freezeAlerts(bodies, nowMs)?.map((alert) => alert.id)).toEqual(['b']);
  });

  it('are unknown, not none, where no reply has the right shape', () => {
    expect(freezeAlerts([], nowMs)).toBeNull();
    expect(freezeAlerts([{ title: 'Unexpected Problem' }], nowMs)).toBeNull();
    expect(freezeAlerts([alertsReply()], nowMs)).toEqual([]);
  });
});
