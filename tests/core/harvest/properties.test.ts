import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accept } from '../../../src/core/accept/accept.ts';
import { foldHarvest } from '../../../src/core/harvest/fold.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import { board } from '../../../src/core/answers/board.ts';
import { begunIn, endedMs, hasEnded, onTruckSince } from '../../../src/core/haul/load.ts';
import type { Load } from '../../../src/core/haul/load.ts';
import { tally } from '../../../src/core/answers/tally.ts';
import { personById } from '../../../src/core/roster.ts';
import { CREW_ROOM, allLoads, at, bookTicket, fact, report } from '../../support/given.ts';
import { hauls, nastyDays, promptHauls } from '../../support/random-day.ts';
import { sampleRoster } from '../../support/roster.ts';
import { standingFacts, stateOf } from '../../support/whole-fold.ts';
import type { Harvest } from '../../../src/core/harvest/harvest.ts';

const RUNS = { numRuns: 150 };
const dayOf = (facts: readonly Fact[]): Harvest => foldHarvest(sampleRoster, facts);
const season = { fromMs: 0, toMs: Infinity, truck: null, field: null };
const sum = (lines: readonly { netLb: number; loads: number }[]): [number, number] => [
  lines.reduce((lb, line) => lb + line.netLb, 0),
  lines.reduce((loads, line) => loads + line.loads, 0),
];

const instantOf = ({ sentMs, heardMs }: Fact): string => `${sentMs} ${heardMs}`;

/**
 * Facts in any order, but those of one instant in that given: of two messages that were sent and heard at the same
 * moment nothing but the order of the book says which one an "undo" means.
 */
const inAnyOrder = (facts: Fact[]): fc.Arbitrary<Fact[]> =>
  fc.shuffledSubarray(facts, { minLength: facts.length }).map((shuffled) => {
    const waiting = Map.groupBy(facts, instantOf);
    return shuffled.flatMap((place) => waiting.get(instantOf(place))?.shift() ?? []);
  });

describe('the fold', () => {
  it('ends the same for any order of the facts', () => {
    fc.assert(
      fc.property(
        nastyDays.chain((facts) => fc.tuple(fc.constant(facts), inAnyOrder(facts))),
        ([facts, shuffled]) => {
          expect(stateOf(dayOf(shuffled))).toEqual(stateOf(dayOf(facts)));
        },
      ),
      RUNS,
    );
  });

  it('does not count a step that is said again within a minute', () => {
    fc.assert(
      fc.property(hauls, fc.integer({ min: 1, max: 59 }), (facts, seconds) => {
        const again = facts
          .filter((one) => one.kind === 'truck-reported')
          .map((one) => ({
            ...one,
            id: `${one.cause}-again#0`,
            cause: `${one.cause}-again`,
            atMs: one.atMs + seconds * 1000,
          }));
        const [once, twice] = [dayOf(facts), dayOf([...facts, ...again])];
        expect(allLoads(twice)).toHaveLength(allLoads(once).length);
        expect(tally(twice, season)).toMatchObject(sumOf(once));
      }),
      RUNS,
    );
  });

  it('has every standing ticket in exactly one load, and no ticket that does not stand', () => {
    fc.assert(
      fc.property(nastyDays, (facts) => {
        const harvest = dayOf(facts);
        const held = allLoads(harvest).flatMap(({ ticket }) => (ticket ? [ticket.cause] : []));
        const standing = standingFacts(facts).filter((one) => one.kind === 'ticket-booked');
        expect(held.toSorted()).toEqual(standing.map(({ cause }) => cause).toSorted());
        expect(new Set(held).size).toBe(held.length);
      }),
      RUNS,
    );
  });

  it('leaves at most the last load of a truck under way, and loads in the order in which they began', () => {
    fc.assert(
      fc.property(nastyDays, (facts) => {
        for (const { loads } of dayOf(facts).trucks.values()) {
          expect(loads.slice(0, -1).every(hasEnded)).toBe(true);
          expect(loads.map(({ startMs }) => startMs)).toEqual(
            loads.map(({ startMs }) => startMs).toSorted((a, b) => a - b),
          );
        }
      }),
      RUNS,
    );
  });

  it('lists the loads begun in a span, and those that can have ended since', () => {
    fc.assert(
      fc.property(nastyDays, fc.nat(1_440), fc.nat(600), (facts, minute, length) => {
        const fromMs = at('00:00') + minute * 60_000;
        const toMs = fromMs + length * 60_000;
        for (const { loads } of dayOf(facts).trucks.values()) {
          expect(begunIn(loads, { fromMs, toMs })).toEqual(
            loads.filter(({ startMs }) => startMs >= fromMs && startMs < toMs),
          );
          const hasEndedSince = (load: Load) => (endedMs(load) ?? Infinity) >= fromMs;
          expect(onTruckSince(loads, fromMs)).toEqual(expect.arrayContaining(loads.filter(hasEndedSince)));
        }
      }),
      RUNS,
    );
  });

  it('never makes more loads than the rounds that were driven', () => {
    fc.assert(
      fc.property(promptHauls, (facts) => {
        const rounds = new Set(facts.map(({ cause }) => /^local:\d-\d+/.exec(cause)?.[0]));
        expect(allLoads(dayOf(facts)).length).toBeLessThanOrEqual(rounds.size);
      }),
      RUNS,
    );
  });
});

