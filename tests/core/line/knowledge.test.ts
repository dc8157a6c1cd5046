import { describe, expect, it } from 'vitest';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import { lineHistory, signOfHistory, signOfPast } from '../../../src/core/line/history.ts';
import type { LineHistory } from '../../../src/core/line/history.ts';
import {
  earnedOn,
  forecastsBefore,
  forecastWith,
  learnUsualDay,
  noKnowledge,
  settledTrips,
} from '../../../src/core/line/knowledge.ts';
import { meanHabitMin } from '../../../src/core/line/model/lateness.ts';
import { asHeardBy, lineObservations } from '../../../src/core/line/observations.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { lineLearner } from '../../../src/run/line/learner.ts';
import { at, fact, step, ticket } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';
import { seasonFacts } from '../../support/season.ts';
import { haulMinutes } from '../../../src/core/harvest/usual-times.ts';

const historyOf = (facts: readonly Fact[], clock = '12:00'): LineHistory =>
  lineHistory(foldHarvest(sampleRoster, facts), 'north-station', zoneClock, at(clock));

const threeDays = seasonFacts(17, 20, 14);

describe('the past of a station', () => {
  const history = historyOf(threeDays);

  it('is cut at midnight of the operation, today apart', () => {
    expect(history.past.map(({ opening, visits }) => [opening, visits.length])).toEqual([
      [at('2026-10-17 00:00'), 14],
      [at('2026-10-18 00:00'), 14],
      [at('2026-10-19 00:00'), 14],
    ]);
    expect(history.today).toMatchObject({ opening: at('00:00') });
  });

  it('holds other stations’ trucks apart', () => {
    const harvest = foldHarvest(sampleRoster, threeDays);
    expect(lineHistory(harvest, 'far-station', zoneClock, at('12:00')).past).toEqual([]);
  });

  it('is another after a correction of an earlier day, and the same while nothing is finished', () => {
    const corrected = fact(
      {
        kind: 'entry-withdrawn',
        target: {
          by: 'message',
          cause: threeDays.findLast((one) => one.atMs < at('2026-10-19 23:00'))?.cause ?? '',
        },
      },
      '11:00',
      { by: 'ruth' },
    );
    expect(signOfPast(historyOf([...threeDays, corrected]))).not.toBe(signOfPast(history));
    const joined = [...threeDays, step('4', 'left-field', '20:50'), step('4', 'joined-line', '21:00')];
    expect(signOfHistory(historyOf(joined))).toBe(signOfHistory(history));
    const done = [...joined, ticket('4', '21:30', 50_000, { serial: '77' })];
    expect(signOfHistory(historyOf(done))).not.toBe(signOfHistory(history));
  });
});

describe('what was known at an hour', () => {
  it('of a trip whose ticket came later, is only that it had joined', () => {
    const harvest = foldHarvest(sampleRoster, threeDays);
    const today = lineObservations(harvest, 'north-station', { fromMs: at('00:00'), toMs: at('23:59') });
    const [first] = today.visits;
    if (!first?.joinedMs) throw new Error('the first truck joined');
    expect(asHeardBy(today, first.joinedMs - 1).visits).toEqual([]);
    expect(asHeardBy(today, first.joinedMs + 60_000).visits).toEqual([
      {
        ...first,
        firstWeighedMs: null,
        dumpedMs: null,
        secondWeighedMs: null,
        serial: null,
        heardMs: first.joinedMs,
      },
    ]);
    expect(asHeardBy(today, first.heardMs).visits).toContainEqual(first);
  });
});

describe('the time of an "in line"', () => {
  const tellingOf = (header: { atMs?: number; heardMs?: number; timeStated?: boolean }) => {
    const harvest = foldHarvest(sampleRoster, [step('2', 'joined-line', '08:00', { header })]);
    const span = { fromMs: at('00:00'), toMs: at('23:59') };
    return lineObservations(harvest, 'north-station', span).visits[0]?.joinedTelling;
  };

  it('is known by how it was told: in words, by the message, by a message that was held up', () => {
    expect(tellingOf({ timeStated: true })).toBe('time-said');
    expect(tellingOf({})).toBeUndefined();
    expect(tellingOf({ heardMs: at('08:20') })).toBe('held-up');
  });
});

