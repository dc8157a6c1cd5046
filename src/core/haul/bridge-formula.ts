import type { Lb } from '../units.ts';

/** No Interstate gross weight goes above this (23 U.S.C. 127(a)(2)), whatever the formula gives. */
const INTERSTATE_GROSS_LB: Lb = 80_000;

/**
 * The federal bridge formula: the heaviest weight on a group of axles.
 * `W = 500 (L N / (N - 1) + 12 N + 36)` lb, to the nearest 500 lb. The enacted table breaks exact ties downward
 * (9 ft, 3 axles: 42,750 -> 42,500), so this does as well.
 * Source: 23 U.S.C. 127(a)(2); table as printed in Idaho Code 49-1001. State harvest permits may allow more or less:
 * ask your state.
 *
 * @param axles number of consecutive axles, 2 or more
 * @param lengthFt first to last axle of the group, whole feet; over 8 ft
 */
export const bridgeFormulaLb = (axles: number, lengthFt: number): Lb =>
  500 * Math.ceil((lengthFt * axles) / (axles - 1) + 12 * axles + 36 - 0.5);

/** The formula's weight for a whole truck, held to the Interstate gross limit. */
export const truckLimitLb = (axles: number, lengthFt: number): Lb =>
  Math.min(INTERSTATE_GROSS_LB, bridgeFormulaLb(axles, lengthFt));
