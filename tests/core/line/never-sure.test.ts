/** The bot is never sure that there is no line, unless somebody has just counted. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../../src/core/book/facts.ts';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import { lineHistory } from '../../../src/core/line/history.ts';
import { forecastWith, learnUsualDay } from '../../../src/core/line/knowledge.ts';
import { FRESH_CALIBRATION } from '../../../src/core/line/model/calibration.ts';
import { learnProfile } from '../../../src/core/line/model/learn.ts';
import { defaultProfile } from '../../../src/core/line/model/usual-day.ts';
import { makeForecast } from '../../../src/core/line/wait-forecast.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, step, ticket } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';
import { ask, counted, scene, visit } from './scene.ts';

const roster = {
  ...sampleRoster,
  stations: sampleRoster.stations.map((station) => ({ ...station, pilers: 1 })),
};

const trip = (truck: string, joined: string, first: string, second: string, serial: string): Fact[] => [
  step(truck, 'joined-line', joined),
  ticket(truck, second, 50_000, {
    serial,
    firstWeighedMs: at(first),
    header: { atMs: at(second), timeStated: true },
  }),
];

/** One late afternoon is all that was ever seen of the station; next day its trucks come in the morning. */
const facts = [
  ...trip('1', '2026-10-19 16:20', '2026-10-19 17:02', '2026-10-19 17:10', '4001'),
  ...trip('2', '2026-10-19 16:40', '2026-10-19 17:33', '2026-10-19 17:41', '4009'),
  ...trip('1', '08:00', '08:35', '08:42', '4101'),
  step('2', 'joined-line', '08:40'),
];

describe('a morning after one evening', () => {
  it.each(['08:55', '09:10', '09:25', '09:40'])(
    'at %s, one of ours having waited 35 min and the other standing since 8:40, is not without a line',
    (clock) => {
      const heard = facts.filter(({ heardMs }) => heardMs <= at(clock));
      const history = lineHistory(foldHarvest(roster, heard), 'north-station', zoneClock, at(clock));
      const answer = forecastWith(learnUsualDay(history))(history.today, {
        nowMs: at(clock),
        arriveInMin: 0,
      });
      if (!answer.known) throw new Error('One of ours stands in the line.');
      expect(answer.medianMin).toBeGreaterThan(5);
      // By half past nine its ticket is overdue.
      if (at(clock) >= at('09:10')) expect(answer.lowMin).toBeGreaterThan(0);
      expect(answer.highMin).toBeGreaterThan(40);
    },
  );
});

describe('a range', () => {
  const forecast = makeForecast(defaultProfile(2), FRESH_CALIBRATION);
  const quick = Array.from({ length: 8 }, (_, trip) => visit(`t${trip}`, 60 + 20 * trip, 60 + 20 * trip));
  const rangeAt = (nowMin: number, counts: Parameters<typeof counted>[] = [], leadMin = 0) => {
    const answer = forecast(
      scene(
        quick,
        counts.map((one) => counted(...one)),
      ),
      ask(nowMin, leadMin),
    );
    if (!answer.known) throw new Error('Trucks were weighed minutes ago.');
    return answer;
  };

  it('of 0 to 0 is told only with a fresh count of none', () => {
    for (const nowMin of [205, 220, 240]) expect(rangeAt(nowMin).highMin).toBeGreaterThan(1);
    expect(rangeAt(240, [[220, 0]]).highMin).toBeGreaterThan(1);
    expect(rangeAt(240, [[239, 0]], 30).highMin).toBeGreaterThan(1);
  });
});

describe('the trucks that come at an hour at which none of ours ever came', () => {
  it('are fewer, and never none', () => {
    const day = scene(
      Array.from({ length: 12 }, (_, trip) =>
        visit(`t${trip}`, 120 + 20 * trip, 130 + 20 * trip, 4000 + 5 * trip),
      ),
    );
    const { arrivalsPerMin } = learnProfile([day], 1);
    expect(Math.min(...arrivalsPerMin)).toBeGreaterThan(0);
    // An hour before the first and after the last of ours.
    expect(arrivalsPerMin[2]).toBeGreaterThan(0.03);
    expect(arrivalsPerMin[14]).toBeGreaterThan(0.03);
  });
});
