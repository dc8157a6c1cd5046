import type { Intent } from '../core/intent.ts';
import type { HaulStep } from '../core/book/facts.ts';
import type { EpochMs, Lb } from '../core/units.ts';
import type { Built, Hearing } from './hearing.ts';
import { told, unclear } from './hearing.ts';
import type { Resolved } from './resolve.ts';
import { slotsOf } from './sign.ts';
import type { Role, SlotOf } from './sign.ts';
import { isTons, lbOf, MIN_WEIGHT_LB } from './weights.ts';

type Weight = SlotOf<'weight'>;
type BookTicket = Extract<Intent, { do: 'book-ticket' }>;
type Weights = Pick<BookTicket, 'grossLb' | 'tareLb' | 'netLb'>;

const NONE: Weights = { grossLb: null, tareLb: null, netLb: null };

const put = (weights: Weights, role: Role, lb: Lb): Weights => {
  switch (role) {
    case 'gross':
      return { ...weights, grossLb: lb };
    case 'tare':
      return { ...weights, tareLb: lb };
    case 'net':
      return { ...weights, netLb: lb };
  }
};

/** First and second weight without labels: the loaded truck is the heavier. A third one is the net. */
const unlabelled = (pounds: readonly Lb[]): Weights | null => {
  const [first, second, third] = pounds;
  if (first === undefined || second === undefined || pounds.length > 3) return null;
  if (third === undefined)
    return { ...NONE, grossLb: Math.max(first, second), tareLb: Math.min(first, second) };
  const gross = Math.max(first, second, third);
  const [tare = null, net = null] = pounds.toSpliced(pounds.indexOf(gross), 1);
  return { grossLb: gross, tareLb: tare, netLb: net };
};

/** One weight without a label is the net if told in tons, or the partner of the one that has a label. */
const withOne = (labelled: Weights, { lb, tons }: Weight): Weights | null => {
  const { grossLb, tareLb, netLb } = labelled;
  if (netLb === null && (tons || (grossLb !== null && tareLb !== null))) return { ...labelled, netLb: lb };
  if (grossLb === null && tareLb !== null) return { ...labelled, grossLb: lb };
  return grossLb !== null && tareLb === null ? { ...labelled, tareLb: lb } : null;
};

/** Gross, tare and net as labelled, the rest by what they can be; null where one cannot tell. */
const assign = (weights: readonly Weight[]): Weights | null => {
  const labelled = weights.reduce((sum, { role, lb }) => (role === null ? sum : put(sum, role, lb)), NONE);
  const bare = weights.filter(({ role }) => role === null);
  const [only] = bare;
  if (only === undefined) return labelled;
  if (bare.length === 1) return withOne(labelled, only);
  const [heavy, light, ...more] = bare;
  const isPairWithNet =
    labelled.grossLb === null && labelled.tareLb === null && heavy !== undefined && light !== undefined;
  if (!isPairWithNet) return null;
  // "79,840 29,320 25.26 tons": two scale weights and the net of the paper.
  const tons = bare.find((weight) => weight.tons);
  const pair = unlabelled(bare.filter((weight) => weight !== tons).map(({ lb }) => lb));
  if (pair === null || (more.length > 0 && labelled.netLb !== null)) return null;
  return { ...pair, netLb: labelled.netLb ?? tons?.lb ?? pair.netLb };
};

const ticketOf = (resolved: Resolved, serial: string | null, weights: Weights): BookTicket => ({
  do: 'book-ticket',
  serial,
  truck: resolved.trucks[0] ?? null,
  field: resolved.field,
  station: resolved.station,
  atMs: resolved.atMs,
  firstWeighedMs: resolved.inMs,
  ...weights,
});

/** "Weighed in 79840": the first weight, before there is a ticket. */
export const firstWeight = (weights: readonly Weight[], resolved: Resolved): BookTicket =>
  ticketOf(resolved, null, { ...NONE, grossLb: weights[0]?.lb ?? null });

/** "Dumped 25.26 tons": the net alone. */
export const netTicket = (weights: readonly Weight[], resolved: Resolved): BookTicket | null => {
  const found = assign(weights);
  return found?.netLb == null ? null : ticketOf(resolved, null, found);
};

const bareWeights = (numbers: readonly string[], metric: boolean): Weight[] | null => {
  const weights = numbers.map((text) => ({ text, lb: lbOf(text, null, metric) }));
  if (weights.some(({ lb }) => lb === null)) return null;
  return weights.map(({ text, lb }) => ({
    slot: 'weight',
    role: null,
    lb: lb ?? 0,
    tons: isTons(text, null),
    said: text,
  }));
};

const stepOf = (step: HaulStep, { trucks, field, station }: Resolved, atMs: EpochMs | null): Intent => {
  const truck = trucks[0] ?? null;
  return { do: 'report', step, truck, field, station, atMs, ahead: null, words: null, untilMs: null };
};

/** "Weighed in at 10:05", "weighed out at 10:31": the step, when no weight is told. */
const weighedAt = (resolved: Resolved): Built => {
  const { inMs, atMs, slots } = resolved;
  if (inMs !== null) return told(stepOf('first-weighed', resolved, inMs));
  const isOut = slotsOf(slots, 'clock').some(({ lead }) => lead === 'out');
  return isOut ? told(stepOf('returning', resolved, atMs)) : null;
};

export const buildTicket = (resolved: Resolved, { roster }: Hearing): Built => {
  const { slots, numbers } = resolved;
  const serials = slotsOf(slots, 'ticket').map(({ serial }) => serial);
  const serial = serials.find((said) => said !== null) ?? null;
  const bare = bareWeights(numbers, roster.units === 'metric');
  const weights = [...slotsOf(slots, 'weight'), ...(bare ?? [])];
  const said = weights.map((weight) => weight.said).join(' ');
  if (bare === null) return unclear({ problem: 'which-amount', said: numbers.join(' ') });
  if (weights.length === 0 && serial === null) return weighedAt(resolved);
  const [only] = weights;
  // "Weighed 79840": no second weight yet, so the truck is on the piler.
  const isFirstWeight = serials.length === 0 && weights.length === 1 && only !== undefined && !only.tons;
  if (isFirstWeight && only.lb < MIN_WEIGHT_LB) return null;
  if (isFirstWeight && (only.role === null || only.role === 'gross')) {
    return told(firstWeight(weights, resolved));
  }
  const found = assign(weights);
  // A second weight with its label is enough: the first may have been told when the truck weighed in.
  const isEnough = found !== null && (found.netLb !== null || found.tareLb !== null);
  return isEnough
    ? told(ticketOf(resolved, serial, found))
    : unclear({ problem: 'which-amount', said: said || (serial ?? '') });
};
