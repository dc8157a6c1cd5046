import { describe, expect, it } from 'vitest';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import { haulCycle } from '../../../src/core/line/round-trip.ts';
import { answerFleet, waitsForFleet } from '../../../src/core/answers/fleet.ts';
import { waitOnCourse } from '../../../src/core/line/model/courses.ts';
import {
  adviseHold,
  erlangB,
  idleShareBound,
  runFleet,
  runFleetOn,
  trucksNeeded,
} from '../../../src/core/line/fleet.ts';
import type { WaitForecast } from '../../../src/core/line/types.ts';
import { at, step } from '../../support/given.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { sampleRoster } from '../../support/roster.ts';

describe('the cautious bound', () => {
  // Octave's queueing package 1.2.7, erlangb(a, n); a table of it is in any teletraffic handbook.
  it.each([
    [2, 1.5, 0.310345],
    [3, 2, 0.210526],
    [5, 4, 0.199067],
  ])('Erlang B of %d servers at %d erlang', (servers, offered, blocked) => {
    expect(erlangB(servers, offered)).toBeCloseTo(blocked, 6);
  });

  // The machine repairman by mean value analysis (octave queueing 1.2.7, qncsmva): share of the time that the digger digs.
  it.each([
    [4, 11, 34, 0.783824],
    [5, 11, 44, 0.800933],
    [6, 11, 49, 0.849247],
    [4, 12, 36, 0.793893],
    [8, 10, 50, 0.929952],
  ])('%d trucks, %d min to fill, %d min away', (trucks, loadMin, awayMin, busy) => {
    expect(1 - idleShareBound(trucks, { loadMin, awayMin })).toBeCloseTo(busy, 6);
  });
});

describe('the trucks run round after round', () => {
  // Simulated elsewhere with lognormal times, CV 0.2 to fill and 0.25 for the rest, 60,000 loads: within 0.003 of these.
  it.each([
    [4, 34, 0.871],
    [5, 34, 0.977],
    [4, 44, 0.744],
    [5, 44, 0.887],
    [6, 44, 0.973],
    [6, 49, 0.94],
  ])('%d trucks, 11 min to fill, %d min away: busy %d', (trucks, awayMin, busy) => {
    const course = runFleet(trucks, { loadMin: 11, awayMin, awaySdMin: 0.25 * awayMin });
    expect(1 - course.diggerIdle).toBeGreaterThan(busy - 0.012);
    expect(1 - course.diggerIdle).toBeLessThan(busy + 0.012);
    expect(course.diggerIdle).toBeLessThan(course.diggerIdleBound);
  });

  // Little's law over the round: trucks = rounds a minute x minutes of a round.
  it('keeps every truck somewhere', () => {
    const [loadMin, awayMin, trucks] = [11, 44, 5];
    const course = runFleet(trucks, { loadMin, awayMin, awaySdMin: 11 });
    const perMin = (1 - course.diggerIdle) / loadMin;
    expect(perMin * (loadMin + awayMin + course.truckWaitMin)).toBeCloseTo(trucks, 1);
  });

  it('is the same each time', () => {
    const cycle = { loadMin: 11, awayMin: 44, awaySdMin: 11 };
    expect(runFleet(5, cycle)).toEqual(runFleet(5, cycle));
  });

  describe('on the ways in which the line may go', () => {
    const cycle = { loadMin: 11, awayMin: 44, awaySdMin: 6, haulMin: 8, ownMin: 24, ownSdMin: 6 };
    const steady = (waitMin: number, ways = 40) =>
      Array.from({ length: ways }, () => Array.from({ length: 17 }, () => waitMin));

    it('with a wait that stays as it is, comes to what the steady run comes to', () => {
      for (const trucks of [3, 4, 5, 6]) {
        const { diggerIdle, truckWaitMin } = runFleet(trucks, cycle);
        const onWays = runFleetOn(trucks, cycle, steady(20));
        expect(Math.abs(onWays.diggerIdle - diggerIdle)).toBeLessThan(0.03);
        expect(Math.abs(onWays.truckWaitMin - truckWaitMin)).toBeLessThan(3);
      }
    });

    it('a line that is either empty or long costs more than one in between: all trucks meet the same', () => {
      const either = [...steady(0, 20), ...steady(40, 20)];
      expect(runFleetOn(5, cycle, either).diggerIdle).toBeGreaterThan(
        runFleetOn(5, cycle, steady(20)).diggerIdle + 0.03,
      );
    });

    it('a line that grows costs more as it does', () => {
      const growing = Array.from({ length: 40 }, () => Array.from({ length: 17 }, (_, place) => 5 * place));
      const idle = runFleetOn(5, cycle, growing).diggerIdle;
      expect(idle).toBeGreaterThan(runFleetOn(5, cycle, steady(0)).diggerIdle);
      expect(idle).toBeLessThan(runFleetOn(5, cycle, steady(80)).diggerIdle);
    });

    it('a wait between two places of a course lies on the line between them, and after its end at its end', () => {
      expect([-5, 0, 7.5, 15, 22.5, 100].map((min) => waitOnCourse([10, 20, 40], min))).toEqual([
        10, 10, 15, 20, 30, 40,
      ]);
    });
  });

  // 15 % above a match factor of 1 (Burt & Caccetta, Int. J. Mining, Reclamation & Env. 21(4), 2007, 262-270).
  it.each([
    [11, 34, 5],
    [11, 44, 6],
    [10, 50, 7],
  ])('%d min to fill, %d min away need %d', (loadMin, awayMin, needed) => {
    expect(trucksNeeded({ loadMin, awayMin })).toBe(needed);
  });
});

