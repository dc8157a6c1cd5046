/** The order in which facts are folded: that in which they happened. */
import type { Fact } from '../book/facts.ts';

/** Two steps of one moment happened in the order of the round trip; a truck is parked or down after all else. */
const stepOrder = [
  'up',
  'at-field',
  'loading',
  'left-field',
  'joined-line',
  'first-weighed',
  'dumped',
  'ticket',
  'returning',
  'parked',
  'down',
] as const;

const stepRank = (fact: Fact): number => {
  if (fact.kind === 'ticket-booked') return stepOrder.indexOf('ticket');
  return fact.kind === 'truck-reported' ? stepOrder.indexOf(fact.step) : -1;
};

export const inOrderOfHappening = (a: Fact, b: Fact): number =>
  a.atMs - b.atMs || stepRank(a) - stepRank(b) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
