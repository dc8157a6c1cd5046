import { describe, expect, it } from 'vitest';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import { tally } from '../../../src/core/answers/tally.ts';
import { at, fact, loadsOf, step, ticket, truckIn } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const dayOf = (facts: readonly Fact[]) => foldHarvest(sampleRoster, facts);
const wholeDay = { fromMs: at('00:00'), toMs: at('2026-10-21 00:00'), truck: null, field: null };

describe('tickets and the loads that they close', () => {
  it('a whole day of nothing but tickets is as many loads', () => {
    const clocks = ['07:10', '08:25', '09:40', '10:55', '12:10'];
    const harvest = dayOf(
      clocks.map((clock, n) => ticket('3', clock, 50_000 + n * 20, { serial: `48${n}` })),
    );
    expect(loadsOf(harvest, '3')).toHaveLength(5);
    expect(truckIn(harvest, '3')).toMatchObject({
      phase: 'returning',
      source: 'ticket',
      sinceMs: at('12:10'),
    });
    expect(tally(harvest, wholeDay)).toMatchObject({ loads: 5, netLb: 250_200, withoutTicket: 0 });
  });

  it('tickets sent in a bunch when the truck is parked close the loads of the day, and it stays parked', () => {
    const harvest = dayOf([
      ...['08', '10', '12'].flatMap((hour) => [
        step('3', 'left-field', `${hour}:00`),
        step('3', 'dumped', `${hour}:50`),
      ]),
      step('3', 'parked', '18:00'),
      ticket('3', '18:20', 50_000, { serial: '1' }),
      ticket('3', '18:21', 51_000, { serial: '2' }),
      ticket('3', '18:22', 52_000, { serial: '3' }),
    ]);
    expect(tally(harvest, wholeDay)).toMatchObject({ loads: 3, netLb: 153_000, withoutTicket: 0 });
    expect(truckIn(harvest, '3')).toMatchObject({ phase: 'parked', sinceMs: at('18:00') });
  });

  it('tickets of a bunch go to the loads in the order of their serials, so each field has its own tons', () => {
    const loads = [
      step('3', 'left-field', '08:00', { field: 'north-40' }),
      step('3', 'dumped', '08:50'),
      step('3', 'left-field', '10:00', { field: 'south-80' }),
      step('3', 'dumped', '10:50'),
    ];
    const inOrder = [
      ticket('3', '18:20', 50_000, { serial: '48210' }),
      ticket('3', '18:21', 52_000, { serial: '48255' }),
    ];
    const newestFirst = [
      ticket('3', '18:20', 52_000, { serial: '48255' }),
      ticket('3', '18:21', 50_000, { serial: '48210' }),
    ];
    for (const bunch of [inOrder, newestFirst]) {
      const netLb = loadsOf(dayOf([...loads, ...bunch]), '3').map((load) => load.ticket?.netLb);
      expect(netLb).toEqual([50_000, 52_000]);
    }
  });

  it('serials of another roll, or tickets an hour apart, say nothing of the order', () => {
    const loads = [
      step('3', 'left-field', '08:00'),
      step('3', 'dumped', '08:50'),
      step('3', 'left-field', '10:00'),
      step('3', 'dumped', '10:50'),
    ];
    const otherRoll = [
      ticket('3', '18:20', 52_000, { serial: '9998' }),
      ticket('3', '18:21', 50_000, { serial: '10002' }),
    ];
    const apart = [
      ticket('3', '11:00', 52_000, { serial: '48210' }),
      ticket('3', '12:00', 50_000, { serial: '48255' }),
    ];
    for (const tickets of [otherRoll, apart]) {
      const netLb = loadsOf(dayOf([...loads, ...tickets]), '3').map((load) => load.ticket?.netLb);
      expect(netLb).toEqual([50_000, 52_000]);
    }
  });

  it('a ticket sent from the field leaves the truck at the field', () => {
    const harvest = dayOf([
      step('3', 'left-field', '08:00'),
      step('3', 'dumped', '08:50'),
      step('3', 'at-field', '09:20'),
      ticket('3', '09:21', 50_520),
    ]);
    expect(truckIn(harvest, '3')).toMatchObject({ phase: 'at-field', sinceMs: at('09:20') });
    expect(loadsOf(harvest, '3')).toHaveLength(1);
  });

  it('a ticket sent after the next "loaded" still closes the load before', () => {
    const harvest = dayOf([
      step('3', 'left-field', '08:00'),
      step('3', 'dumped', '08:50'),
      step('3', 'left-field', '09:25'),
      ticket('3', '09:27', 50_520),
    ]);
    expect(loadsOf(harvest, '3').map((load) => load.ticket?.netLb ?? null)).toEqual([50_520, null]);
    expect(truckIn(harvest, '3').phase).toBe('hauling');
  });

  it('a forgotten ticket does not take the place of the next one', () => {
    const harvest = dayOf([
      step('3', 'left-field', '08:00', { field: 'north-40' }),
      step('3', 'dumped', '08:50'),
      step('3', 'left-field', '09:25', { field: 'south-80' }),
      step('3', 'dumped', '10:10'),
      ticket('3', '10:15', 50_520),
    ]);
    expect(loadsOf(harvest, '3').map((load) => load.ticket?.netLb ?? null)).toEqual([null, 50_520]);
  });

  it('a ticket sent on joining the line closes the load before, not the one in the line', () => {
    const harvest = dayOf([
      step('3', 'left-field', '08:00'),
      step('3', 'dumped', '08:50'),
      step('3', 'joined-line', '09:50'),
      ticket('3', '09:54', 50_520),
      step('3', 'dumped', '10:40'),
    ]);
    expect(loadsOf(harvest, '3').map((load) => load.ticket?.netLb ?? null)).toEqual([50_520, null]);
  });

  it('a ticket a while after joining the line is of that load, however much was not told', () => {
    const harvest = dayOf([
      step('3', 'dumped', '08:50'),
      step('3', 'joined-line', '09:50'),
      ticket('3', '10:12', 50_520),
    ]);
    expect(loadsOf(harvest, '3').map((load) => load.ticket?.netLb ?? null)).toEqual([null, 50_520]);
    expect(truckIn(harvest, '3').phase).toBe('returning');
  });

  it('the in-time of the ticket is the first weight, the out-time the second', () => {
    const harvest = dayOf([
      step('3', 'left-field', '10:00'),
      ticket('3', '10:31', 50_520, { firstWeighedMs: at('10:14') }),
    ]);
    expect(loadsOf(harvest, '3')[0]?.stamps).toMatchObject({
      'first-weighed': { atMs: at('10:14'), source: 'ticket' },
      'second-weighed': { atMs: at('10:31'), source: 'ticket' },
    });
  });

  it('a ticket without an in-time leaves the first weight unknown', () => {
    const harvest = dayOf([step('3', 'left-field', '10:00'), ticket('3', '10:31', 50_520)]);
    expect(loadsOf(harvest, '3')[0]?.stamps['first-weighed']).toBeNull();
  });

  it('the same serial twice in the book counts once', () => {
    const harvest = dayOf([
      ticket('3', '10:31', 50_520, { serial: '048213' }),
      ticket('3', '10:32', 50_520, { serial: '048213' }),
    ]);
    expect(harvest.tickets).toHaveLength(1);
    expect(loadsOf(harvest, '3')).toHaveLength(1);
  });

  it('leading zeros make another serial', () => {
    const harvest = dayOf([
      ticket('3', '10:31', 50_520, { serial: '048213' }),
      ticket('4', '10:32', 50_520, { serial: '48213' }),
    ]);
    expect(harvest.tickets).toHaveLength(2);
  });
});

