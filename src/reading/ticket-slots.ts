/** The numbers of weigh tickets and probes, as slots of the acts that have them. */
import type { Act } from './acts.ts';
import type { Amount, TicketRole } from './amounts.ts';
import type { Element, Slot } from './sign.ts';
import { ticketNumbers } from './ticket-numbers.ts';
import type { TicketNumbers } from './ticket-numbers.ts';

/** What the numbers of each of these acts may be. */
const TICKET_ROLES: Partial<Record<Act, readonly TicketRole[]>> = {
  weighed_in: ['gross'],
  weighed_out: ['tare', 'gross', 'serial'],
  ticket: ['gross', 'tare', 'net', 'serial'],
  correct: ['gross', 'tare', 'net', 'serial'],
  dumped: ['net'],
};

/** The ways to tell the numbers apart, the best first; none = no number is of a ticket. */
export const numbersOf = (acts: readonly Act[], amounts: readonly Amount[]): TicketNumbers[] => {
  const roles = new Set(acts.flatMap((act) => TICKET_ROLES[act] ?? []));
  return roles.size === 0 ? [] : ticketNumbers(amounts, [...roles]);
};

const weightSlots = ({ serial, grossLb, tareLb, netLb }: TicketNumbers): Slot[] => [
  ...(serial === null ? [] : [{ slot: 'ticket' as const, serial, said: serial }]),
  ...(
    [
      ['gross', grossLb],
      ['tare', tareLb],
      ['net', netLb],
    ] as const
  ).flatMap(([role, lb]) =>
    lb === null ? [] : [{ slot: 'weight' as const, role, lb, tons: false, said: String(lb) }],
  ),
];

/** The numbers of the ticket in the place of whatever they were read as. */
export const withTicket = (clauses: readonly Element[][], numbers: TicketNumbers | null): Element[][] => {
  if (numbers === null) return clauses.map((clause) => [...clause]);
  const isUsed = ({ start, end }: Element): boolean =>
    numbers.used.some((amount) => amount.start < end && start < amount.end);
  const slots = weightSlots(numbers);
  /** The word "ticket" beside the serial that is read. */
  const isItsName = (element: Element): boolean =>
    numbers.serial !== null &&
    element.is === 'slot' &&
    element.slot.slot === 'ticket' &&
    element.slot.serial === null;
  const first = numbers.used[0];
  return clauses.map((clause) => {
    const isHere =
      first !== undefined && clause.some(({ start, end }) => first.start < end && start < first.end);
    const rest = clause.filter((element) => !isUsed(element) && !isItsName(element));
    const { start, end } = first ?? { start: 0, end: 0 };
    return isHere ? [...rest, ...slots.map((slot): Element => ({ is: 'slot', slot, start, end }))] : rest;
  });
};
