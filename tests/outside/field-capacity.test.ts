/**
 * Effective field capacity by ASABE EP496, acres/h = mph x ft x efficiency / 8.25; the same in Iowa State University
 * AgDM A3-24 (PM 696). The rows below are derived from that formula for common row counts and spacings.
 */
import { describe, expect, it } from 'vitest';
import { acresPerHour } from '../../src/core/answers/field-capacity.ts';

const rows = [
  { rows: 6, rowSpacingIn: 22, at3: [4.0, 2.4], at4: [5.33, 3.2], tonsPerHour: [72, 96] },
  { rows: 8, rowSpacingIn: 22, at3: [5.33, 3.2], at4: [7.11, 4.27], tonsPerHour: [96, 128] },
  { rows: 12, rowSpacingIn: 22, at3: [8.0, 4.8], at4: [10.67, 6.4], tonsPerHour: [144, 192] },
  { rows: 6, rowSpacingIn: 30, at3: [5.45, 3.27], at4: [7.27, 4.36], tonsPerHour: [98, 131] },
  { rows: 8, rowSpacingIn: 30, at3: [7.27, 4.36], at4: [9.7, 5.82], tonsPerHour: [131, 175] },
] as const;

const rounded = (value: number): number => Math.round(value * 100) / 100;

describe.each(rows)(
  '$rows rows at $rowSpacingIn in.',
  ({ rows: count, rowSpacingIn, at3, at4, tonsPerHour }) => {
    const capacity = (speedMph: number, efficiency: number): number =>
      acresPerHour({ rows: count, rowSpacingIn, speedMph, efficiency });

    it.each([
      [3, 1, at3[0]],
      [3, 0.6, at3[1]],
      [4, 1, at4[0]],
      [4, 0.6, at4[1]],
    ])('%i mph at %f: %f acres/h', (speedMph, efficiency, acres) => {
      expect(rounded(capacity(speedMph, efficiency))).toBe(acres);
    });

    it('at 60 % and 30 tons/acre', () => {
      expect([3, 4].map((mph) => Math.round(capacity(mph, 0.6) * 30))).toEqual(tonsPerHour);
    });
  },
);

// 43,560 sq ft an acre, 5,280 ft a mile: a strip 8.25 ft wide and a mile long is one acre (exact).
it('a mile an hour over 8.25 ft is an acre an hour', () => {
  expect(acresPerHour({ rows: 1, rowSpacingIn: 99, speedMph: 1, efficiency: 1 })).toBe(1);
});
