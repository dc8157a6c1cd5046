import { describe, expect, it } from 'vitest';
import { lbFromKg, lbFromShortTon } from '../../../src/core/units.ts';
import { at, bookTicket, given, loadsOf, report, step, ticket } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';

const weighed = { grossLb: 79_840, tareLb: 29_320 };

describe('a ticket that is booked', () => {
  it('has net = first - second, with the own truck and the only station filled in', () => {
    const after = given().when(bookTicket({ serial: '048213', ...weighed }), 'ana', '10:40');
    expect(after.harvest.tickets).toMatchObject([
      { serial: '048213', truck: '1', station: 'north-station', netLb: 50_520, by: 'ana', atMs: at('10:40') },
    ]);
    expect(after.warnings).toEqual([]);
  });

  it('may be a net in tons alone', () => {
    const after = given().when(bookTicket({ netLb: lbFromShortTon(25.26) }), 'ana', '10:40');
    expect(after.harvest.tickets[0]).toMatchObject({ netLb: 50_520, grossLb: null, tareLb: null });
    expect(after.warnings).toEqual([]);
  });

  it('takes a net that is off by 20 lb, as hundredths of a ton are, and refuses one that is off by more', () => {
    const off = (netLb: number) =>
      given().when(bookTicket({ ...weighed, netLb: 50_520 + netLb }), 'ana', '10:31').refusal;
    for (const lb of [-20, 20]) expect(off(lb)).toBeNull();
    for (const lb of [-21, 21]) expect(off(lb)).toMatchObject({ refused: 'weights-disagree' });
  });

  it('takes a net that was rounded to hundredths of a ton', () => {
    const after = given().when(
      bookTicket({ grossLb: 79_850, tareLb: 29_320, netLb: 50_520 }),
      'ana',
      '10:40',
    );
    expect(after.harvest.tickets[0]?.netLb).toBe(50_530);
  });

  it('ends with the second weight when the first was told before, with the dump between', () => {
    const after = given()
      .when(bookTicket({ grossLb: 79_840 }), 'ana', '10:20')
      .when(report('dumped'), 'ana', '10:26')
      .when(bookTicket({ tareLb: 29_320 }), 'ana', '10:34');
    expect(after.harvest.tickets).toMatchObject([{ grossLb: 79_840, tareLb: 29_320, netLb: 50_520 }]);
    expect(loadsOf(after.harvest, '1')).toHaveLength(1);
  });

  it('a first weight alone puts the truck on the piler, with a warning where it looks wrong', () => {
    const after = given().when(bookTicket({ grossLb: 798_400 }), 'ana', '10:20');
    expect(after.added).toMatchObject([{ kind: 'truck-reported', step: 'first-weighed', grossLb: 798_400 }]);
    expect(after.warnings).toMatchObject([{ warning: 'unusual', weight: 'first' }]);
  });

  it('goes to the station that the load was said to go to', () => {
    const [north] = sampleRoster.stations;
    if (!north) throw new Error('the sample has a station');
    const roster = { ...sampleRoster, stations: [north, { ...north, id: 'west', name: 'West' }] };
    const after = given([step('1', 'joined-line', '10:00', { station: 'west' })], roster).when(
      bookTicket({ netLb: 50_520 }),
      'ana',
      '10:40',
    );
    expect(after.harvest.tickets[0]?.station).toBe('west');
  });

  it('drops a first-weight time that is later than the second', () => {
    const times = { atMs: at('10:20'), firstWeighedMs: at('10:40') };
    const after = given().when(bookTicket({ netLb: 50_520, ...times }), 'ana', '10:45');
    expect(after.harvest.tickets[0]?.firstWeighedMs).toBeNull();
  });
});

