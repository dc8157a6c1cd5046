import { describe, expect, it } from 'vitest';
import type { Fact, NoticeStep } from '../../../src/core/book/facts.ts';
import { lookAtWeather } from '../../../src/core/notices/weather-look.ts';
import type { FreezeAlert } from '../../../src/core/weather/types.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, given, step } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';
import { COOL, FROSTY, WARM } from '../../support/outlooks.ts';

const NORTH = 'north-station';
const HOUR_MS = 3_600_000;

/** Today and tomorrow from midnight on. */
const forecast = (
  issued: string,
  days: readonly (readonly number[])[],
  freezeAlerts: readonly FreezeAlert[] | null = null,
): Fact => {
  const hours = days.flat().map((temperatureF, hour) => ({
    startMs: at('00:00') + hour * HOUR_MS,
    temperatureF,
  }));
  const told = { place: NORTH, issuedMs: at(issued), hours, freezeAlerts, rain: [] };
  return fact({ kind: 'forecast-issued', ...told }, issued, { by: null });
};
const look = (facts: readonly Fact[], clock: string) =>
  lookAtWeather(given(facts).harvest, zoneClock, at(clock));
const steps = (facts: readonly Fact[], clock: string): NoticeStep[] =>
  look(facts, clock).facts.flatMap((one) => (one.kind === 'notice-raised' ? [one.step] : []));

describe('a heat stop', () => {
  const warm = forecast('03:00', [WARM, COOL]);

  it('that is seen at night is told at five, and at once where the crew digs', () => {
    expect(look([warm], '03:10')).toEqual({ facts: [], wakeAtMs: at('05:00') });
    expect(steps([warm], '05:00')).toMatchObject([{ notice: 'heat', stage: 'stop', number: 1 }]);
    expect(steps([step('2', 'left-field', '02:30'), warm], '03:10')).toMatchObject([{ notice: 'heat' }]);
  });

  it('is the one of today, whatever became of the one of the day before', () => {
    const before = { event: 'heat-before', stopAtMs: at('2026-10-19 13:00') } as const;
    const yesterday = [
      raised('2026-10-19 09:00', before),
      raised('2026-10-19 20:00', { ...before, number: 2, stage: 'all-clear' }),
    ];
    const [today] = steps([...yesterday, warm], '05:00');
    expect(today).toMatchObject({ number: 1, stage: 'stop' });
    if (!today) throw new Error('a warm day raises a stop');
    const told = [...yesterday, warm, fact({ kind: 'notice-raised', step: today }, '05:00', { by: null })];
    expect(steps(told, '05:10')).toEqual([]);
  });
});

describe("the station's word", () => {
  const begun = [forecast('05:00', [WARM, COOL]), raised('05:00')];
  const word = (clock: string, open: boolean, by: string): Fact =>
    fact({ kind: 'station-reported', station: NORTH, open, untilMs: null }, clock, { by });

  it('"open" ends a stop from foreman and grower alone', () => {
    expect(steps([...begun, word('14:00', true, 'ana')], '14:01')).toEqual([]);
    expect(steps([...begun, word('14:00', true, 'mateo')], '14:01')).toMatchObject([
      { stage: 'all-clear', source: 'person' },
    ]);
  });

  it('"closed" counts from anybody, and the newest word counts', () => {
    expect(steps([...begun, word('14:00', true, 'mateo'), word('14:05', false, 'ana')], '14:06')).toEqual([]);
    expect(
      steps([...begun, word('13:30', false, 'ana'), word('14:00', true, 'mateo')], '14:01'),
    ).toMatchObject([{ stage: 'all-clear' }]);
  });
});

describe('frost of the coming night', () => {
  // 22 °F before dawn.
  const cold = forecast('08:00', [COOL, FROSTY]);
  const frost = (facts: readonly Fact[], clock: string) =>
    steps(facts, clock).filter(({ notice }) => notice === 'frost');

  it('is told at four in the afternoon, in time for the topping of the evening', () => {
    expect(frost([cold], '15:59')).toEqual([]);
    expect(look([cold], '15:59').wakeAtMs).toBe(at('16:00'));
    expect(frost([cold], '16:00')).toMatchObject([{ stage: 'stop' }]);
  });

  it('is told at once where it comes before six in the evening', () => {
    const early = (hour: number) => COOL.map((f, h) => (h >= hour ? 20 : f));
    expect(frost([forecast('08:00', [early(17), FROSTY])], '09:00')).toMatchObject([{ notice: 'frost' }]);
    expect(frost([forecast('08:00', [early(20), FROSTY])], '09:00')).toEqual([]);
  });

  it('is told by the newest alerts that were read', () => {
    const alert = { id: 'a', event: 'Freeze Warning', onsetMs: at('22:00'), endsMs: null };
    const mild = [COOL, COOL];
    const withAlert = forecast('08:00', mild, [alert]);
    expect(frost([withAlert], '16:00')).toMatchObject([{ stage: 'watch' }]);
    expect(frost([withAlert, forecast('09:00', mild, null)], '16:00')).toHaveLength(1);
    expect(frost([withAlert, forecast('09:00', mild, [])], '16:00')).toEqual([]);
    expect(frost([forecast('08:00', mild, []), forecast('09:00', mild, [alert])], '16:00')).toHaveLength(1);
  });

  it('that has begun is ended by a sound crown from foreman and grower alone', () => {
    const begun = raised('16:00', { event: 'frost', notice: 'frost', stopAtMs: at('20:00') });
    const check = (by: string, sound: boolean, clock = '21:00'): Fact =>
      fact({ kind: 'crown-checked', field: null, sound }, clock, { by });
    expect(frost([cold, begun, check('ana', true)], '21:01')).toEqual([]);
    expect(frost([cold, begun, check('mateo', true)], '21:01')).toMatchObject([{ stage: 'all-clear' }]);
    expect(frost([cold, begun, check('mateo', true), check('ana', false, '21:05')], '21:06')).toEqual([]);
  });
});
