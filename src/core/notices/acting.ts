/** Who carries a stop out: only they are asked to confirm it, and their phones ring. */
import type { Harvest } from '../harvest/harvest.ts';
import type { CrewMember, CrewRole } from '../roster.ts';
import type { EpochMs } from '../units.ts';
import { ACTING_ROLES } from './assumptions.ts';
import { isOffShift } from './shifts.ts';

const is = (person: CrewMember, ...roles: readonly CrewRole[]): boolean =>
  person.roles.some((role) => roles.includes(role));

export const onShift = (harvest: Harvest, nowMs: EpochMs): CrewMember[] =>
  harvest.roster.people.filter(({ id }) => !isOffShift(harvest, id, nowMs));

/** The foremen on shift; without one the growers take their place. */
export const foremenOn = (harvest: Harvest, nowMs: EpochMs): CrewMember[] => {
  const foremen = onShift(harvest, nowMs).filter((person) => is(person, 'foreman'));
  return foremen.length > 0 ? foremen : harvest.roster.people.filter((person) => is(person, 'grower'));
};

/**
 * Those on shift who must act. Where none of them runs topper or digger by the list, everybody on shift: one of them
 * drives the machines, and nobody knows which.
 */
export const actingOn = (harvest: Harvest, nowMs: EpochMs): CrewMember[] => {
  const present = onShift(harvest, nowMs);
  if (!present.some((person) => is(person, 'digger-operator', 'topper-operator'))) return present;
  const foremen = foremenOn(harvest, nowMs);
  return present.filter((person) => is(person, ...ACTING_ROLES) || foremen.includes(person));
};
