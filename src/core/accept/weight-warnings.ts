import type { Lb } from '../units.ts';
import type { BookedTicket } from '../haul/load.ts';
import type { Truck } from '../roster.ts';
import type { Warning } from '../refusal.ts';
import type { Weights } from '../book/weights.ts';

/** Ranges of the trade, from memory; a truck's own setting or its own tickets go before them. */
export const USUAL_LB = {
  first: { min: 45_000, max: 110_000 },
  second: { min: 20_000, max: 42_000 },
  net: { min: 20_000, max: 70_000 },
} as const;

/** How far a truck's second weight may stray from those seen before: fuel, dirt, mud. */
export const TARE_SPREAD_LB: Lb = 2_000;

export const TARES_TO_LEARN_FROM = 3;

/** The truck's setting, else its own earlier second weights and a spread, else the range of the trade. */
export const usualTareLb = (
  truck: Truck | undefined,
  earlier: readonly BookedTicket[],
): { min: Lb; max: Lb } => {
  if (truck?.usualTareLb) return truck.usualTareLb;
  const tares = earlier.flatMap((ticket) => (ticket.tareLb === null ? [] : [ticket.tareLb]));
  if (tares.length < TARES_TO_LEARN_FROM) return USUAL_LB.second;
  return { min: Math.min(...tares) - TARE_SPREAD_LB, max: Math.max(...tares) + TARE_SPREAD_LB };
};

/** NIST Handbook 44, Scales 2.20, class III L: a vehicle scale of 200,000 lb has divisions of 20 lb. Some have 10 or 50, so this only warns. */
export const SCALE_DIVISION_LB: Lb = 20;

/** Weights typed in pounds are whole; those that came from kilograms or tons are not held against the division. */
export const offDivision = (lb: Lb): boolean => Number.isInteger(lb) && lb % SCALE_DIVISION_LB !== 0;

export const weightWarnings = (
  weights: Weights,
  truck: Truck | undefined,
  earlier: readonly BookedTicket[],
): Warning[] => {
  const warnings: Warning[] = [];
  const told = [
    ['first', weights.grossLb, USUAL_LB.first],
    ['second', weights.tareLb, usualTareLb(truck, earlier)],
    ['net', weights.netLb, USUAL_LB.net],
  ] as const;
  for (const [weight, lb, usual] of told) {
    if (lb === null) continue;
    const derived = weight === 'net' && weights.grossLb !== null && weights.tareLb !== null;
    if (!derived && offDivision(lb))
      warnings.push({ warning: 'not-multiple', weight, lb, divisionLb: SCALE_DIVISION_LB });
    if (lb < usual.min || lb > usual.max)
      warnings.push({ warning: 'unusual', weight, lb, minLb: usual.min, maxLb: usual.max });
  }
  const limitLb = truck?.grossLimitLb ?? null;
  if (limitLb !== null && weights.grossLb !== null && weights.grossLb > limitLb)
    warnings.push({ warning: 'over-limit', grossLb: weights.grossLb, limitLb });
  return warnings;
};
