/** Who carries a stop out: only they are asked to confirm it, and their phones ring. */
import type { CrewMember, CrewRole } from '../roster.ts';
import { ACTING_ROLES } from './assumptions.ts';
import { isOffShift } from './shifts.ts';
import type { Moment } from './shifts.ts';

const is = (person: CrewMember, ...roles: readonly CrewRole[]): boolean =>
  person.roles.some((role) => roles.includes(role));

export const onShift = (moment: Moment): CrewMember[] =>
  moment.harvest.roster.people.filter((person) => !isOffShift(moment, person));

/** The foremen on shift; without one the growers take their place. */
export const foremenOn = (moment: Moment): CrewMember[] => {
  const foremen = onShift(moment).filter((person) => is(person, 'foreman'));
  return foremen.length > 0 ? foremen : moment.harvest.roster.people.filter((person) => is(person, 'grower'));
};

/**
 * Those on shift who must act. Where none of them runs topper or digger by the list, everybody on shift: one of them
 * drives the machines, and nobody knows which.
 */
export const actingOn = (moment: Moment): CrewMember[] => {
  const present = onShift(moment);
  if (!present.some((person) => is(person, 'digger-operator', 'topper-operator'))) return present;
  const foremen = foremenOn(moment);
  return present.filter((person) => is(person, ...ACTING_ROLES) || foremen.includes(person));
};
