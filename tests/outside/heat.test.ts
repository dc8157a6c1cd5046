/**
 * Respiration of stored beets. The table was worked out by hand from the equation of the ASHRAE Handbook (Refrigeration,
 * "Thermal Properties of Foods"), its coefficients for sugar beet from memory; the checks below it do not depend on them.
 */
import { describe, expect, it } from 'vitest';
import { LB_PER_SHORT_TON, kgFromLb } from '../../src/core/units.ts';
import {
  carbonDioxideMgPerKgHour,
  extraLossLbPerTonDay,
  sucroseLostLbPerTonDay,
} from '../../src/core/weather/respiration.ts';

// Respiration is measured as heat as often as carbon dioxide, so the rate is compared as heat too.
const HEAT_J_PER_MG_CO2 = 10.7;
const J_PER_BTU = 1055.056;
/** Topped beets, Btu per lb and °F: NC State University, after USDA Agriculture Handbook 66. */
const SPECIFIC_HEAT = 0.9;

const heatBtuPerTonDay = (rootF: number): number =>
  (carbonDioxideMgPerKgHour(rootF) * HEAT_J_PER_MG_CO2 * 24 * kgFromLb(LB_PER_SHORT_TON)) / J_PER_BTU;

/** How fast a pile warms itself if no air moves in it, °F a day. */
const selfHeatingFPerDay = (rootF: number): number =>
  heatBtuPerTonDay(rootF) / (SPECIFIC_HEAT * LB_PER_SHORT_TON);

describe('respiration by root temperature', () => {
  it.each([
    [32, 5.97, 1318, 0.186, 0.73],
    [40, 9.09, 2008, 0.283, 1.12],
    [41, 9.53, 2104, 0.296, 1.17],
    [50, 13.86, 3060, 0.431, 1.7],
    [55, 16.59, 3663, 0.516, 2.04],
    [59, 18.94, 4183, 0.589, 2.32],
    [65, 22.74, 5022, 0.708, 2.79],
    [68, 24.76, 5468, 0.77, 3.04],
  ])(
    '%d °F: %d mg CO2, %d Btu, %d lb sucrose, warms itself %d °F a day',
    (rootF, co2, btu, sucrose, warming) => {
      expect(carbonDioxideMgPerKgHour(rootF)).toBeCloseTo(co2, 1);
      expect(Math.abs(heatBtuPerTonDay(rootF) / btu - 1)).toBeLessThan(0.001);
      expect(sucroseLostLbPerTonDay(rootF)).toBeCloseTo(sucrose, 2);
      expect(selfHeatingFPerDay(rootF)).toBeCloseTo(warming, 2);
    },
  );
});

describe('respiration against what others measured', () => {
  it('agrees with 0.2-0.5 lb of sucrose a ton and day in sound piles (Strausbaugh, Sugar Producer, June 2009)', () => {
    expect(sucroseLostLbPerTonDay(33)).toBeCloseTo(0.2, 1);
    expect(sucroseLostLbPerTonDay(54)).toBeCloseTo(0.5, 1);
  });

  it('agrees with 0.028 Btu a lb and hour when cool and 0.092 when warm (NC State, after USDA Handbook 66)', () => {
    const perLbHour = (rootF: number): number => heatBtuPerTonDay(rootF) / 2000 / 24;
    expect(Math.abs(perLbHour(32) / 0.028 - 1)).toBeLessThan(0.03);
    expect(Math.abs(perLbHour(60.5) / 0.092 - 1)).toBeLessThan(0.03);
  });

  it('about doubles in 15 °F where beets are stored (Michigan State University Extension)', () => {
    // 10 °C is 18 °F: doubling in 15 °F is 2.30 in 18 °F.
    const q10 = carbonDioxideMgPerKgHour(50) / carbonDioxideMgPerKgHour(32);
    expect(q10).toBeCloseTo(2 ** (18 / 15), 1);
  });

  it('is 1.82 times as fast at 55 °F as at 40 °F', () => {
    expect(carbonDioxideMgPerKgHour(55) / carbonDioxideMgPerKgHour(40)).toBeCloseTo(1.82, 2);
  });
});

describe('what warm roots cost', () => {
  it('is nothing at or below the limit', () => {
    expect(extraLossLbPerTonDay(55, 55)).toBe(0);
    expect(extraLossLbPerTonDay(50, 55)).toBe(0);
    expect(extraLossLbPerTonDay(65, 55)).toBeCloseTo(0.708 - 0.516, 2);
  });
});
