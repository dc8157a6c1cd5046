import type { Lb } from '../units.ts';
import type { BookedTicket } from '../haul/load.ts';
import type { Truck } from '../roster.ts';
import type { Warning } from '../refusal.ts';
import type { Weights } from '../book/weights.ts';
import { SCALE_DIVISION_LB, TARES_TO_LEARN_FROM, TARE_SPREAD_LB, USUAL_LB } from './assumptions.ts';

/** The truck's setting, else the range of its own earlier second weights plus a spread, else that of the trade. */
const usualTareLb = (truck: Truck | undefined, earlier: readonly BookedTicket[]): { min: Lb; max: Lb } => {
  if (truck?.usualTareLb) return truck.usualTareLb;
  const tares = earlier.flatMap((ticket) => (ticket.tareLb === null ? [] : [ticket.tareLb]));
  if (tares.length < TARES_TO_LEARN_FROM) return USUAL_LB.second;
  return { min: Math.min(...tares) - TARE_SPREAD_LB, max: Math.max(...tares) + TARE_SPREAD_LB };
};

/** Only whole pounds are checked: weights converted from kilograms or tons do not fit the divisions. */
const offDivision = (lb: Lb): boolean => Number.isInteger(lb) && lb % SCALE_DIVISION_LB !== 0;

export const weightWarnings = (
  weights: Weights,
  truck: Truck | undefined,
  earlier: readonly BookedTicket[],
): Warning[] => {
  const warnings: Warning[] = [];
  const given = [
    ['first', weights.grossLb, USUAL_LB.first],
    ['second', weights.tareLb, usualTareLb(truck, earlier)],
    ['net', weights.netLb, USUAL_LB.net],
  ] as const;
  for (const [weight, lb, usual] of given) {
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