const sumOf = (harvest: Harvest): { netLb: number; loads: number } => {
  const { netLb, loads } = tally(harvest, season);
  return { netLb, loads };
};

describe('the tally', () => {
  it('is the sum of the standing tickets, by field and by truck the same', () => {
    fc.assert(
      fc.property(nastyDays, (facts) => {
        const harvest = dayOf(facts);
        const { netLb, loads, byField, byTruck, withoutTicket } = tally(harvest, season);
        const tickets = standingFacts(facts).flatMap((one) =>
          one.kind === 'ticket-booked' ? [one.ticket.netLb] : [],
        );
        expect(netLb).toBe(tickets.reduce((lb, net) => lb + net, 0));
        expect(sum(byField)).toEqual([netLb, loads]);
        expect(sum(byTruck)).toEqual([netLb, loads]);
        expect(loads - withoutTicket).toBe(tickets.length);
      }),
      RUNS,
    );
  });

  it('of two spans that meet is that of both together', () => {
    fc.assert(
      fc.property(nastyDays, fc.integer({ min: 0, max: 1_440 }), (facts, minute) => {
        const harvest = dayOf(facts);
        const middleMs = at('00:00') + minute * 60_000;
        const [before, after] = [
          tally(harvest, { ...season, toMs: middleMs }),
          tally(harvest, { ...season, fromMs: middleMs }),
        ];
        expect(sum([before, after])).toEqual(sum([tally(harvest, season)]));
      }),
      RUNS,
    );
  });

  it('agrees with the loads of the board', () => {
    fc.assert(
      fc.property(nastyDays, (facts) => {
        const harvest = dayOf(facts);
        const onBoard = board(harvest, 0).reduce((loads, row) => loads + row.loads, 0);
        expect(onBoard).toBe(tally(harvest, season).loads);
      }),
      RUNS,
    );
  });
});

describe('undo', () => {
  const byAna = (facts: readonly Fact[]): Fact[] =>
    facts.filter(({ by }) => by === 'ana').toSorted((a, b) => a.sentMs - b.sentMs);

  it('of the last entry equals never having said it', () => {
    fc.assert(
      fc.property(
        // Of two messages that one person sent in the same millisecond, neither is the last.
        hauls.filter((facts) => {
          const [last, before] = byAna(facts).toReversed();
          return last !== undefined && last.sentMs !== before?.sentMs;
        }),
        (facts) => {
          const last = byAna(facts).at(-1);
          const target = { by: 'latest', person: 'ana', truck: null } as const;
          const undone = fact({ kind: 'entry-withdrawn', target }, '2026-10-21 12:00');
          expect(stateOf(dayOf([...facts, undone]))).toEqual(
            stateOf(dayOf(facts.filter((one) => one !== last))),
          );
        },
      ),
      RUNS,
    );
  });

  it('of a correction equals never having corrected', () => {
    fc.assert(
      fc.property(nastyDays, (facts) => {
        const last = facts.filter((one) => one.kind === 'entry-corrected').at(-1);
        if (!last) return;
        const target = { by: 'message', cause: last.cause } as const;
        // Undone at the very moment: what was said in between is then judged without it.
        const undone = fact({ kind: 'entry-withdrawn', target }, '05:00', {
          sentMs: last.sentMs,
          heardMs: last.heardMs,
          atMs: last.atMs,
          id: `${last.id}-undone`,
        });
        const withUndo = facts.flatMap((one) => (one === last ? [one, undone] : [one]));
        expect(stateOf(dayOf(withUndo))).toEqual(stateOf(dayOf(facts.filter((one) => one !== last))));
      }),
      RUNS,
    );
  });
});

