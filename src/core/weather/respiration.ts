import { HOURS_PER_DAY, LB_PER_SHORT_TON } from '../units.ts';
import type { Fahrenheit } from '../units.ts';

/**
 * CO2 that stored sugar beets give off, mg per kg and hour.
 * ASHRAE Handbook Refrigeration, "Thermal Properties of Foods" (Becker & Fricke): f (9t/5 + 32)^g, t in °C, which is a
 * power of °F. Grade of the coefficients for sugar beet: from memory; they agree with measured losses of 0.2-0.5 lb of
 * sucrose a ton and day (Strausbaugh, "Cutting Your Losses", Sugar Producer, June 2009).
 */
export const carbonDioxideMgPerKgHour = (rootF: Fahrenheit): number => 8.5913e-3 * rootF ** 1.888;

/** 1 mol of sucrose (342.30 g) gives 12 mol of CO2 (44.01 g). */
const SUCROSE_PER_CO2 = 342.3 / (12 * 44.01);

/** Sucrose burnt in a pile at that root temperature, lb per short ton and day. */
export const sucroseLostLbPerTonDay = (rootF: Fahrenheit): number =>
  carbonDioxideMgPerKgHour(rootF) * SUCROSE_PER_CO2 * (HOURS_PER_DAY * 1e-6) * LB_PER_SHORT_TON;

/**
 * What roots piled warmer than the limit lose beyond roots at the limit, lb of sucrose per short ton and day as long as
 * they stay warm. An estimate: losses by fermentation and rot are not included.
 */
export const extraLossLbPerTonDay = (rootF: Fahrenheit, limitF: Fahrenheit): number =>
  Math.max(0, sucroseLostLbPerTonDay(rootF) - sucroseLostLbPerTonDay(limitF));
