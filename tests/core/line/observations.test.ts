/** What the line is told of a truck's day: the right load, no waits that were none, nobody who stood overnight. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../../src/core/book/facts.ts';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import { lineHistory } from '../../../src/core/line/history.ts';
import { forecastWith, learnUsualDay, settledTrips } from '../../../src/core/line/knowledge.ts';
import { zoneClock } from '../../../src/run/host/zone-clock.ts';
import { at, loadsOf, step, ticket } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';
import { seasonFacts } from '../../support/season.ts';

const NORTH = 'north-station';
const roster = {
  ...sampleRoster,
  stations: sampleRoster.stations.map((station) => ({ ...station, pilers: 1 })),
};
const historyOf = (facts: readonly Fact[], clock: string) =>
  lineHistory(foldHarvest(roster, facts), NORTH, zoneClock, at(clock));
const ticketed = (truck: string, first: string, second: string, serial: string): Fact =>
  ticket(truck, second, 50_000, {
    serial,
    firstWeighedMs: at(first),
    header: { atMs: at(second), sentMs: at(second) + 60_000, timeStated: true },
  });

describe('a visit of seven minutes, after one whose ticket was never sent', () => {
  const facts = [
    step('2', 'left-field', '07:00'),
    step('2', 'joined-line', '07:30'),
    step('2', 'left-field', '09:00'),
    step('2', 'joined-line', '09:30'),
    ticketed('2', '09:31', '09:37', '46796'),
  ];

  it('closes the load that was weighed then', () => {
    const serials = loadsOf(foldHarvest(roster, facts), '2').map((load) => load.ticket?.serial ?? null);
    expect(serials).toEqual([null, '46796']);
  });

  it('leaves nobody in the line, and is no wait of two hours', () => {
    const { today } = historyOf(facts, '09:45');
    expect(today.visits).toMatchObject([
      { joinedMs: at('07:30'), firstWeighedMs: null, goneByMs: at('09:00') },
      { joinedMs: at('09:30'), firstWeighedMs: at('09:31') },
    ]);
    const answer = forecastWith(learnUsualDay(historyOf(facts, '09:45')))(today, {
      nowMs: at('09:45'),
      arriveInMin: 0,
    });
    if (!answer.known) throw new Error('A truck was weighed a quarter of an hour ago.');
    expect(answer.medianMin).toBeLessThan(10);
    expect(answer.highMin).toBeLessThan(60);
  });
});

describe('a ticket that tells no times', () => {
  const settled = (timeStated: boolean): number => {
    const header = { atMs: at('19:30'), sentMs: at('19:30'), timeStated };
    const facts = [step('2', 'joined-line', '08:00'), ticket('2', '19:30', 50_000, { serial: '9', header })];
    const history = historyOf(facts, '20:00');
    return settledTrips(history, learnUsualDay(history).profile).length;
  };

  it('was sent some time after the second weight: it shows no wait', () => {
    expect(settled(false)).toBe(0);
    expect(settled(true)).toBe(1);
  });
});

describe('a truck that stood in the line at closing', () => {
  const evening = [step('2', 'left-field', '2026-10-19 17:50'), step('2', 'joined-line', '2026-10-19 18:25')];
  const morning = [step('2', 'joined-line', '06:54'), ticketed('2', '06:55', '07:02', '48001')];

  it('does not take the ticket of next morning, if it is in line again by then', () => {
    const serials = loadsOf(foldHarvest(roster, [...evening, ...morning]), '2').map(
      (load) => load.ticket?.serial ?? null,
    );
    expect(serials).toEqual([null, '48001']);
  });

  it('has not waited all night, also if one load is all that was heard of it', () => {
    const { past, today } = historyOf([...evening, ...morning.slice(1)], '07:10');
    expect(past.flatMap(({ visits }) => visits)).toMatchObject([
      { joinedMs: at('2026-10-19 18:25'), firstWeighedMs: null, serial: null },
    ]);
    expect(today.visits).toMatchObject([{ joinedMs: null, firstWeighedMs: at('06:55'), serial: '48001' }]);
  });

  it('does not make the usual wait of the evening one of hours', () => {
    const facts = [...seasonFacts(16, 19, 14), ...evening, ...morning.slice(1)];
    const { profile } = learnUsualDay(historyOf(facts, '07:10'));
    for (const usual of profile.usual) expect(usual?.highMin ?? 0).toBeLessThan(60);
  });
});