describe('a night between', () => {
  it('a truck parked loaded at a heat stop at 11 a.m. brings that load at 6:30 next morning', () => {
    const harvest = dayOf([
      step('3', 'left-field', '11:00'),
      step('3', 'parked', '11:20'),
      step('3', 'dumped', '2026-10-21 06:30'),
      ticket('3', '2026-10-21 06:38', 50_520),
    ]);
    expect(loadsOf(harvest, '3')).toHaveLength(1);
    expect(tally(harvest, wholeDay).loads).toBe(0);
    expect(
      tally(harvest, { ...wholeDay, fromMs: at('2026-10-21 00:00'), toMs: at('2026-10-22 00:00') }),
    ).toMatchObject({
      loads: 1,
      netLb: 50_520,
      withoutTicket: 0,
    });
  });

  it('the first "in line" of the day after an unfinished load of the day before is a new load', () => {
    const harvest = dayOf([step('3', 'left-field', '10:00'), step('3', 'joined-line', '2026-10-21 07:00')]);
    expect(loadsOf(harvest, '3')).toHaveLength(2);
  });
});

describe('down and up', () => {
  it('back up returns to the phase before, as worked out', () => {
    const harvest = dayOf([
      step('3', 'left-field', '10:00'),
      step('3', 'down', '10:10', { words: 'flat' }),
      step('3', 'up', '10:50'),
    ]);
    expect(truckIn(harvest, '3')).toMatchObject({
      phase: 'hauling',
      source: 'inferred',
      sinceMs: at('10:50'),
      down: null,
    });
    expect(loadsOf(harvest, '3')).toHaveLength(1);
  });

  it('keeps the reason, also one that is told later', () => {
    const harvest = dayOf([step('3', 'down', '10:10'), step('3', 'down', '10:12', { words: 'axle' })]);
    expect(truckIn(harvest, '3')).toMatchObject({ sinceMs: at('10:10'), down: { words: 'axle' } });
  });

  it('any step of the round ends it', () => {
    const harvest = dayOf([step('3', 'down', '10:10'), step('3', 'left-field', '11:00')]);
    expect(truckIn(harvest, '3')).toMatchObject({ phase: 'hauling', down: null });
  });

  it('"back up" of a truck that was not down changes nothing', () => {
    const facts = [step('3', 'left-field', '10:00')];
    expect(truckIn(dayOf([...facts, step('3', 'up', '10:20')]), '3')).toEqual(truckIn(dayOf(facts), '3'));
  });
});