describe('what is learned', () => {
  const learned = learnUsualDay(historyOf(threeDays));

  it('begins an hour before the first truck of any day', () => {
    // The first joins at 7:50.
    expect(learned.opensAfterMin).toBe(6 * 60);
    expect(learned.profile.days).toBe(3);
    expect(noKnowledge(2)).toMatchObject({ opensAfterMin: null, profile: { days: 0 } });
  });

  it('does not depend on today', () => {
    expect(learnUsualDay(historyOf(threeDays.filter((one) => one.atMs < at('09:00'))))).toEqual(learned);
  });

  it('gives the usual wait of the hour where nothing fresh is known, marked so', () => {
    const quiet = historyOf(
      threeDays.filter((one) => one.atMs < at('00:00')),
      '09:00',
    );
    const answer = forecastWith(learned)(quiet.today, { nowMs: at('09:00'), arriveInMin: 0 });
    expect(answer.known).toBe(false);
    if (answer.known || answer.usual === null) throw new Error('three days make a usual wait');
    // Waits of that crew are 8 to 30 min.
    expect(answer.usual.medianMin).toBeGreaterThan(8);
    expect(answer.usual.medianMin).toBeLessThan(30);
  });

  it('is the same whether learned at once or trip by trip', () => {
    const whole = historyOf(seasonFacts(17, 20, 14), '23:00');
    const stepwise = lineLearner();
    for (const clock of ['10:00', '13:00', '18:00'])
      stepwise(
        historyOf(
          threeDays.filter((one) => one.atMs < at(clock)),
          '23:00',
        ),
      );
    expect(stepwise(whole)).toEqual(lineLearner()(whole));
  }, 120_000);
});

describe('trips that tell how long the wait was', () => {
  const history = historyOf(threeDays, '23:00');
  const learned = learnUsualDay(history);
  const trips = settledTrips(history, learned.profile);

  it('have a stated "in line" and a weighing; a late word is made up for as far as this crew is late', () => {
    expect(trips).toHaveLength(4 * 14);
    const [first] = trips;
    if (!first) throw new Error('there are trips');
    const { joinedMs, firstWeighedMs } = first.visit;
    const told = ((firstWeighedMs ?? 0) - (joinedMs ?? 0)) / 60_000;
    expect(first.waitMin).toBeCloseTo(told + meanHabitMin(learned.profile.late), 9);
    // A time in the driver's own words is right to half a minute.
    const said = { ...first.visit, joinedTelling: 'time-said' as const };
    const today = { ...history.today, visits: [said] };
    const [exact] = settledTrips({ ...history, past: [], today }, learned.profile);
    expect(exact?.waitMin).toBeCloseTo(told + 0.5, 9);
    const silent = [step('2', 'left-field', '08:00'), ticket('2', '09:00', 50_000, { serial: '9' })];
    expect(settledTrips(historyOf(silent, '10:00'), learned.profile)).toEqual([]);
  });

  it('are forecast without what came later, themselves included', () => {
    const trip = trips.at(-3);
    if (!trip) throw new Error('there are trips');
    const before = forecastsBefore(trip, 15, learned);
    const untold = {
      ...trip,
      observations: {
        ...trip.observations,
        visits: trip.observations.visits.filter(
          ({ joinedMs }) => (joinedMs ?? 0) <= trip.joinedMs - 15 * 60_000,
        ),
      },
    };
    expect(before).not.toBeNull();
    expect(forecastsBefore(untold, 15, learned)).toEqual(before);
  });

  it('teach each rule what its forecasts came to, and which of them to follow', () => {
    const right = (waitMin: number) => ({
      lowMin: 0.8 * waitMin,
      medianMin: waitMin,
      highMin: 1.3 * waitMin,
    });
    const mixture = earnedOn(trips, ({ waitMin }) => ({
      filter: { lowMin: 60, medianMin: 80, highMin: 90 },
      'last-wait': right(waitMin + 1),
    }));
    expect(mixture.calibrations.filter.map(({ outcomes }) => outcomes.length)).toEqual([56, 56, 56, 56]);
    expect(mixture.calibrations['last-wait'][0]?.outcomes.map(({ waitMin }) => waitMin)).toEqual(
      trips.map(({ waitMin }) => waitMin),
    );
    expect(mixture.losses[0]?.['last-wait']).toBeLessThan(mixture.losses[0]?.filter ?? NaN);
  });
});

describe('the haul', () => {
  const trip = (truck: string, field: string, from: string, to: string): Fact[] => [
    step(truck, 'left-field', from, { field }),
    step(truck, 'joined-line', to),
  ];
  const harvest = foldHarvest(sampleRoster, [
    ...trip('1', 'north-40', '07:00', '07:20'),
    ...trip('2', 'north-40', '07:00', '07:24'),
    ...trip('3', 'north-40', '07:00', '07:30'),
    ...trip('4', 'south-80', '07:00', '07:50'),
  ]);

  it('is the median of the field’s own trips, else of all', () => {
    expect(haulMinutes(harvest, 'north-station', 'north-40')).toBe(24);
    expect(haulMinutes(harvest, 'north-station', 'south-80')).toBe(50);
    expect(haulMinutes(harvest, 'north-station', 'creek-bottom')).toBe(24);
  });

  it('does not learn from a truck that stood for hours on the way', () => {
    const stood = foldHarvest(sampleRoster, trip('1', 'north-40', '07:00', '11:00'));
    expect(haulMinutes(stood, 'north-station', 'north-40')).toBe(25);
  });
});
