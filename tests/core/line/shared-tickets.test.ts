import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import { asHeardBy, lineObservations } from '../../../src/core/line/observations.ts';
import { sharedChanges, ownSharedTickets } from '../../../src/core/line/shared-tickets.ts';
import { defaultProfile } from '../../../src/core/line/model/usual-day.ts';
import { timelineOf } from '../../../src/core/line/model/timeline.ts';
import { lineWarnings, lookAtLines } from '../../../src/core/notices/line-look.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, fact, loadsOf, step, ticket, truckIn } from '../../support/given.ts';
import type { Load } from '../../../src/core/haul/load.ts';
import { nastyDays } from '../../support/random-day.ts';
import { sampleRoster } from '../../support/roster.ts';
import type { Harvest, SharedTicket } from '../../../src/core/harvest/harvest.ts';

const NORTH = 'north-station';
const roster = { ...sampleRoster, pools: { [NORTH]: 'north' } };
const span = { fromMs: at('00:00'), toMs: at('23:59') };
const dayOf = (facts: readonly Fact[], othersTickets: readonly SharedTicket[] = []): Harvest => ({
  ...foldHarvest(roster, facts),
  othersTickets,
});
const theirs = (serial: string, joined: string | null, weighed: string, heard = weighed): SharedTicket => ({
  pool: 'north',
  serial,
  joinedMs: joined === null ? null : at(joined),
  firstWeighedMs: at(weighed),
  secondWeighedMs: null,
  heardMs: at(heard),
});

describe('what is shared', () => {
  const told = [step('2', 'joined-line', '08:00'), ticket('2', '08:50', 50_520, { serial: '48233' })];

  it('is the serial and the times of a ticket, and nothing else', () => {
    expect(ownSharedTickets(dayOf(told))).toEqual([
      {
        pool: 'north',
        serial: '48233',
        joinedMs: at('08:00'),
        firstWeighedMs: null,
        secondWeighedMs: at('08:50'),
        heardMs: at('08:50'),
      },
    ]);
  });

  it('is nothing where the operation file names no pool', () => {
    expect(ownSharedTickets(foldHarvest(sampleRoster, told))).toEqual([]);
  });

  it('is not a time of joining that nobody stated: others would take a guess for a wait', () => {
    const harvest = dayOf(told);
    const guessed = loadsOf(harvest, '2').map((load): Load => {
      const joined = load.stamps['joined-line'];
      const stamp = joined && { ...joined, source: 'inferred' as const };
      return { ...load, stamps: { ...load.stamps, 'joined-line': stamp } };
    });
    const truck = { ...truckIn(harvest, '2'), loads: guessed };
    const trucks = new Map([...harvest.trucks, ['2', truck]]);
    expect(ownSharedTickets({ ...harvest, trucks })).toMatchObject([{ serial: '48233', joinedMs: null }]);
  });

  it('is not a truck that has only joined: that would tell where it is', () => {
    expect(ownSharedTickets(dayOf(told.slice(0, 1)))).toEqual([]);
  });

  it('comes, message by message, to what the book holds at the end', () => {
    fc.assert(
      fc.property(nastyDays, (facts) => {
        const pool = new Map<string, SharedTicket>();
        facts.forEach((_, heard) => {
          const changes = sharedChanges(dayOf(facts.slice(0, heard)), dayOf(facts.slice(0, heard + 1)));
          for (const { serial } of changes.withdrawn) pool.delete(serial);
          for (const one of changes.put) pool.set(one.serial, one);
        });
        const inOrder = (tickets: Iterable<SharedTicket>) =>
          [...tickets].sort((a, b) => a.serial.localeCompare(b.serial));
        expect(inOrder(pool.values())).toEqual(inOrder(ownSharedTickets(dayOf(facts))));
      }),
      { numRuns: 60 },
    );
  });
});

describe('what the others share', () => {
  it('is seen of the line like a trip of ours, from when it was heard on', () => {
    const harvest = dayOf([step('2', 'joined-line', '09:00')], [theirs('48233', '08:00', '08:40', '08:55')]);
    const seen = lineObservations(harvest, NORTH, span);
    expect(seen.visits.map(({ truck, serial }) => [truck, serial])).toEqual([
      ['2', null],
      [null, '48233'],
    ]);
    expect(asHeardBy(seen, at('08:54')).visits).toEqual([]);
    const timeline = timelineOf(seen, defaultProfile(2), at('09:01'));
    expect(timeline).toMatchObject({ pendingTrucks: 1, slots: 1, newestMin: 540 });
  });

  it('is another day’s where it was weighed on another day, and another station’s under another name', () => {
    const harvest = dayOf([], [theirs('48233', null, '2026-10-19 17:00', '2026-10-20 06:00')]);
    expect(lineObservations(harvest, NORTH, span).visits).toEqual([]);
    const south = { ...roster, pools: { [NORTH]: 'south' } };
    const other = { ...foldHarvest(south, []), othersTickets: [theirs('48233', '08:00', '08:40')] };
    expect(lineObservations(other, NORTH, span).visits).toEqual([]);
  });

  it('does not take a count of the whole line for the place of an unseen truck', () => {
    const counted = fact({ kind: 'line-seen', station: NORTH, ahead: 9, truck: null }, '08:00');
    const harvest = dayOf([counted], [theirs('48233', '08:00', '08:40')]);
    const { events } = timelineOf(lineObservations(harvest, NORTH, span), defaultProfile(2), at('09:00'));
    expect(events).toContainEqual({ is: 'counted', atMin: 480, slot: null, ahead: 9 });
  });

  it('shows that the line moves, although none of ours was weighed', () => {
    const waiting = [step('2', 'joined-line', '08:00')];
    const short = () => ({
      known: true as const,
      medianMin: 20,
      lowMin: 10,
      highMin: 40,
      evidence: { lastSerial: null, trucksAhead: null, ratePerHour: null, newestAgeMin: null },
    });
    const warned = (harvest: Harvest) => {
      const { doubts } = lookAtLines(harvest, zoneClock, at('09:10'));
      return lineWarnings(doubts, doubts.map(short), at('09:10'));
    };
    expect(warned(dayOf(waiting))).toMatchObject([{ warning: { about: 'stopped', waiting: ['2'] } }]);
    expect(warned(dayOf(waiting, [theirs('48233', '07:30', '08:55')]))).toEqual([]);
  });
});
