import { describe, expect, it } from 'vitest';
import type { Fact } from '../../../src/core/book/facts.ts';
import { heatBasis } from '../../../src/core/weather/heat-basis.ts';
import { lookAtWeather } from '../../../src/core/notices/weather-look.ts';
import type { FreezeAlert } from '../../../src/core/weather/types.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, given } from '../../support/given.ts';
import { raised } from '../../support/notices.ts';
import { WARM } from '../../support/outlooks.ts';
import { sampleRoster } from '../../support/roster.ts';

const NORTH = 'north-station';
const HOUR_MS = 3_600_000;

/** From midnight on, heard at `clock`. */
const forecast = (
  issued: string,
  temperaturesF: readonly number[],
  clock = issued,
  freezeAlerts: readonly FreezeAlert[] = [],
): Fact => {
  const hours = temperaturesF.map((temperatureF, hour) => ({
    startMs: at('00:00') + hour * HOUR_MS,
    temperatureF,
  }));
  const told = { place: NORTH, issuedMs: at(issued), hours, freezeAlerts, rain: [] };
  return fact({ kind: 'forecast-issued', ...told }, clock, { by: null });
};
const known = (facts: readonly Fact[]) => given(facts).harvest.forecasts.get(NORTH) ?? [];

describe('a forecast that is heard again', () => {
  it('counts once, with the alerts as they were heard last', () => {
    const alert = { id: 'a', event: 'Freeze Warning', onsetMs: null, endsMs: null };
    const heard = known([forecast('05:00', WARM), forecast('05:00', WARM, '05:20', [alert])]);
    expect(heard).toHaveLength(1);
    expect(heard[0]?.freezeAlerts).toEqual([alert]);
  });

  it('is no second forecast that agrees with itself', () => {
    const [station] = sampleRoster.stations;
    if (!station) throw new Error('the sample has a station');
    const { harvest } = given([
      forecast('04:00', WARM),
      forecast('05:00', WARM),
      forecast('05:00', WARM, '05:20'),
    ]);
    const { earlier } = heatBasis(harvest, station, zoneClock, at('06:00'));
    expect(earlier.map(({ issuedMs }) => issuedMs)).toEqual([at('04:00')]);
  });

  it('does not end a heat stop that the forecast before would still hold', () => {
    // The old one has the evening warm for six hours more: the crew waits, however often it hears the new one.
    const long = [...WARM.slice(0, 17), 70, 70, 70, 70, 70, 70, 70, ...WARM.slice(0, 12)];
    const cooling = [...WARM, ...WARM.slice(0, 12)];
    const stopped = [raised('05:00'), forecast('20:00', long), forecast('21:00', cooling)];
    const at2230 = (facts: readonly Fact[]) =>
      lookAtWeather(given(facts).harvest, zoneClock, at('22:30')).facts.map((one) =>
        one.kind === 'notice-raised' ? one.step.stage : one.kind,
      );
    expect(at2230([raised('05:00'), forecast('21:00', cooling)])).toEqual(['all-clear']);
    // Only a later time for the restart is told.
    expect(at2230(stopped)).toEqual(['update']);
    expect(at2230([...stopped, forecast('21:00', cooling, '21:20')])).toEqual(['update']);
  });
});

describe('forecasts', () => {
  it('are kept in the order in which they were issued, however late they are heard', () => {
    const heard = known([forecast('06:00', WARM), forecast('05:00', WARM, '07:00')]);
    expect(heard.map(({ issuedMs }) => issuedMs)).toEqual([at('05:00'), at('06:00')]);
  });
});
