/** What the weights of a ticket can be at all. */
import type { Lb } from '../units.ts';

/** Outside this a net weight cannot be one truck's load. From memory: least load of 50 divisions; heaviest legal rigs gross 129,000 lb. */
export const NET_LIMITS_LB = { min: 1_000, max: 100_000 } as const;

/** A net read off in hundredths of a ton may differ from the pounds by this much. */
const NET_ROUNDING_LB: Lb = 20;

export interface Weights {
  grossLb: Lb | null;
  tareLb: Lb | null;
  netLb: Lb | null;
}

/** Weights that no load can have. */
export type WeightRefusal =
  | { refused: 'weight-missing' }
  | { refused: 'second-not-below-first'; grossLb: Lb; tareLb: Lb }
  | { refused: 'weights-disagree'; netLb: Lb; computedLb: Lb }
  | { refused: 'net-impossible'; netLb: Lb; minLb: Lb; maxLb: Lb };

/** Net = first - second; a net alone is taken as told. */
export const netOf = ({ grossLb, tareLb, netLb }: Weights): { netLb: Lb } | { refusal: WeightRefusal } => {
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

const withinLimits = (netLb: Lb): { netLb: Lb } | { refusal: WeightRefusal } =>
  netLb < NET_LIMITS_LB.min || netLb > NET_LIMITS_LB.max
    ? { refusal: { refused: 'net-impossible', netLb, minLb: NET_LIMITS_LB.min, maxLb: NET_LIMITS_LB.max } }
    : { netLb };
