import { expect, test } from 'vitest';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { sampleRoster } from '../support/roster.ts';
import { at, chatter, hearing, intents, overheard, report } from './reading-of.ts';

const said: [string, number][] = [
  ['at 10:15', at('10:15')],
  ['at 1015', at('10:15')],
  ['at 10.15', at('10:15')],
  ['1015', at('10:15')],
  ['10:15am', at('10:15')],
  ['at ten fifteen', at('10:15')],
  ['a las 10:15', at('10:15')],
  ['a las diez y quince', at('10:15')],
  ['at 7', at('07:00')],
  ['at 07:05', at('07:05')],
  ['at quarter past 7', at('07:15')],
  ['at half past 7', at('07:30')],
  ['at quarter to 8', at('07:45')],
  ['a las 7 y media', at('07:30')],
  ['a las 7 de la manana', at('07:00')],
  ['20 min ago', at('10:22')],
  ['about 20 minutes ago', at('10:22')],
  ['half an hour ago', at('10:12')],
  ['an hour and a half ago', at('09:12')],
  ['2 hours ago', at('08:42')],
  ['hace 20 minutos', at('10:22')],
  ['hace como 20', at('10:22')],
  ['hace media hora', at('10:12')],
  ['hace una hora', at('09:42')],
  // Phones and scales differ by minutes: 10:50 is taken at 10:42, 10:53 is the evening before.
  ['at 10:50', at('10:50')],
  ['at 10:53', at('22:53', 19)],
  // A time still to come today is yesterday's in a report.
  ['at noon', at('12:00', 19)],
  ['al mediodia', at('12:00', 19)],
  ['at 3pm', at('15:00', 19)],
  ['at 3 p.m.', at('15:00', 19)],
  ['3 pm', at('15:00', 19)],
  ['15h', at('15:00', 19)],
  ['15h30', at('15:30', 19)],
  ['a las 3 de la tarde', at('15:00', 19)],
  ['at 3 in the afternoon', at('15:00', 19)],
  ['at 7 yesterday', at('19:00', 19)],
];

test.each(said)('dumped %s', (clock, atMs) => {
  expect(overheard(`dumped ${clock}`)).toEqual(intents(report('dumped', { atMs })));
});

test('times look ahead where they are for later', () => {
  const line = { about: 'line', station: null } as const;
  expect(overheard('if I leave at 2')).toEqual(
    intents({ do: 'ask', question: { ...line, leaveInMin: 198 } }),
  );
  expect(overheard('si salgo en 20 minutos')).toEqual(
    intents({ do: 'ask', question: { ...line, leaveInMin: 20 } }),
  );
  const stop = { do: 'order-stop', hold: 'other', words: null, stopAtMs: at('13:30') } as const;
  expect(overheard('stop digging at 1:30')).toEqual(intents(stop));
});

test('an impossible time is asked about', () => {
  const problem = { problem: 'which-time', said: 'at 25:10' };
  expect(overheard('in line at 25:10')).toEqual({ found: 'unclear', problem });
});

test('a plan is no report', () => {
  expect(overheard('loaded in 20 minutes')).toEqual(chatter);
});

test('a clock is read in the zone of the field or station named, else in the zone of the room', () => {
  const [first, ...others] = sampleRoster.fields;
  if (first === undefined) throw new Error('The sample roster has no field.');
  const roster = { ...sampleRoster, fields: [{ ...first, zone: 'America/Denver' }, ...others] };
  const inLosAngeles = { roster, zone: 'America/Los_Angeles' };
  const nineFifteen = at('09:15');
  const leftAt = (atMs: number, field: string | null) => intents(report('left-field', { field, atMs }));
  expect(overheard('left north 40 at 9:15', inLosAngeles)).toEqual(leftAt(nineFifteen, 'north-40'));
  expect(overheard('loaded at 9:15', inLosAngeles)).toEqual(leftAt(nineFifteen + 3_600_000, null));
});

// In Boise clocks go back from 2:00 MDT to 1:00 MST on 1 November 2026 (IANA time zone database).
const CLOCKS_BACK = Date.UTC(2026, 10, 1, 8);

test.each([
  ['half an hour into the second 1 o’clock', 90, 75],
  ['before the second 1:15', 70, 15],
  ['in the first', 20, 15],
])('1:15 on the day of 25 hours, said %s', (_, sentMin, meantMin) => {
  const firstOneOclockMs = CLOCKS_BACK - 3_600_000;
  const sentMs = firstOneOclockMs + sentMin * 60_000 - (sentMin === 70 ? 10 * 60_000 : 0);
  const atMs = firstOneOclockMs + meantMin * 60_000;
  expect(overheard('dumped at 1:15', { sentMs })).toEqual(intents(report('dumped', { atMs })));
});

test('10:15 the evening before a day of 23 hours', () => {
  // Clocks go forward at 2:00 on 14 March 2027: 08:00 MDT is 9 h 45 min after 22:15 MST less the hour that is skipped.
  const sentMs = zoneClock.instant(hearing.zone, { year: 2027, month: 3, day: 14, hour: 8, minute: 0 });
  const atMs = sentMs - (9 * 60 + 45 - 60) * 60_000;
  expect(overheard('dumped at 10:15', { sentMs })).toEqual(intents(report('dumped', { atMs })));
});
