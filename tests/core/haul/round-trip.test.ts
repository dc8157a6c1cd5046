import { describe, expect, it } from 'vitest';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import type { Fact, HaulStep } from '../../../src/core/book/facts.ts';
import { at, loadsOf, step, ticket, truckIn } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const dayOf = (facts: readonly Fact[]) => foldHarvest(sampleRoster, facts);

const round: readonly (readonly [HaulStep, string])[] = [
  ['at-field', '09:00'],
  ['loading', '09:05'],
  ['left-field', '09:15'],
  ['joined-line', '09:40'],
  ['first-weighed', '10:00'],
  ['dumped', '10:06'],
  ['returning', '10:12'],
];
const steps = (said: readonly (readonly [HaulStep, string])[]): Fact[] =>
  said.map(([what, clock]) => step('3', what, clock));

describe('a whole round trip', () => {
  it('is one load with every stamp as stated', () => {
    const state = truckIn(dayOf(steps(round)), '3');
    expect(state.loads).toHaveLength(1);
    expect(state.loads[0]?.stamps).toEqual({
      'left-field': { atMs: at('09:15'), source: 'stated' },
      'joined-line': { atMs: at('09:40'), source: 'stated' },
      'first-weighed': { atMs: at('10:00'), source: 'stated' },
      dumped: { atMs: at('10:06'), source: 'stated' },
      'second-weighed': null,
    });
    expect(state).toMatchObject({ phase: 'returning', sinceMs: at('10:12'), source: 'stated' });
  });

  it.each([
    [1, 'at-field'],
    [2, 'loading'],
    [3, 'hauling'],
    [4, 'in-line'],
    [5, 'on-piler'],
    [6, 'on-piler'],
    [7, 'returning'],
  ] as const)('after %i steps the truck is %s', (count, phase) => {
    expect(truckIn(dayOf(steps(round.slice(0, count))), '3').phase).toBe(phase);
  });

  it('begins anew with the next "loaded"', () => {
    const state = truckIn(dayOf([...steps(round), step('3', 'left-field', '10:40')]), '3');
    expect(state).toMatchObject({ phase: 'hauling', sinceMs: at('10:40') });
    expect(state.loads).toHaveLength(2);
  });
});

describe('a step that nobody told', () => {
  it.each(round.map(([what]) => what))('"%s" missing leaves one load and the right phase', (missing) => {
    const state = truckIn(dayOf(steps(round.filter(([what]) => what !== missing))), '3');
    expect(state.loads).toHaveLength(1);
    expect(state.phase).toBe(missing === 'returning' ? 'on-piler' : 'returning');
  });

  it('is null in the load, but the dump is inferred from "empty"', () => {
    const state = truckIn(dayOf([step('3', 'left-field', '09:15'), step('3', 'returning', '10:12')]), '3');
    expect(state.loads[0]?.stamps).toMatchObject({
      'joined-line': null,
      dumped: { atMs: at('10:12'), source: 'inferred' },
    });
  });

  it('the dump is inferred from the next "loaded", and marked so', () => {
    const loads = loadsOf(dayOf([step('3', 'left-field', '09:15'), step('3', 'left-field', '10:30')]), '3');
    expect(loads.map((load) => load.stamps.dumped)).toEqual([
      { atMs: at('10:30'), source: 'inferred' },
      null,
    ]);
  });

  it.each(['joined-line', 'first-weighed', 'dumped'] as const)(
    '"%s" as the first word opens the load',
    (what) => {
      expect(loadsOf(dayOf([step('3', what, '10:00')]), '3')).toHaveLength(1);
    },
  );

  it('only "loaded", every 45 minutes of a day, counts each', () => {
    const said = ['06:00', '06:45', '07:30', '08:15', '09:00'].map((clock) => step('3', 'left-field', clock));
    expect(loadsOf(dayOf(said), '3')).toHaveLength(5);
  });

  it('only "dumped", every 30 minutes, counts each', () => {
    const said = ['06:00', '06:30', '07:00', '07:30'].map((clock) => step('3', 'dumped', clock));
    expect(loadsOf(dayOf(said), '3')).toHaveLength(4);
  });
});

