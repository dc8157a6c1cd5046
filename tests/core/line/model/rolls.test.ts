import { describe, expect, it } from 'vitest';
import { NOT_VOID, rollOf, servedBetween } from '../../../../src/core/line/model/rolls.ts';

const at = (weighedMin: number, serial: number) => ({ weighedMin, serial });

describe('serials as an odometer', () => {
  it('follow the roll that they are nearest to, at a rate that a station can reach', () => {
    const rolls = [[at(0, 4000)], [at(0, 4090)]];
    expect(rollOf(rolls, at(60, 4020), 0.8)).toBe(0);
    expect(rollOf(rolls, at(60, 4100), 0.8)).toBe(1);
    expect(rollOf(rolls, at(60, 9000), 0.8)).toBe(-1);
    expect(rollOf(rolls, at(60, 3999), 0.8)).toBe(-1);
  });

  it('count the trucks between two tickets, but for the void ones', () => {
    const roll = [at(0, 4000), at(60, 4020)];
    const served = servedBetween([roll], roll, at(0, 4000), at(60, 4020));
    expect(served.count).toBeCloseTo(20 * NOT_VOID, 9);
    expect(served.sd).toBeGreaterThan(1);
  });

  it('add what the other scale weighed meanwhile, the less surely the less it was seen', () => {
    const own = [at(0, 4000), at(60, 4020)];
    const seen = [at(-30, 51_995), at(90, 52_015)];
    const unseen = [at(30, 52_000)];
    const both = servedBetween([own, seen], own, at(0, 4000), at(60, 4020));
    const guessed = servedBetween([own, unseen], own, at(0, 4000), at(60, 4020));
    expect(both.count).toBeCloseTo(30 * NOT_VOID, 9);
    expect(guessed.sd).toBeGreaterThan(both.sd);
  });
});
