import { describe, expect, it } from 'vitest';
import {
  NOT_VOID,
  mostBelievable,
  onRolls,
  rollOf,
  servedBetween,
} from '../../../../src/core/line/model/rolls.ts';

const at = (weighedMin: number, serial: number) => ({ weighedMin, serial });
const MOST = 0.8;
const rollsOf = (...serials: readonly number[]) =>
  onRolls(serials.map((serial, place) => at(15 * place, serial)));

describe('serials as an odometer', () => {
  it('follow the roll that they are nearest to', () => {
    const newest = [at(0, 4000), at(0, 4090)];
    expect(rollOf(newest, at(60, 4020))).toBe(0);
    expect(rollOf(newest, at(60, 4100))).toBe(1);
    expect(rollOf(newest, at(60, 3999))).toBe(-1);
  });

  it('count the trucks between two tickets, but for the void ones', () => {
    const roll = [at(0, 4000), at(60, 4020)];
    const served = servedBetween([roll], roll, at(0, 4000), at(60, 4020), MOST);
    expect(served?.count).toBeCloseTo(20 * NOT_VOID, 9);
    expect(served?.sd).toBeGreaterThan(1);
  });

  it('add what the other scale weighed meanwhile, the less surely the less it was seen', () => {
    const own = [at(0, 4000), at(60, 4020)];
    const seen = [at(-30, 51_995), at(90, 52_015)];
    const unseen = [at(30, 52_000)];
    const both = servedBetween([own, seen], own, at(0, 4000), at(60, 4020), MOST);
    const guessed = servedBetween([own, unseen], own, at(0, 4000), at(60, 4020), MOST);
    expect(both?.count).toBeCloseTo(30 * NOT_VOID, 9);
    expect(guessed?.sd).toBeGreaterThan(both?.sd ?? NaN);
  });

  it('that jump up are a gap of unknown count on the same roll, not a second scale', () => {
    const { rolls, placed } = rollsOf(4000, 4004, 4009, 4012, 4016, 4300, 4304);
    expect(rolls).toHaveLength(1);
    const most = mostBelievable(rolls, MOST);
    const served = placed.map(
      ({ reading, last }) => last && servedBetween(rolls, rolls[0] ?? [], last, reading, most),
    );
    expect(served[5]).toBeNull();
    expect(served[6]?.count).toBeCloseTo(4 * NOT_VOID, 9);
  });

  it('that go down in order of time show a second scale', () => {
    const { rolls } = rollsOf(4000, 52_000, 4004, 52_003, 4008, 52_007);
    expect(rolls).toHaveLength(2);
  });

  it('in a slightly wrong order are of one roll: two times were rough', () => {
    expect(rollsOf(4000, 4006, 4005, 4010).rolls).toHaveLength(1);
  });

  it('of a roll that has ended do not come back next day', () => {
    // The roll ends at 9,998; the next one begins at 1.
    const evening = [9990, 9994, 9998].map((serial, place) => at(600 + 15 * place, serial));
    const fresh = Array.from({ length: 14 }, (_, place) => at(645 + 15 * place, 1 + 4 * place));
    const { rolls, placed } = onRolls([...evening, ...fresh, at(1500, 9999 + 60), at(1515, 9999 + 64)]);
    const [newest] = placed.slice(-1);
    // Higher than anything on the roll in use: a gap there, and not the old roll.
    expect(rolls.indexOf(rolls[newest?.roll ?? -1] ?? [])).toBe(1);
  });
});