describe('the field of a load', () => {
  it('is the one named with it', () => {
    const harvest = dayOf([step('3', 'left-field', '10:00', { field: 'south-80' })]);
    expect(loadsOf(harvest, '3')[0]).toMatchObject({ field: 'south-80', fieldSource: 'stated' });
  });

  it('is else the one that is dug, as named last by anybody', () => {
    const harvest = dayOf([
      fact({ kind: 'field-dug', field: 'north-40' }, '06:00'),
      step('3', 'left-field', '07:00'),
      fact({ kind: 'field-dug', field: 'creek-bottom' }, '09:00'),
      step('3', 'left-field', '10:00'),
    ]);
    expect(loadsOf(harvest, '3').map((load) => load.field)).toEqual(['north-40', 'creek-bottom']);
    expect(loadsOf(harvest, '3')[0]?.fieldSource).toBe('inferred');
  });

  it('a move of the digger told late still places the loads after it', () => {
    const harvest = dayOf([
      fact({ kind: 'field-dug', field: 'north-40' }, '06:00'),
      step('3', 'left-field', '10:00'),
      fact({ kind: 'field-dug', field: 'creek-bottom' }, '09:00', { heardMs: at('11:00') }),
    ]);
    expect(loadsOf(harvest, '3')[0]?.field).toBe('creek-bottom');
  });

  it('the field on the ticket goes before all', () => {
    const harvest = dayOf([
      step('3', 'left-field', '10:00', { field: 'south-80' }),
      ticket('3', '10:40', 50_520, { field: 'north-40' }),
    ]);
    expect(loadsOf(harvest, '3')[0]?.field).toBe('north-40');
  });
});
