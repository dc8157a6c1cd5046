/**
 * Weights on groups of axles: the table printed in Idaho Code 49-1001, after 23 U.S.C. 127(a)(2). Exact ties go down
 * in the enacted table, so ordinary rounding to the nearest 500 lb fails it.
 */
import { describe, expect, it } from 'vitest';
import { bridgeFormulaLb, truckLimitLb } from '../../src/core/haul/bridge-formula.ts';

const printed: readonly (readonly [feet: number, axles: number, lb: number])[] = [
  // "Over 8 feet": the formula at 8.
  [8, 2, 38_000],
  [8, 3, 42_000],
  [9, 2, 39_000],
  [9, 3, 42_500],
  [10, 2, 40_000],
  [10, 3, 43_500],
  [11, 3, 44_000],
  [12, 3, 45_000],
  [12, 4, 50_000],
  [13, 3, 45_500],
  [13, 4, 50_500],
  [16, 3, 48_000],
  [16, 4, 52_500],
  [16, 5, 58_000],
  [18, 3, 49_500],
  [18, 4, 54_000],
  [18, 5, 59_000],
  [20, 3, 51_000],
  [20, 4, 55_500],
  [20, 5, 60_500],
  [20, 6, 66_000],
  [22, 3, 52_500],
  [22, 4, 56_500],
  [22, 5, 61_500],
  [24, 3, 54_000],
  [24, 4, 58_000],
  [24, 5, 63_000],
  [24, 6, 68_500],
];

/** Computed by the formula of 23 U.S.C. 127(a)(2), not read off the table. */
const derived: typeof printed = [
  [36, 4, 66_000],
  [36, 5, 70_500],
  [43, 6, 80_000],
  [50, 5, 79_000],
  [51, 5, 80_000],
];

it.each(printed)('printed: %i ft, %i axles: %i lb', (feet, axles, lb) => {
  expect(bridgeFormulaLb(axles, feet)).toBe(lb);
});

it.each(derived)('derived: %i ft, %i axles: %i lb', (feet, axles, lb) => {
  expect(bridgeFormulaLb(axles, feet)).toBe(lb);
});

describe('exact ties', () => {
  const raw = (axles: number, feet: number): number => 500 * ((feet * axles) / (axles - 1) + 12 * axles + 36);

  it.each([
    [9, 3, 42_750],
    [11, 3, 44_250],
    [13, 3, 45_750],
    [18, 5, 59_250],
    [22, 5, 61_750],
    [50, 5, 79_250],
  ])('%i ft, %i axles: %i lb goes down', (feet, axles, tie) => {
    expect(raw(axles, feet)).toBe(tie);
    expect(bridgeFormulaLb(axles, feet)).toBe(tie - 250);
  });
});

it('the Interstate gross limit of 80,000 lb holds whatever the formula gives', () => {
  expect(bridgeFormulaLb(6, 60)).toBeGreaterThan(80_000);
  expect(truckLimitLb(6, 60)).toBe(80_000);
  expect(truckLimitLb(5, 50)).toBe(79_000);
});
