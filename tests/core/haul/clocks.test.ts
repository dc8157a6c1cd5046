/** Phones, scales and the bot have clocks of their own, and words come late: which load, and when, by the limits. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../../src/core/book/facts.ts';
import { endedMs } from '../../../src/core/haul/load.ts';
import { at, given, loadsOf, step, ticket, truckIn } from '../../support/given.ts';

const loads = (...facts: readonly Fact[]) => loadsOf(given(facts).harvest, '3');
const truck = (...facts: readonly Fact[]) => truckIn(given(facts).harvest, '3');
const count = (...facts: readonly Fact[]): number => loads(...facts).length;

const full = (clock: string) => step('3', 'left-field', clock);
const inLine = (clock: string) => step('3', 'joined-line', clock);
const weighedIn = (clock: string) => step('3', 'first-weighed', clock);
const dumped = (clock: string) => step('3', 'dumped', clock);
const empty = (clock: string) => step('3', 'returning', clock);
const weighedOut = (clock: string) => ticket('3', clock, 50_520);

describe('when a load came off the truck', () => {
  const ended = (...facts: readonly Fact[]) => loads(...facts).map(endedMs);

  it('is the earlier of dump and second weight, whichever clock is behind', () => {
    expect(ended(full('08:00'), dumped('08:40'), weighedOut('08:46'))).toEqual([at('08:40')]);
    expect(ended(full('08:00'), weighedOut('08:40'), dumped('08:46'))).toEqual([at('08:40')]);
  });

  it('is the one of them that was told', () => {
    expect(ended(full('08:00'), dumped('08:40'))).toEqual([at('08:40')]);
    expect(ended(full('08:00'), weighedOut('08:40'))).toEqual([at('08:40')]);
    expect(ended(full('08:00'), inLine('08:20'))).toEqual([null]);
  });
});

describe('when the newest word about a load was heard', () => {
  const heard = (one: Fact, clock: string): Fact => ({ ...one, heardMs: at(clock) });
  const heardMs = (...facts: readonly Fact[]) => loads(...facts).map((load) => load.heardMs);

  it('is not when it was sent, and a word that was late stays the newest', () => {
    expect(heardMs(full('08:00'), heard(inLine('08:20'), '08:50'))).toEqual([at('08:50')]);
    expect(heardMs(heard(full('08:00'), '09:10'), inLine('08:20'))).toEqual([at('09:10')]);
  });

  it('counts the ticket too', () => {
    expect(heardMs(full('08:00'), heard(weighedOut('08:50'), '12:00'))).toEqual([at('12:00')]);
    expect(heardMs(heard(full('08:00'), '12:00'), weighedOut('08:50'))).toEqual([at('12:00')]);
  });
});

describe('a step said again', () => {
  it('"loaded" is of the same load for two cycles, also where the line was told in between', () => {
    expect(count(full('08:00'), full('08:29'))).toBe(1);
    expect(count(full('08:00'), full('08:30'))).toBe(2);
    expect(count(full('08:00'), inLine('08:10'), full('08:29'))).toBe(1);
  });

  it('"in line" is of the same load for eight cycles from the newest count', () => {
    expect(count(inLine('08:00'), inLine('09:59'))).toBe(1);
    expect(count(inLine('08:00'), inLine('10:00'))).toBe(2);
    expect(count(inLine('08:00'), inLine('09:30'), inLine('11:00'))).toBe(1);
  });

  it('"in line" after the first weight is so for one cycle', () => {
    expect(count(inLine('08:00'), weighedIn('08:30'), inLine('08:44'))).toBe(1);
    expect(count(inLine('08:00'), weighedIn('08:30'), inLine('08:45'))).toBe(2);
  });

  it('"dumped" is so for one cycle, also after the truck said that it is empty', () => {
    expect(count(full('08:00'), dumped('08:30'), dumped('08:44'))).toBe(1);
    expect(count(full('08:00'), dumped('08:30'), dumped('08:45'))).toBe(2);
    expect(count(full('08:00'), dumped('08:30'), empty('08:31'), dumped('08:44'))).toBe(1);
  });

  it('"loaded" after the dump is so until a third of a cycle after "empty"', () => {
    expect(count(full('08:00'), dumped('08:06'), full('08:14'))).toBe(1);
    expect(count(full('08:00'), dumped('08:06'), empty('08:08'), full('08:12:59'))).toBe(1);
    expect(count(full('08:00'), dumped('08:06'), empty('08:08'), full('08:13'))).toBe(2);
  });
});

describe('a step that comes late', () => {
  it('before the furthest that was told is of the same load within a cycle of the newest word', () => {
    expect(count(full('08:00'), weighedIn('08:40'), inLine('08:54'))).toBe(1);
    expect(count(full('08:00'), weighedIn('08:40'), inLine('08:55'))).toBe(2);
  });

  it('after the ticket is of that load, unless the truck was empty since', () => {
    expect(count(full('08:00'), weighedOut('08:50'), weighedIn('08:55'))).toBe(1);
    expect(count(empty('07:50'), full('08:00'), weighedOut('08:50'), weighedIn('08:55'))).toBe(1);
    expect(count(full('08:00'), weighedOut('08:50'), empty('08:52'), weighedIn('08:55'))).toBe(2);
  });

  it('is of a load that stood on the truck for less than 20 hours', () => {
    expect(count(full('08:00'), inLine('2026-10-21 03:59'))).toBe(1);
    expect(count(full('08:00'), inLine('2026-10-21 04:00'))).toBe(2);
  });

  it('leaves the truck where it is', () => {
    expect(truck(full('08:00'), weighedIn('08:40'), inLine('08:41'))).toMatchObject({
      phase: 'on-piler',
      sinceMs: at('08:40'),
    });
  });

  it('does not change when the truck last stood in the line', () => {
    const weighed = loads(full('08:00'), inLine('08:20'), weighedIn('08:40'));
    expect(weighed.map(({ inLineMs }) => inLineMs)).toEqual([at('08:20')]);
  });

  it('has a parked truck at work again, though it was said before', () => {
    const parked = step('3', 'parked', '08:10');
    expect(truck(full('08:00'), parked, full('08:20'))).toMatchObject({
      phase: 'hauling',
      sinceMs: at('08:20'),
    });
  });
});

describe('a truck that says it is empty', () => {
  it('is not believed within half a cycle of "loaded": that was sent late', () => {
    expect(truck(full('08:00'), empty('08:07')).phase).toBe('hauling');
    expect(truck(full('08:00'), empty('08:07:30')).phase).toBe('returning');
  });

  it('is believed at once where it was at the station', () => {
    expect(truck(inLine('08:00'), empty('08:05')).phase).toBe('returning');
  });

  it('keeps the field that it named last', () => {
    const named = step('3', 'left-field', '08:00', { field: 'south-80' });
    expect(truck(named, inLine('08:20')).field).toBe('south-80');
  });
});

describe('a ticket', () => {
  const closed = (...facts: readonly Fact[]) => loads(...facts).map((load) => load.ticket !== null);

  it('of the minute in which the truck left is of that load: the scale’s clock is behind', () => {
    expect(closed(full('08:00'), weighedOut('08:00'))).toEqual([true]);
  });

  it('is of the load before while the truck hauls the next one', () => {
    expect(closed(full('07:00'), dumped('07:50'), full('08:00'), weighedOut('08:20'))).toEqual([true, false]);
    expect(truck(full('07:00'), dumped('07:50'), full('08:00'), weighedOut('08:20'))).toMatchObject({
      phase: 'hauling',
      sinceMs: at('08:00'),
    });
  });

  it('finds its load up to 20 hours after the newest word of it', () => {
    expect(closed(full('08:00'), dumped('08:50'), weighedOut('2026-10-21 04:49'))).toEqual([true]);
    expect(closed(full('08:00'), dumped('08:50'), weighedOut('2026-10-21 04:50'))).toEqual([false, true]);
  });

  it('sends a truck on the piler home', () => {
    expect(truck(full('08:00'), dumped('08:30'), weighedOut('08:40'))).toMatchObject({
      phase: 'returning',
      sinceMs: at('08:40'),
      source: 'ticket',
    });
  });
});

describe('two tickets in a bunch, the newer load’s first', () => {
  const rounds = [full('07:00'), dumped('07:50'), full('09:00'), dumped('09:50')];
  /** The serials by load. */
  const serials = (first: Fact, second: Fact) =>
    loads(...rounds, first, second).map((load) => load.ticket?.serial);
  const sent = (clock: string, serial: string | null, more: Parameters<typeof ticket>[3] = {}) =>
    ticket('3', clock, 50_000, { serial, ...more });

  it('go by their serials within half an hour', () => {
    expect(serials(sent('12:00', '48212'), sent('12:29', '48255'))).toEqual(['48212', '48255']);
    expect(serials(sent('12:00', '48212'), sent('12:30', '48255'))).toEqual(['48255', '48212']);
  });

  it.each([
    ['a field is told', sent('12:00', '48212'), sent('12:05', '48255', { field: 'south-80' })],
    [
      'a first weight is told',
      sent('12:00', '48212'),
      sent('12:05', '48255', { firstWeighedMs: at('07:40') }),
    ],
    ['a serial is no number', sent('12:00', '4821A'), sent('12:05', '48255')],
    ['a serial begins with a letter', sent('12:00', '48212'), sent('12:05', 'A8211')],
    ['a serial is missing', sent('12:00', '48212'), sent('12:05', null)],
  ])('stay as they were closed where %s', (_, first, second) => {
    const [older, newer] = loads(...rounds, first, second).map((load) => load.ticket?.cause);
    expect([older, newer]).toEqual([second.cause, first.cause]);
  });

  it('stay so too where the newer load’s comes last: a serial was mistyped', () => {
    const first = [full('07:00'), dumped('07:50'), sent('07:52', '48255')];
    const second = [full('08:00'), dumped('08:10'), sent('08:15', '48212')];
    expect(loads(...first, ...second).map((load) => load.ticket?.serial)).toEqual(['48255', '48212']);
  });
});