describe('messages as they come', () => {
  const message = fc.record({
    minute: fc.integer({ min: 1, max: 25 }),
    by: fc.constantFrom('ana', 'ben'),
    intent: fc.oneof(
      fc
        .constantFrom('left-field', 'joined-line', 'dumped', 'returning', 'at-field')
        .map((said) => report(said)),
      fc.integer({ min: 0, max: 6 }).map((n) => bookTicket({ serial: `48${n}`, netLb: 50_000 + n * 20 })),
      fc.integer({ min: 0, max: 6 }).map((n) => bookTicket({ netLb: 40_000 + n * 20 })),
      fc.constant(bookTicket({ grossLb: 29_320, tareLb: 79_840 })),
      fc.constant({ do: 'withdraw', target: { by: 'latest', truck: null } } as const),
    ),
  });

  const heard = (
    messages: readonly { atMs: number; by: string; cause: string; intent: Parameters<typeof accept>[0] }[],
  ) => {
    let facts: readonly Fact[] = [];
    const refusals: string[] = [];
    for (const { atMs, by, cause, intent } of messages) {
      const harvest = dayOf(facts);
      const speaker = personById(sampleRoster, by);
      if (!speaker) throw new Error(`${by} is not on the list`);
      const before = facts;
      const accepted = accept(intent, harvest, {
        speaker,
        cause,
        place: CREW_ROOM,
        sentMs: atMs,
        heardMs: atMs,
        factsSoFar: 0,
      });
      if (accepted.outcome === 'facts') facts = [...facts, ...accepted.facts];
      else refusals.push(accepted.refusal.refused);
      expect(facts.slice(0, before.length)).toEqual(before);
    }
    return { harvest: dayOf(facts), facts, refusals };
  };

  const inOrder = fc.array(message, { maxLength: 25 }).map((messages) => {
    let atMs = at('06:00');
    return messages.map(({ minute, by, intent }, n) => {
      atMs += minute * 60_000;
      return { atMs, by, intent, cause: `local:${n}` };
    });
  });

  it('each sent twice within a minute changes neither loads nor tons', () => {
    fc.assert(
      fc.property(inOrder, (messages) => {
        const doubled = messages.flatMap((one) =>
          one.intent.do === 'withdraw'
            ? [one]
            : [one, { ...one, atMs: one.atMs + 20_000, cause: `${one.cause}-again` }],
        );
        const withoutUndo = (list: typeof messages) => list.filter(({ intent }) => intent.do !== 'withdraw');
        const [once, twice] = [heard(withoutUndo(messages)), heard(withoutUndo(doubled))];
        expect(sumOf(twice.harvest)).toEqual(sumOf(once.harvest));
      }),
      { numRuns: 60 },
    );
  });

  it('a refusal loses nothing: what was told stands, and a serial is in the book once', () => {
    fc.assert(
      fc.property(inOrder, (messages) => {
        const { harvest, facts, refusals } = heard(messages);
        expect(facts.length + refusals.length).toBe(messages.length);
        const serials = harvest.tickets.flatMap(({ serial }) => (serial === null ? [] : [serial]));
        expect(new Set(serials).size).toBe(serials.length);
      }),
      { numRuns: 60 },
    );
  });
});