describe('holding a loaded truck', () => {
  const ask = { neededNext: false, standstillChance: 0, joinedPerServed: 0.9, fieldStops: false };

  it('never where the digger needs it next, and not in a busy line', () => {
    expect(adviseHold({ ...ask, neededNext: true, standstillChance: 1 })).toMatchObject({ hold: false });
    expect(adviseHold(ask)).toEqual({ hold: false, because: 'busy-line', laterPerMin: 0.9 });
  });

  it.each([
    ['standstill', { standstillChance: 0.9 }],
    ['short-line', { joinedPerServed: 0.3 }],
    ['field-stops', { fieldStops: true }],
  ] as const)('because of %s', (because, change) => {
    expect(adviseHold({ ...ask, ...change })).toMatchObject({ hold: true, because });
  });
});

describe('the round as the crew drives it', () => {
  const wait = { lowMin: 0, medianMin: 10, highMin: 30 };
  const cycleOf = (facts: Parameters<typeof foldHarvest>[1], roster = sampleRoster) =>
    haulCycle(foldHarvest(roster, facts), 'north-station', 'north-40', at('00:00'), wait);

  it('takes filling from "loading" to "loaded", where that is told', () => {
    const facts = (['1', '2', '3'] as const).flatMap((truck, number) => [
      step(truck, 'loading', `08:${20 + number}`),
      step(truck, 'left-field', `08:${28 + number}`),
    ]);
    expect(cycleOf(facts).loadMin).toBe(8);
  });

  it('else from trucks that leave one after another', () => {
    const minutes = [0, 9, 18, 27, 36, 45, 54, 80];
    const facts = minutes.map((min, number) =>
      step(String((number % 5) + 1), 'left-field', `08:00:00`, {
        header: { atMs: at('08:00') + min * 60_000, sentMs: at('08:00') + min * 60_000 },
      }),
    );
    expect(cycleOf(facts).loadMin).toBe(9);
  });

  it('adds both ways, the yard and the wait', () => {
    const facts = [
      step('2', 'left-field', '09:00', { field: 'north-40' }),
      step('2', 'joined-line', '09:18'),
    ];
    // 18 min there, as many back, 10 in the line, and three trucks of 4.8 min in the yard.
    expect(cycleOf(facts).awayMin).toBeCloseTo(18 + 18 + 10 + 14.4);
  });

  it('counts the trucks that go round, and leaves out those that are down or parked', () => {
    const facts = [
      step('1', 'left-field', '09:00'),
      step('2', 'left-field', '09:10'),
      step('3', 'left-field', '09:20'),
      step('3', 'down', '09:30'),
      step('4', 'parked', '09:30'),
    ];
    const harvest = foldHarvest(sampleRoster, facts);
    const asker = sampleRoster.people[0];
    if (!asker) throw new Error('the sample has people');
    const asking = { asker, nowMs: at('09:40'), clock: zoneClock };
    expect(waitsForFleet(harvest, asking)).toMatchObject([{ ask: { withCourses: true } }]);
    const matchFor = (forecast: WaitForecast) => {
      const told = answerFleet(harvest, asking, [forecast]);
      if (told.tell !== 'fleet') throw new Error(`answered with ${told.tell}`);
      return told.fleet;
    };
    const evidence = { lastSerial: null, trucksAhead: null, ratePerHour: null, newestAgeMin: null };
    const match = matchFor({ known: true, ...wait, evidence });
    expect(match).toMatchObject({ trucks: 2, waitMin: 10, waitKnown: true });
    expect(match.courses.map(({ trucks }) => trucks)).toEqual([1, 2, 3, match.needed]);
    const unheard = matchFor({ known: false, newestAgeMin: null, usual: null });
    expect(unheard).toMatchObject({ waitKnown: false, onPaths: false });
  });
});