describe('a step said again', () => {
  it('"loaded" twice within minutes is one load', () => {
    const harvest = dayOf([step('3', 'left-field', '09:15'), step('3', 'left-field', '09:22')]);
    expect(loadsOf(harvest, '3')).toHaveLength(1);
    expect(truckIn(harvest, '3').sinceMs).toBe(at('09:15'));
  });

  it('"in line" with new head counts over two hours is one load', () => {
    const counts = ['10:00', '10:25', '10:40', '11:05', '11:30', '11:59', '12:05'];
    const harvest = dayOf([
      step('3', 'left-field', '09:40'),
      ...counts.map((clock) => step('3', 'joined-line', clock)),
      step('3', 'dumped', '12:15'),
    ]);
    expect(loadsOf(harvest, '3')).toHaveLength(1);
    expect(loadsOf(harvest, '3')[0]?.stamps['joined-line']?.atMs).toBe(at('10:00'));
  });

  it('"in line" once an hour while a piler is broken for four hours is one load', () => {
    const counts = ['10:00', '11:00', '12:00', '13:00', '14:00'];
    expect(loadsOf(dayOf(counts.map((clock) => step('3', 'joined-line', clock))), '3')).toHaveLength(1);
  });

  it('"in line" after the first weight is the next load', () => {
    const harvest = dayOf([
      step('3', 'joined-line', '10:00'),
      step('3', 'first-weighed', '10:20'),
      step('3', 'joined-line', '11:25'),
    ]);
    expect(loadsOf(harvest, '3')).toHaveLength(2);
  });

  it('"dumped" pressed again after "empty" is not another load, and the truck stays on its way', () => {
    const harvest = dayOf([
      step('3', 'left-field', '09:15'),
      step('3', 'dumped', '10:00'),
      step('3', 'returning', '10:00:20'),
      step('3', 'dumped', '10:00:40'),
    ]);
    expect(loadsOf(harvest, '3')).toHaveLength(1);
    expect(truckIn(harvest, '3').phase).toBe('returning');
  });

  it('"dumped" told after "at the field" is of the load before', () => {
    const harvest = dayOf([
      step('3', 'left-field', '09:15'),
      step('3', 'at-field', '10:20'),
      step('3', 'dumped', '10:23'),
    ]);
    expect(loadsOf(harvest, '3')).toHaveLength(1);
    expect(truckIn(harvest, '3').phase).toBe('at-field');
  });
});

describe('steps told out of their order', () => {
  it('heard in any order, they fold by when they happened', () => {
    const said = steps(round);
    expect(dayOf(said.toReversed()).trucks).toEqual(dayOf(said).trucks);
  });

  it('"loaded" told a little after "in line" is the same load', () => {
    const harvest = dayOf([step('3', 'joined-line', '10:00'), step('3', 'left-field', '10:03')]);
    expect(loadsOf(harvest, '3')).toHaveLength(1);
    expect(truckIn(harvest, '3').phase).toBe('in-line');
  });

  it('the dump told after the ticket is of the same load, and the truck stays on its way', () => {
    const harvest = dayOf([
      step('3', 'left-field', '10:00'),
      ticket('3', '10:40', 50_520),
      step('3', 'dumped', '10:44'),
    ]);
    expect(loadsOf(harvest, '3')).toHaveLength(1);
    expect(truckIn(harvest, '3').phase).toBe('returning');
  });

  it('"empty" right after "loaded" was sent late: the load stays on', () => {
    const harvest = dayOf([step('3', 'left-field', '10:00'), step('3', 'returning', '10:03')]);
    expect(truckIn(harvest, '3').phase).toBe('hauling');
    expect(loadsOf(harvest, '3')[0]?.stamps.dumped).toBeNull();
  });

  it('"at the field" half an hour after "loaded" means that the load is off', () => {
    const harvest = dayOf([step('3', 'left-field', '10:00'), step('3', 'at-field', '10:30')]);
    expect(loadsOf(harvest, '3')[0]?.stamps.dumped).toEqual({ atMs: at('10:30'), source: 'inferred' });
  });

  it('"dumped" and "parked" of one moment leave the truck parked', () => {
    const harvest = dayOf([step('3', 'parked', '18:00'), step('3', 'dumped', '18:00')]);
    expect(truckIn(harvest, '3').phase).toBe('parked');
  });
});

describe('close fields', () => {
  // The same truck back about every 30 min (followthecougar.blogspot.com/2015/10/ten-days-of-work).
  it('cycles of 30 minutes with "loaded" and "dumped" count each', () => {
    const said = ['06', '07', '08', '09'].flatMap((hour) => [
      step('3', 'left-field', `${hour}:00`),
      step('3', 'dumped', `${hour}:14`),
      step('3', 'left-field', `${hour}:30`),
      step('3', 'dumped', `${hour}:44`),
    ]);
    expect(loadsOf(dayOf(said), '3')).toHaveLength(8);
  });

  it('cycles of 30 minutes with nothing but "loaded" count each', () => {
    const said = ['06:00', '06:30', '07:00', '07:30', '08:00'].map((clock) => step('3', 'left-field', clock));
    expect(loadsOf(dayOf(said), '3')).toHaveLength(5);
  });

  it('"at the field" makes a first "in line" soon after a new load', () => {
    const harvest = dayOf([
      step('3', 'dumped', '10:00'),
      step('3', 'at-field', '10:05'),
      step('3', 'joined-line', '10:14'),
    ]);
    expect(loadsOf(harvest, '3')).toHaveLength(2);
  });

  it('"at the field" makes a "loaded" five minutes later a new load', () => {
    const harvest = dayOf([
      step('3', 'left-field', '10:00'),
      step('3', 'dumped', '10:02'),
      step('3', 'at-field', '10:08'),
      step('3', 'left-field', '10:13'),
    ]);
    expect(loadsOf(harvest, '3')).toHaveLength(2);
  });
});
