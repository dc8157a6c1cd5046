/** Random days for the laws of the fold: realistic rounds of several trucks, with all that goes wrong in reporting them. */
import fc from 'fast-check';
import type { EntryTarget, Fact, FactHeader, HaulStep, Happening } from '../../src/core/book/facts.ts';
import { addMinutes } from '../../src/core/units.ts';
import type { EpochMs, Minutes } from '../../src/core/units.ts';
import { aTicket, at } from './given.ts';

const drivers = { '1': 'ana', '2': 'ben', '3': 'carla' } as const;
type Driven = keyof typeof drivers;
const fields = ['north-40', 'south-80', 'creek-bottom'] as const;

const chance = (share: number): fc.Arbitrary<boolean> =>
  fc.integer({ min: 0, max: 99 }).map((n) => n < share * 100);

/** What a driver may tell of one round, with the minutes from the one before: any of it may be missing. */
const round = fc.record({
  told: fc.record({
    'at-field': chance(0.4),
    loading: chance(0.2),
    'left-field': chance(0.8),
    'joined-line': chance(0.6),
    'first-weighed': chance(0.2),
    dumped: chance(0.7),
    ticket: chance(0.8),
    returning: chance(0.4),
    parked: chance(0.05),
    down: chance(0.05),
  }),
  minutes: fc.array(fc.integer({ min: 1, max: 35 }), { minLength: 10, maxLength: 10 }),
  field: fc.option(fc.constantFrom(...fields), { nil: null }),
  netLb: fc.integer({ min: 1_000, max: 3_400 }).map((divisions) => divisions * 20),
  serial: chance(0.9),
  /** The ticket comes hours late. */
  lateMin: fc.oneof({ weight: 4, arbitrary: fc.constant(0) }, fc.integer({ min: 1, max: 300 })),
  heardLaterMin: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, fc.integer({ min: 1, max: 240 })),
});
type Round = typeof round extends fc.Arbitrary<infer T> ? T : never;

/** A cause's facts share it; every message has its own. */
const said = (happening: Happening, cause: string, atMs: EpochMs, more: Partial<FactHeader>): Fact => ({
  id: `${cause}#0`,
  cause,
  atMs,
  sentMs: atMs,
  heardMs: atMs,
  by: 'ana',
  timeStated: false,
  ...more,
  ...happening,
});

const steps = [
  'at-field',
  'loading',
  'left-field',
  'joined-line',
  'first-weighed',
  'dumped',
  'ticket',
  'returning',
  'parked',
  'down',
] as const;

const roundFacts = (
  truck: Driven,
  one: Round,
  startMs: EpochMs,
  cause: string,
): { facts: Fact[]; endMs: EpochMs } => {
  let nowMs = startMs;
  const facts: Fact[] = [];
  steps.forEach((what, n) => {
    nowMs = addMinutes(nowMs, one.minutes[n] ?? 1);
    if (!one.told[what]) return;
    const lateMin: Minutes = what === 'ticket' ? one.lateMin : 0;
    const atMs = addMinutes(nowMs, lateMin);
    const header = { by: drivers[truck], heardMs: addMinutes(atMs, one.heardLaterMin) };
    const name = `${cause}-${what}`;
    if (what === 'ticket') {
      const serial = one.serial ? name : null;
      facts.push(
        said({ kind: 'ticket-booked', ticket: aTicket(truck, one.netLb, { serial }) }, name, atMs, header),
      );
    } else {
      const silent = { station: null, grossLb: null, words: null };
      const field = what === 'left-field' || what === 'at-field' ? one.field : null;
      facts.push(
        said(
          { kind: 'truck-reported', truck, step: what satisfies HaulStep, field, ...silent },
          name,
          atMs,
          header,
        ),
      );
    }
  });
  return { facts, endMs: nowMs };
};

const truckDay = (truck: Driven, anyRound: fc.Arbitrary<Round> = round): fc.Arbitrary<Fact[]> =>
  fc
    .record({ rounds: fc.array(anyRound, { maxLength: 6 }), startMin: fc.integer({ min: 0, max: 120 }) })
    .map(({ rounds, startMin }) => {
      let nowMs = addMinutes(at('05:00'), startMin);
      return rounds.flatMap((one, n) => {
        const { facts, endMs } = roundFacts(truck, one, nowMs, `local:${truck}-${n}`);
        nowMs = endMs;
        return facts;
      });
    });

/** Reports and tickets of three trucks through a day and into the night. */
export const hauls: fc.Arbitrary<Fact[]> = fc
  .tuple(truckDay('1'), truckDay('2'), truckDay('3'))
  .map((days) => days.flat());

/** As `hauls`, but every ticket is sent where it was got. */
export const promptHauls: fc.Arbitrary<Fact[]> = truckDay(
  '1',
  round.map((one) => ({ ...one, lateMin: 0 })),
);

const aim = fc.record({
  clockMin: fc.integer({ min: 0, max: 1_200 }),
  by: fc.constantFrom('ana', 'ben', 'carla'),
  truck: fc.option(fc.constantFrom('1', '2', '3'), { nil: null }),
  pick: fc.nat(),
  how: fc.constantFrom('latest', 'message', 'serial'),
  set: fc.record({
    truck: fc.option(fc.constantFrom('1', '2', '3'), { nil: null }),
    field: fc.option(fc.constantFrom(...fields), { nil: null }),
    shiftMin: fc.option(fc.integer({ min: -90, max: 0 }), { nil: null }),
    netLb: fc.option(fc.constantFrom(48_000, 50_520), { nil: null }),
    renumbers: fc.boolean(),
  }),
  undo: fc.boolean(),
});

const targetOf = (
  one: typeof aim extends fc.Arbitrary<infer T> ? T : never,
  facts: readonly Fact[],
): EntryTarget => {
  const picked = facts[one.pick % Math.max(1, facts.length)];
  const serial = picked?.kind === 'ticket-booked' ? picked.ticket.serial : null;
  // Also a serial that only a correction may have given.
  if (one.how === 'serial') return { by: 'serial', serial: serial ?? 'r1' };
  if (one.how === 'message' && picked) return { by: 'message', cause: picked.cause };
  return { by: 'latest', person: one.by, truck: one.truck };
};

/** Days with undos and corrections among the messages, sent at any time, by anyone, of anything. */
export const nastyDays: fc.Arbitrary<Fact[]> = fc
  .tuple(hauls, fc.array(aim, { maxLength: 6 }))
  .map(([facts, aims]) => [
    ...facts,
    ...aims.map((one, n): Fact => {
      const atMs = addMinutes(at('05:00'), one.clockMin);
      const { truck, field, netLb, shiftMin, renumbers } = one.set;
      const set = {
        truck,
        field,
        netLb,
        grossLb: null,
        tareLb: null,
        atMs: shiftMin === null ? null : addMinutes(atMs, shiftMin),
        // Of its own: that two tickets get one serial is refused.
        ...(renumbers ? { serial: `r${n}` } : {}),
      };
      const target = targetOf(one, facts);
      const what: Happening = one.undo
        ? { kind: 'entry-withdrawn', target }
        : { kind: 'entry-corrected', target, set };
      return said(what, `local:change-${n}`, atMs, { by: one.by });
    }),
  ]);
