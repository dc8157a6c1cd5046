/** Random seasons for the laws of the fold: days with all that goes wrong in them, and all that is told besides. */
import fc from 'fast-check';
import type { EntryTarget, Fact, Happening, NoticeStep } from '../../src/core/book/facts.ts';
import { addMinutes } from '../../src/core/units.ts';
import { at, fact } from './given.ts';
import { nastyDays } from './random-day.ts';
import { sampleRoster } from './roster.ts';

const DAY_MIN = 1_440;

const targetOn = (day: number, target: EntryTarget): EntryTarget => {
  if (target.by === 'message') return { ...target, cause: `${target.cause}@${day}` };
  return target.by === 'serial' ? { ...target, serial: `${target.serial}@${day}` } : target;
};

/** The same fact so many days later, under a name of its own. */
const onDay = (one: Fact, day: number): Fact => {
  const cause = `${one.cause}@${day}`;
  const later = (ms: number): number => addMinutes(ms, day * DAY_MIN);
  const times = { atMs: later(one.atMs), sentMs: later(one.sentMs), heardMs: later(one.heardMs) };
  const moved: Fact = { ...one, ...times, cause, id: `${cause}#0` };
  if (moved.kind === 'ticket-booked') {
    const { serial } = moved.ticket;
    return { ...moved, ticket: { ...moved.ticket, serial: serial === null ? null : `${serial}@${day}` } };
  }
  if (moved.kind === 'entry-withdrawn') return { ...moved, target: targetOn(day, moved.target) };
  if (moved.kind !== 'entry-corrected') return moved;
  const { atMs } = moved.set;
  const set = { ...moved.set, atMs: atMs === null ? null : later(atMs) };
  return { ...moved, target: targetOn(day, moved.target), set };
};

const noticeStep = (event: string, number: number, stage: NoticeStep['stage']): NoticeStep => ({
  event,
  number,
  notice: 'heat',
  stage,
  source: 'person',
  place: 'north-station',
  stopToppingMs: null,
  stopAtMs: at('15:00'),
  resumeAtMs: null,
  peakF: null,
  peakMs: null,
  limitF: null,
  chance: null,
  words: null,
});

const ana = sampleRoster.people[0];
const north = sampleRoster.stations[0];

/** What is told besides of hauling; none of it is reached by an undo but the station's and the root's. */
const besides: fc.Arbitrary<Happening> = fc.oneof(
  fc
    .tuple(fc.constantFrom('a', 'b'), fc.nat(3), fc.constantFrom('stop', 'update', 'all-clear'))
    .map(([event, number, stage]): Happening => ({
      kind: 'notice-raised',
      step: noticeStep(event, number, stage),
    })),
  fc.constantFrom<Happening[]>(
    { kind: 'notice-seen', person: 'ana' },
    { kind: 'notice-seen', person: 'ben' },
    { kind: 'shift-told', person: 'ana', off: true, noticesWhenOff: null },
    { kind: 'shift-told', person: 'ana', off: null, noticesWhenOff: true },
    { kind: 'language-chosen', person: 'ben', language: 'es' },
    { kind: 'stranger-heard', platform: 'local', user: 'zoe' },
    { kind: 'truck-taken', person: 'ana', truck: '3' },
    { kind: 'word-taught', said: 'rollin', means: 'loaded' },
    { kind: 'word-taught', said: 'rollin', means: null },
    { kind: 'machine-reported', machine: 'digger', runs: false, untilMs: null, words: null },
    { kind: 'machine-reported', machine: 'digger', runs: true, untilMs: null, words: null },
    { kind: 'acres-told', machine: 'digger', field: 'north-40', acres: 14 },
    { kind: 'field-dug', field: 'south-80' },
    { kind: 'line-seen', station: 'north-station', ahead: 9, truck: '1' },
    { kind: 'station-reported', station: 'north-station', open: false, untilMs: null },
    { kind: 'root-measured', field: 'north-40', station: null, temperatureF: 54 },
    { kind: 'air-observed', place: 'north-station', temperatureF: 61 },
    { kind: 'list-changed', change: { list: 'limits', put: { ...sampleRoster.limits, lineLimitMin: 40 } } },
    ...(ana
      ? [{ kind: 'list-changed', change: { list: 'people', put: { ...ana, truck: '2' } } } as const]
      : []),
    ...(north ? [{ kind: 'list-changed', change: { list: 'stations', put: north } } as const] : []),
  ),
  fc.integer({ min: 0, max: 6 }).map((hour): Happening => ({
    kind: 'forecast-issued',
    place: 'north-station',
    issuedMs: at('05:00') + hour * 3_600_000,
    hours: [{ startMs: at('05:00'), temperatureF: 50 + hour }],
    freezeAlerts: null,
    rain: [],
  })),
);

const told = fc.record({
  happening: besides,
  minute: fc.integer({ min: 0, max: 20 * 60 }),
  lateMin: fc.constantFrom(0, 0, 0, 200),
  by: fc.constantFrom('ana', 'ben', 'carla', 'mateo'),
});

/** Some messages bring two things, which an undo then takes back together. */
const bundled = (facts: readonly Fact[], picks: readonly number[]): Fact[] =>
  facts.map((one, n) => {
    const cause = facts[n - 1]?.cause;
    const isAlone = cause === undefined || n % 2 === 0 || !picks.includes(n % 16);
    return isAlone ? one : { ...one, cause, id: `${cause}#1` };
  });

/** Undos and corrections that were delivered twice: under another id, and heard later. */
const doubled = (facts: readonly Fact[]): Fact[] =>
  facts
    .filter(({ kind, sentMs }) => kind.startsWith('entry-') && sentMs % 3 === 0)
    .map((one) => ({
      ...one,
      cause: `${one.cause}-again`,
      id: `${one.cause}-again#0`,
      heardMs: addMinutes(one.heardMs, 7),
    }));

const nastyDay = (day: number): fc.Arbitrary<Fact[]> =>
  fc
    .record({
      hauls: fc.tuple(nastyDays, fc.array(fc.integer({ min: 0, max: 15 }), { maxLength: 4 })),
      others: fc.array(told, { maxLength: 10 }),
    })
    .map(({ hauls: [facts, picks], others }) => {
      const rest = others.map(({ happening, minute, lateMin, by }, n) => {
        const atMs = addMinutes(at('04:00'), minute);
        const header = {
          atMs,
          sentMs: atMs,
          heardMs: addMinutes(atMs, lateMin),
          by,
          cause: `local:other-${n}`,
        };
        return fact(happening, '04:00', header);
      });
      const moved = [...facts, ...rest, ...doubled(facts)].map((one) => onDay(one, day));
      return bundled(moved, picks);
    });

/** A season of so many days, in the order in which it was told; heard in any. */
export const nastySeason = (days: number): fc.Arbitrary<Fact[]> =>
  fc.tuple(...Array.from({ length: days }, (_, day) => nastyDay(day))).map((all) => all.flat());
