import { describe, expect, it } from 'vitest';
import type { Happening } from '../../../src/core/book/facts.ts';
import { aTicket, correct, fact, given, ticket, undo } from '../../support/given.ts';

const booked = (serial: string, clock: string) => ticket('1', clock, 50_000, { serial });

describe('a serial that is corrected', () => {
  it('is the one that the ticket is known by from then on', () => {
    const after = given([booked('48237', '10:00')]).when(correct({ serial: '48273' }), 'ana', '10:05');
    expect(after.harvest.tickets).toMatchObject([{ serial: '48273', netLb: 50_000 }]);
    const again = after.when(correct({ netLb: 51_000 }, { by: 'serial', serial: '48273' }), 'ana', '10:10');
    expect(again.harvest.tickets).toMatchObject([{ serial: '48273', netLb: 51_000 }]);
    expect(again.when(undo({ by: 'serial', serial: '48273' }), 'ana', '10:15').harvest.tickets).toEqual([]);
  });

  it('is set on the newest ticket, whatever was said after it', () => {
    const seen = fact({ kind: 'line-seen', station: 'north-station', ahead: 4, truck: '1' }, '10:03');
    const after = given([booked('48237', '10:00'), seen]).when(correct({ serial: '48273' }), 'ana', '10:05');
    expect(after.harvest.tickets).toMatchObject([{ serial: '48273' }]);
  });

  it('cannot be that of another ticket', () => {
    const two = given([booked('48237', '10:00'), booked('48300', '10:40')]);
    expect(two.when(correct({ serial: '48237' }), 'ana', '10:45').refusal).toMatchObject({
      refused: 'serial-known',
      ticket: { serial: '48237' },
    });
  });

  it('is the old one again where the correction is taken back', () => {
    const after = given([booked('48237', '10:00')])
      .when(correct({ serial: '48273' }), 'ana', '10:05')
      .when(undo(), 'ana', '10:06');
    expect(after.harvest.tickets).toMatchObject([{ serial: '48237' }]);
  });
});

describe('a number that is corrected', () => {
  const place = { station: 'north-station' } as const;
  it.each<[Happening, number, Partial<Happening>]>([
    [{ kind: 'line-seen', ...place, ahead: 16, truck: '1' }, 6, { ahead: 6 }],
    [{ kind: 'pilers-seen', ...place, open: 3, down: null }, 2, { open: 2 }],
    [{ kind: 'pilers-seen', ...place, open: null, down: 2 }, 1, { down: 1 }],
    [{ kind: 'acres-told', machine: 'digger', field: 'north-40', acres: 31 }, 13, { acres: 13 }],
    [{ kind: 'root-measured', field: 'north-40', station: null, temperatureF: 63 }, 53, { temperatureF: 53 }],
  ])('is that of %j', (happening, value, now) => {
    const after = given([fact(happening, '10:00')]).when(
      correct({ count: { value, of: null } }),
      'ana',
      '10:05',
    );
    expect(after.refusal).toBeNull();
    const { headCounts, pilerReports, acresTold, rootReadings } = after.harvest;
    expect([...headCounts, ...pilerReports, ...acresTold, ...rootReadings]).toMatchObject([now]);
  });

  it('is of what it is said to count, past what was said since', () => {
    const acres = fact({ kind: 'acres-told', machine: 'digger', field: 'north-40', acres: 31 }, '10:00');
    const seen = fact({ kind: 'line-seen', ...place, ahead: 4, truck: '1' }, '10:03');
    const after = given([acres, seen]).when(correct({ count: { value: 13, of: 'acres' } }), 'ana', '10:05');
    expect(after.harvest.acresTold).toMatchObject([{ acres: 13 }]);
    expect(after.harvest.headCounts).toMatchObject([{ ahead: 4 }]);
  });

  it('is nothing to a ticket', () => {
    const only = given([fact({ kind: 'ticket-booked', ticket: aTicket('1', 50_000) }, '10:00')]);
    expect(only.when(correct({ count: { value: 6, of: null } }), 'ana', '10:05').refusal).toEqual({
      refused: 'nothing-to-correct',
    });
  });
});
