import { describe, expect, it } from 'vitest';
import type { Harvest } from '../../../src/core/harvest/harvest.ts';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import { limitWarning, lineWarnings, nextLookMs, lookAtLines } from '../../../src/core/notices/line-look.ts';
import type { ForecastWait, WaitForecast } from '../../../src/core/line/types.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, step, ticket } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const evidence = { lastSerial: null, trucksAhead: null, ratePerHour: null, newestAgeMin: null };
const forecast = (medianMin: number): Extract<WaitForecast, { known: true }> => ({
  known: true,
  medianMin,
  lowMin: medianMin / 2,
  highMin: 2 * medianMin,
  evidence,
});

const limited = { ...sampleRoster, limits: { ...sampleRoster.limits, lineLimitMin: 45 } };
const look = (facts: readonly Fact[], clock: string, wait: ForecastWait, roster = sampleRoster) =>
  lookedAt(foldHarvest(roster, facts), at(clock), wait);
const lookedAt = (harvest: Harvest, nowMs: number, wait: ForecastWait) => {
  const { doubts, wakeAtMs } = lookAtLines(harvest, zoneClock, nowMs);
  const forecasts = doubts.map(({ need }) => wait(need.observations, need.ask));
  return { facts: lineWarnings(doubts, forecasts, nowMs), wakeAtMs };
};
const waits =
  (medianMin: number): ForecastWait =>
  () =>
    forecast(medianMin);

describe('the limit', () => {
  it('is passed once, and armed again only below 0.7 of it', () => {
    // Waits one after another against a limit of 45 min; 0.7 of that is 31.5.
    const waitsMin = [30, 46, 60, 44, 33, 50, 31, 40, 47];
    const told: boolean[] = [];
    let above = false;
    for (const min of waitsMin) {
      const warning = limitWarning(above, forecast(min), 45);
      if (warning?.about === 'limit') above = warning.above;
      told.push(warning?.about === 'limit' && warning.above);
    }
    expect(told).toEqual([false, true, false, false, false, false, false, false, true]);
  });

  it('is not passed by what nobody knows', () => {
    expect(limitWarning(false, { known: false, newestAgeMin: null, usual: forecast(90) }, 45)).toBeNull();
  });

  it('is told once, also by a bot that has started anew with the same facts', () => {
    const facts = [step('2', 'joined-line', '08:00')];
    const first = look(facts, '08:05', waits(50), limited);
    expect(first.facts).toMatchObject([{ kind: 'line-warned', warning: { about: 'limit', above: true } }]);
    expect(look([...facts, ...first.facts], '08:10', waits(50), limited).facts).toEqual([]);
  });

  it('is told once each time that it is passed', () => {
    const joined = [step('2', 'joined-line', '08:00')];
    const minutes = [
      ['08:05', 50],
      ['08:10', 20],
      ['08:15', 50],
      ['08:20', 50],
    ] as const;
    const told: boolean[] = [];
    let facts: readonly Fact[] = joined;
    for (const [clock, min] of minutes) {
      const found = look(facts, clock, waits(min), limited).facts;
      told.push(found.length > 0);
      facts = [...facts, ...found];
    }
    // At 8:10 the line has fallen well below the limit, which is noted and told to nobody.
    expect(told).toEqual([true, true, true, false]);
  });

  it('is told anew the next day', () => {
    const facts = [step('2', 'joined-line', '2026-10-19 22:00')];
    const told = look(facts, '2026-10-19 22:05', waits(50), limited).facts;
    const morning = [...facts, ...told, step('2', 'returning', '06:00'), step('2', 'joined-line', '08:00')];
    expect(look(morning, '08:05', waits(50), limited).facts).toHaveLength(1);
  });

  it('says nothing where none is set', () => {
    expect(look([step('2', 'joined-line', '08:00')], '08:05', waits(500)).facts).toEqual([]);
  });
});

describe('a line that stands', () => {
  // Forecast 20 min, at most 40: a truck that joined at 8:00 is overdue beyond 9:00 (20 min for tickets to be told).
  const joined = [step('2', 'joined-line', '08:00'), step('3', 'joined-line', '08:20')];

  it('is told when the first truck is overdue and nothing is weighed', () => {
    expect(look(joined, '08:55', waits(20)).facts).toEqual([]);
    const { facts } = look(joined, '09:05', waits(20));
    expect(facts).toMatchObject([{ warning: { about: 'stopped', waiting: ['2', '3'], silentMin: 65 } }]);
    expect(look([...joined, ...facts], '10:00', waits(20)).facts).toEqual([]);
  });

  it('is told anew after something was weighed', () => {
    const { facts } = look(joined, '09:05', waits(20));
    const moved = [...joined, ...facts, ticket('2', '09:20', 50_000, { serial: '1' })];
    expect(look(moved, '09:40', waits(20)).facts).toEqual([]);
    expect(look(moved, '09:55', waits(20)).facts).toMatchObject([{ warning: { waiting: ['3'] } }]);
  });

  it('is none where a truck that came later was weighed: one ticket was never told', () => {
    expect(
      look([...joined, ticket('3', '08:50', 50_000, { serial: '1' })], '09:25', waits(20)).facts,
    ).toEqual([]);
  });

  it('is none where the trucks went on without a word of the scale', () => {
    const gone = [step('2', 'parked', '08:40'), step('3', 'at-field', '08:45')];
    expect(look([...joined, ...gone], '09:25', waits(20))).toEqual({ facts: [], wakeAtMs: null });
  });

  it('is none after a night: a driver has gone home without a word', () => {
    expect(look(joined, '14:00', waits(20)).wakeAtMs).toBeNull();
  });
});

describe('the next look', () => {
  it('is at whole five minutes, so that messages that keep coming do not put it off', () => {
    expect(nextLookMs(at('08:01'))).toBe(at('08:05'));
    expect(nextLookMs(at('08:04:59'))).toBe(at('08:05'));
    expect(nextLookMs(at('08:05'))).toBe(at('08:10'));
  });

  it('goes on while a truck of ours is in line, or a count is fresh, and then ends', () => {
    expect(look([step('2', 'joined-line', '08:00')], '08:05', waits(20)).wakeAtMs).toBe(at('08:10'));
    const counted = [fact({ kind: 'line-seen', station: 'north-station', ahead: 9, truck: null }, '08:00')];
    expect(look(counted, '08:20', waits(20)).wakeAtMs).toBe(at('08:25'));
    expect(look(counted, '08:40', waits(20)).wakeAtMs).toBeNull();
    expect(look([], '08:40', waits(20)).wakeAtMs).toBeNull();
  });
});
