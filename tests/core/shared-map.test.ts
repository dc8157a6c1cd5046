import fc from 'fast-check';
import { expect, it } from 'vitest';
import { emptyShared, got, withPut } from '../../src/core/shared-map.ts';
import type { SharedMap } from '../../src/core/shared-map.ts';

const put = fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer());
const KEYS = Array.from({ length: 31 }, (_, key) => key);
const asPlain = (map: SharedMap<number, number>) => KEYS.map((key) => got(map, key));

it('holds what a plain map holds, and each of its earlier states goes on holding what it held', () => {
  fc.assert(
    fc.property(fc.array(fc.array(put, { maxLength: 5 }), { maxLength: 40 }), (batches) => {
      const plain = new Map<number, number>();
      const states: { map: SharedMap<number, number>; held: (number | undefined)[] }[] = [];
      let map = emptyShared<number, number>();
      for (const batch of batches) {
        map = withPut(map, batch);
        for (const [key, value] of batch) plain.set(key, value);
        states.push({ map, held: KEYS.map((key) => plain.get(key)) });
      }
      for (const state of states) expect(asPlain(state.map)).toEqual(state.held);
    }),
  );
});

it('goes on from any of its states without touching the others', () => {
  const first = withPut(emptyShared<string, number>(), [['ana', 1]]);
  const [one, other] = [withPut(first, [['ben', 2]]), withPut(first, [['ben', 3]])];
  expect([got(first, 'ben'), got(one, 'ben'), got(other, 'ben')]).toEqual([undefined, 2, 3]);
});

it('stays flat: few layers for many keys put one by one', () => {
  let map = emptyShared<number, number>();
  for (let key = 0; key < 5_000; key += 1) map = withPut(map, [[key, key]]);
  expect(map.layers.length).toBeLessThanOrEqual(13);
  expect(got(map, 4_321)).toBe(4_321);
});