describe('a ticket that is refused, with nothing written', () => {
  const known = ticket('2', '09:00', 48_000, { serial: '48213', header: { by: 'ben' } });
  it.each([
    ['no truck', 'fritz', bookTicket(weighed), { refused: 'no-truck' }],
    ['the serial alone', 'ana', bookTicket({ serial: '5' }), { refused: 'weight-missing' }],
    ['the second weight alone', 'ana', bookTicket({ tareLb: 29_320 }), { refused: 'weight-missing' }],
    [
      'weights the wrong way round',
      'ana',
      bookTicket({ grossLb: 29_320, tareLb: 79_840 }),
      { refused: 'second-not-below-first', grossLb: 29_320, tareLb: 79_840 },
    ],
    [
      'equal weights',
      'ana',
      bookTicket({ grossLb: 50_000, tareLb: 50_000 }),
      { refused: 'second-not-below-first', grossLb: 50_000, tareLb: 50_000 },
    ],
    [
      'a net that is not first - second',
      'ana',
      bookTicket({ ...weighed, netLb: 52_520 }),
      { refused: 'weights-disagree', netLb: 52_520, computedLb: 50_520 },
    ],
    [
      'a digit too many',
      'ana',
      bookTicket({ netLb: 505_200 }),
      { refused: 'net-impossible', netLb: 505_200, minLb: 1_000, maxLb: 100_000 },
    ],
    [
      'a digit too few',
      'ana',
      bookTicket({ netLb: 505 }),
      { refused: 'net-impossible', netLb: 505, minLb: 1_000, maxLb: 100_000 },
    ],
    [
      'a time still to come',
      'ana',
      bookTicket({ ...weighed, atMs: at('12:40') }),
      { refused: 'time-ahead', atMs: at('12:40') },
    ],
  ])('%s', (_, by, intent, refusal) => {
    expect(given([known]).when(intent, by, '10:40')).toMatchObject({ refusal, facts: [known] });
  });

  it('a serial that is booked, also by another driver', () => {
    const after = given([known]).when(bookTicket({ serial: '48213', ...weighed }), 'ana', '10:40');
    expect(after.refusal).toMatchObject({ refused: 'serial-known', ticket: { truck: '2', by: 'ben' } });
  });

  it('the same serial again when the load is done and the field hauls elsewhere', () => {
    const [north] = sampleRoster.stations;
    if (!north) throw new Error('the sample has a station');
    const roster = {
      ...sampleRoster,
      stations: [north, { ...north, id: 'west', name: 'West' }],
      fields: sampleRoster.fields.map((field) =>
        field.id === 'south-80' ? { ...field, station: 'west' } : field,
      ),
    };
    const again = bookTicket({ serial: '48213', ...weighed });
    const after = given([step('1', 'left-field', '10:00', { field: 'south-80' })], roster)
      .when(again, 'ana', '10:40')
      .when(report('at-field', { field: 'north-40' }), 'ana', '11:00')
      .when(again, 'ana', '11:01');
    expect(after.refusal).toMatchObject({ refused: 'serial-known' });
    expect(after.harvest.tickets).toMatchObject([{ station: 'west' }]);
  });

  it('the same weights without a serial again within minutes; not an hour later', () => {
    const first = given().when(bookTicket({ netLb: 50_520 }), 'ana', '10:40');
    expect(first.when(bookTicket({ netLb: 50_520 }), 'ana', '10:50').refusal).toMatchObject({
      refused: 'serial-known',
    });
    expect(first.when(bookTicket({ netLb: 50_520 }), 'ana', '11:45').harvest.tickets).toHaveLength(2);
  });

  it('the same weights once without and once with the serial', () => {
    const first = given().when(bookTicket({ netLb: 50_520 }), 'ana', '10:40');
    const after = first.when(bookTicket({ serial: '48213', ...weighed }), 'ana', '10:42');
    expect(after.refusal).toMatchObject({ refused: 'serial-known' });
    expect(loadsOf(after.harvest, '1')).toHaveLength(1);
  });
});

describe('warnings', () => {
  const warned = (more: Parameters<typeof bookTicket>[0], roster = sampleRoster) =>
    given([], roster).when(bookTicket(more), 'ana', '10:40').warnings;
  const limited = {
    ...sampleRoster,
    trucks: sampleRoster.trucks.map((truck) => ({
      ...truck,
      grossLimitLb: 79_000,
      usualTareLb: { min: 30_000, max: 31_000 },
    })),
  };

  // NIST Handbook 44, Scales 2.20, class III L: 20 lb divisions on a vehicle scale of 200,000 lb.
  it('a weight that is not a multiple of 20 lb, each by its name', () => {
    expect(warned({ grossLb: 79_841, tareLb: 29_330 })).toEqual([
      { warning: 'not-multiple', weight: 'first', lb: 79_841, divisionLb: 20 },
      { warning: 'not-multiple', weight: 'second', lb: 29_330, divisionLb: 20 },
    ]);
    expect(warned({ netLb: 50_525 })).toMatchObject([{ warning: 'not-multiple', weight: 'net' }]);
  });

  it('weights of a kilogram scale are not held against 20 lb', () => {
    expect(warned({ grossLb: lbFromKg(36_220), tareLb: lbFromKg(13_300) })).toEqual([]);
  });

  it('outside the usual range of the trade (from memory)', () => {
    expect(warned({ grossLb: 120_000, tareLb: 44_000 })).toEqual([
      { warning: 'unusual', weight: 'first', lb: 120_000, minLb: 45_000, maxLb: 110_000 },
      { warning: 'unusual', weight: 'second', lb: 44_000, minLb: 20_000, maxLb: 42_000 },
      { warning: 'unusual', weight: 'net', lb: 76_000, minLb: 20_000, maxLb: 70_000 },
    ]);
  });

  it('over the limit of the truck, and outside its own empty weight', () => {
    expect(warned(weighed, limited)).toEqual([
      { warning: 'unusual', weight: 'second', lb: 29_320, minLb: 30_000, maxLb: 31_000 },
      { warning: 'over-limit', grossLb: 79_840, limitLb: 79_000 },
    ]);
  });

  it('over the limit is told at the first weight already', () => {
    expect(warned({ grossLb: 79_840 }, limited)).toEqual([
      { warning: 'over-limit', grossLb: 79_840, limitLb: 79_000 },
    ]);
  });

  it('after three tickets, an empty weight far from those of the truck', () => {
    const three = ['07:00', '08:00', '09:00'].map((clock, n) =>
      ticket('1', clock, 50_000, { serial: `${n}`, grossLb: 79_400, tareLb: 29_400 }),
    );
    const after = given(three).when(bookTicket({ grossLb: 79_840, tareLb: 33_320 }), 'ana', '10:40');
    expect(after.warnings).toEqual([
      { warning: 'unusual', weight: 'second', lb: 33_320, minLb: 27_400, maxLb: 31_400 },
    ]);
  });
});
