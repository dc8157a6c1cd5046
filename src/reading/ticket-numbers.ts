/**
 * Which number of a ticket is what: serial, gross, tare, net. Every way to tell them apart is tried, and the one that
 * fits sizes, labels and the sum best is taken.
 */
import { lbFromKg, lbFromShortTon, lbFromTonne } from '../core/units.ts';
import type { Lb } from '../core/units.ts';
import { TICKET_LB, USUAL_LB } from './assumptions.ts';
import type { Amount, TicketRole } from './amounts.ts';

export interface TicketNumbers {
  serial: string | null;
  grossLb: Lb | null;
  tareLb: Lb | null;
  netLb: Lb | null;
  /** The amounts that it is made of. */
  used: readonly Amount[];
}

type Role = TicketRole | 'none';

/** More numbers than that are no ticket that one could tell apart. */
const MOST_AMOUNTS = 5;
/** Two ways that differ by less than this are not told apart. */
const CLEAR = 0.6;

interface Weighed {
  lb: Lb;
  /** How unusual it is to write it so. */
  cost: number;
}

/** No truck carries more; "45.2 net" is thousands of pounds. Grade: from memory. */
const MOST_TONS = 40;

/** Scales print multiples of 10 or 20 lb, and most trucks are neither the smallest nor the largest. */
const unusual = (lb: Lb, role: 'gross' | 'tare' | 'net', unit: Amount['unit']): number => {
  const { min, max } = USUAL_LB[role];
  const isPrinted = unit === 'kg' || unit === 'tons' || unit === 'tonnes' || lb % 10 === 0;
  return (isPrinted ? 0 : 1) + (lb >= min && lb <= max ? 0 : 0.5);
};

/** What the amount weighs in that role; null = it cannot be that. */
const weighed = ({ value, unit, label }: Amount, role: 'gross' | 'tare' | 'net'): Weighed | null => {
  const { min, max } = TICKET_LB[role];
  const isTons = role === 'net' && value < MOST_TONS;
  const ways: Weighed[] = [];
  if (unit === 'kg') ways.push({ lb: Math.round(lbFromKg(value)), cost: 0 });
  if (isTons && unit === 'tonnes') ways.push({ lb: Math.round(lbFromTonne(value)), cost: 0 });
  if (isTons && unit === 'tons') ways.push({ lb: Math.round(lbFromShortTon(value)), cost: 0 });
  if (unit === null || unit === 'lb') ways.push({ lb: value, cost: 0 });
  const hasTenths = Number.isInteger(value * 10);
  if (isTons && unit === null && !Number.isInteger(value))
    ways.push({ lb: Math.round(lbFromShortTon(value)), cost: hasTenths ? 0.8 : 0.3 });
  const isShort = unit === null && (label === role || !Number.isInteger(value));
  if (isShort || unit === 'thousand') ways.push({ lb: Math.round(value * 1000), cost: isShort ? 0.5 : 0 });
  const possible = ways
    .filter(({ lb }) => Number.isInteger(lb) && lb >= min && lb <= max)
    .map(({ lb, cost }) => ({ lb, cost: cost + unusual(lb, role, unit) }));
  return possible.sort((a, b) => a.cost - b.cost)[0] ?? null;
};

/** Scales of trucks print whole tens of pounds (a division is 20 lb, or 10): bare digits that end otherwise are a serial. */
const isOffScale = ({ digits, unit, label }: Amount): boolean =>
  digits !== null && digits.length === 5 && unit === null && label === null && !digits.endsWith('0');

/** How well the amount is that; null = not at all. */
const fit = (amount: Amount, role: Role, isGroupedElsewhere: boolean): number | null => {
  const labelled = amount.label === null ? 0 : amount.label === role ? 3 : -3;
  if (role === 'none') return labelled - (amount.value >= 1000 ? 2 : 0.4);
  if (role === 'serial') {
    const { digits, unit } = amount;
    if (digits === null || unit !== null || digits.length < 4 || digits.length > 8) return null;
    if (digits.length === 4 && amount.label !== 'serial') return null;
    return labelled + (amount.isGrouped ? 0.2 : 0.7);
  }
  const weight = weighed(amount, role);
  if (weight === null) return null;
  const isOddOne = isGroupedElsewhere && amount.digits !== null && amount.value >= 1000;
  return (
    labelled +
    1 -
    weight.cost +
    (amount.isGrouped ? 0.4 : 0) -
    (isOddOne ? 0.8 : 0) -
    (isOffScale(amount) ? 1 : 0)
  );
};

interface Way {
  roles: readonly Role[];
  score: number;
}

/** Who writes one weight with a comma writes the others so, but never a serial. */
const ways = (amounts: readonly Amount[], roles: readonly Role[]): Way[] => {
  const isGrouped = amounts.some((amount) => amount.isGrouped);
  return amounts.reduce<Way[]>(
    (all, amount) =>
      all.flatMap((way) =>
        roles.flatMap((role) => {
          const score = role !== 'none' && way.roles.includes(role) ? null : fit(amount, role, isGrouped);
          return score === null ? [] : [{ roles: [...way.roles, role], score: way.score + score }];
        }),
      ),
    [{ roles: [], score: 0 }],
  );
};

/** Scales print multiples of 10 or 20 lb, and nets in tons are rounded to hundredths. */
const SUM_LB = 20;

const lbOf = (amounts: readonly Amount[], { roles }: Way, role: 'gross' | 'tare' | 'net'): Lb | null => {
  const amount = amounts[roles.indexOf(role)];
  return amount === undefined ? null : (weighed(amount, role)?.lb ?? null);
};

const isWithin = (lb: Lb, role: 'tare' | 'net'): boolean =>
  lb >= TICKET_LB[role].min && lb <= TICKET_LB[role].max;

/** Gross, tare and net agree, or one of them is not what it seems. */
const sumScore = (amounts: readonly Amount[], way: Way): number => {
  const [gross, tare, net] = (['gross', 'tare', 'net'] as const).map((role) => lbOf(amounts, way, role));
  const inOrder = way.roles.indexOf('gross') <= way.roles.indexOf('tare') ? 0.2 : 0;
  if (gross == null || (tare == null && net == null)) return inOrder;
  if (tare == null) return isWithin(gross - (net ?? 0), 'tare') ? 0.5 : -4;
  if (net == null) return isWithin(gross - tare, 'net') ? 0.5 : -4;
  return Math.abs(gross - tare - net) <= SUM_LB ? 3 : -4;
};

const asNumbers = (amounts: readonly Amount[], way: Way): TicketNumbers => ({
  serial: amounts[way.roles.indexOf('serial')]?.digits ?? null,
  grossLb: lbOf(amounts, way, 'gross'),
  tareLb: lbOf(amounts, way, 'tare'),
  netLb: lbOf(amounts, way, 'net'),
  used: amounts.filter((_, at) => way.roles[at] !== 'none'),
});

/**
 * `roles`: what the ticket may tell. The best way first, then those that fit about as well; none = no number is of a
 * ticket.
 */
export const ticketNumbers = (amounts: readonly Amount[], roles: readonly TicketRole[]): TicketNumbers[] => {
  if (amounts.length > MOST_AMOUNTS) return [];
  const scored = ways(amounts, [...roles, 'none'])
    .map((way) => ({ ...way, score: way.score + sumScore(amounts, way) }))
    .sort((a, b) => b.score - a.score);
  const [best] = scored;
  if (best === undefined || best.roles.every((role) => role === 'none')) return [];
  return scored.filter(({ score }) => best.score - score < CLEAR).map((way) => asNumbers(amounts, way));
};
