import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { standingFactsOf } from '../../../src/core/book/standing.ts';
import type { Fact } from '../../../src/core/book/facts.ts';
import { firstMs, hasHappened } from '../../../src/core/harvest/chapters.ts';
import { foldHarvest, withFacts } from '../../../src/core/harvest/fold.ts';
import type { Harvest } from '../../../src/core/harvest/harvest.ts';
import { nastySeason } from '../../support/random-season.ts';
import { sampleRoster } from '../../support/roster.ts';
import { plain, standingFacts, stateOf, wholeFold } from '../../support/whole-fold.ts';

const nothing = foldHarvest(sampleRoster, []);
const whole = (facts: readonly Fact[]) => plain(wholeFold(sampleRoster, facts));

/** In batches of these sizes, in turn. */
const batches = (facts: readonly Fact[], sizes: readonly number[]): Fact[][] => {
  const out: Fact[][] = [];
  for (let from = 0; from < facts.length; from += out.at(-1)?.length ?? 1)
    out.push(facts.slice(from, from + (sizes[out.length % sizes.length] ?? 1)));
  return out;
};

const sizes = fc.array(fc.constantFrom(1, 1, 1, 2, 3, 40), { minLength: 1, maxLength: 6 });
const shuffled = (facts: Fact[]): fc.Arbitrary<Fact[]> =>
  fc.shuffledSubarray(facts, { minLength: facts.length });
/** Mostly as they happened, some of them late. */
const asHeard = (facts: Fact[]): fc.Arbitrary<Fact[]> =>
  fc.constant(facts.toSorted((a, b) => a.heardMs - b.heardMs));

/** Every harvest on the way, and the facts that it was given. */
const onTheWay = (facts: readonly Fact[], inBatches: readonly number[]) => {
  const seen: { harvest: Harvest; facts: Fact[] }[] = [];
  for (const batch of batches(facts, inBatches)) {
    const before = seen.at(-1) ?? { harvest: nothing, facts: [] };
    seen.push({ harvest: withFacts(before.harvest, batch), facts: [...before.facts, ...batch] });
  }
  return seen;
};

describe.each([
  ['as they are heard', asHeard],
  ['in any order', shuffled],
] as const)('facts that come %s', (_, ordered) => {
  it('are folded on to what they come to together, and leave what was before as it was', () => {
    const days = nastySeason(3).chain((facts) =>
      fc.tuple(ordered(facts), sizes, fc.integer({ min: 1, max: 9 })),
    );
    fc.assert(
      fc.property(days, ([facts, inBatches, every]) => {
        const seen = onTheWay(facts, inBatches);
        // Looked at when all has been told: what came later has changed none of them.
        for (const { harvest, facts: so } of seen.filter(
          (_one, n) => n % every === 0 || n === seen.length - 1,
        ))
          expect(stateOf(harvest)).toEqual(whole(so));
      }),
      { numRuns: 60 },
    );
  });

  it('are folded on over a season of several chapters', () => {
    const season = nastySeason(24).chain((facts) => fc.tuple(ordered(facts), sizes));
    let most = 0;
    fc.assert(
      fc.property(season, ([facts, inBatches]) => {
        const { harvest } = onTheWay(facts, inBatches).at(-1) ?? { harvest: nothing };
        most = Math.max(most, harvest.season.chapters.length);
        expect(stateOf(harvest)).toEqual(whole(facts));
      }),
      { numRuns: 6 },
    );
    expect(most).toBeGreaterThan(2);
  });

  it('stand as undos and corrections have it, message by message', () => {
    fc.assert(
      fc.property(
        nastySeason(3).chain((facts) => fc.tuple(ordered(facts), sizes)),
        ([facts, inBatches]) => {
          const { harvest } = onTheWay(facts, inBatches).at(-1) ?? { harvest: nothing };
          const expected = Map.groupBy(standingFacts(facts), ({ cause }) => cause);
          for (const cause of new Set(facts.map((one) => one.cause)))
            expect(standingFactsOf(harvest.standing, cause)).toEqual(expected.get(cause) ?? []);
        },
      ),
      { numRuns: 60 },
    );
  });
});

it('goes two ways from one state', () => {
  fc.assert(
    fc.property(nastySeason(3), fc.nat(), fc.nat(), (facts, first, second) => {
      const [one, other] = [
        facts.slice(0, first % (facts.length + 1)),
        facts.slice(second % (facts.length + 1)),
      ];
      const both = one.filter((told) => other.includes(told));
      const start = foldHarvest(sampleRoster, both);
      const [left, right] = [one, other].map((way) => way.filter((told) => !both.includes(told)));
      expect(stateOf(withFacts(start, left ?? []))).toEqual(whole([...both, ...(left ?? [])]));
      expect(stateOf(withFacts(start, right ?? []))).toEqual(whole([...both, ...(right ?? [])]));
      expect(stateOf(start)).toEqual(whole(both));
    }),
    { numRuns: 60 },
  );
});

it('knows when the first thing happened, and what happened in a span', () => {
  fc.assert(
    fc.property(nastySeason(3), fc.nat(), fc.integer({ min: 1, max: 300 }), (facts, pick, minutes) => {
      const harvest = foldHarvest(sampleRoster, facts);
      const times = standingFacts(facts).filter(({ kind }) => kind === 'ticket-booked');
      const fromMs = facts[pick % Math.max(1, facts.length)]?.atMs ?? 0;
      const toMs = fromMs + minutes * 60_000;
      expect(firstMs(harvest)).toBe(
        standingFacts(facts).reduce<number | null>((ms, { atMs }) => Math.min(ms ?? atMs, atMs), null),
      );
      expect(hasHappened(harvest, { fromMs, toMs }, ({ kind }) => kind === 'ticket-booked')).toBe(
        times.some(({ atMs }) => atMs > fromMs && atMs <= toMs),
      );
    }),
    { numRuns: 60 },
  );
});
