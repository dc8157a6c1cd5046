/** What the weights of a ticket may be: refused where they cannot be, warned of where they are unusual. */
import type { BookedTicket } from '../haul/load.ts';
import type { Truck } from '../roster.ts';
import type { Refusal, Warning } from '../telling.ts';
import type { Lb } from '../units.ts';

/** NIST Handbook 44, Scales 2.20, class III L: a vehicle scale of 200,000 lb has divisions of 20 lb. Some have 10 or 50, so this only warns. */
export const SCALE_DIVISION_LB: Lb = 20;

/** Outside this a net weight cannot be one truck's load. From memory: least load of 50 divisions; heaviest legal rigs gross 129,000 lb. */
export const NET_LIMITS_LB = { min: 1_000, max: 100_000 } as const;

/** Ranges of the trade, from memory; a truck's own setting or its own tickets go before them. */
export const USUAL_LB = {
  first: { min: 45_000, max: 110_000 },
  second: { min: 20_000, max: 42_000 },
  net: { min: 20_000, max: 70_000 },
} as const;

/** A net read off in hundredths of a ton may differ from the pounds by this much. */
const NET_ROUNDING_LB: Lb = 20;
/** How far a truck's second weight may stray from those seen before: fuel, dirt, mud. */
const TARE_SPREAD_LB: Lb = 2_000;
const TARES_TO_LEARN_FROM = 3;

export interface Weights {
  grossLb: Lb | null;
  tareLb: Lb | null;
  netLb: Lb | null;
}

/** Net = first - second; a net alone is taken as told. */
export const netOf = ({ grossLb, tareLb, netLb }: Weights): { netLb: Lb } | { refusal: Refusal } => {
  if (grossLb === null || tareLb === null)
    return netLb === null ? { refusal: { refused: 'weight-missing' } } : withinLimits(netLb);
  if (tareLb >= grossLb) return { refusal: { refused: 'second-not-below-first', grossLb, tareLb } };
  const computedLb = grossLb - tareLb;
  if (netLb !== null && Math.abs(netLb - computedLb) > NET_ROUNDING_LB)
    return { refusal: { refused: 'weights-disagree', netLb, computedLb } };
  return withinLimits(computedLb);
};

export const setsWeight = ({ grossLb, tareLb, netLb }: Weights): boolean =>
  grossLb !== null || tareLb !== null || netLb !== null;

/** Weights after a correction. A net told alone puts scale weights out of force that do not give it. */
export const reweigh = (was: Weights, set: Weights): Weights => {
  const grossLb = set.grossLb ?? was.grossLb;
  const tareLb = set.tareLb ?? was.tareLb;
  if (set.netLb === null)
    return { grossLb, tareLb, netLb: grossLb === null || tareLb === null ? was.netLb : null };
  const all = { grossLb, tareLb, netLb: set.netLb };
  return 'refusal' in netOf(all) ? { grossLb: set.grossLb, tareLb: set.tareLb, netLb: set.netLb } : all;
};

const withinLimits = (netLb: Lb): { netLb: Lb } | { refusal: Refusal } =>
  netLb < NET_LIMITS_LB.min || netLb > NET_LIMITS_LB.max
    ? { refusal: { refused: 'net-impossible', netLb, minLb: NET_LIMITS_LB.min, maxLb: NET_LIMITS_LB.max } }
    : { netLb };

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

/** Weights typed in pounds are whole; those that came from kilograms or tons are not held against the division. */
const offDivision = (lb: Lb): boolean => Number.isInteger(lb) && lb % SCALE_DIVISION_LB !== 0;

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
