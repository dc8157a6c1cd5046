/** The entries of the operation's lists, in words. */
import type { CrewMember, Field, Roster, Station, Truck } from '../../core/roster.ts';
import { number, phrase, temperature, truckName, weight } from '../voice.ts';
import type { Voice } from '../voice.ts';

export const personEntry = (entry: CrewMember, voice: Voice): string =>
  phrase(voice, 'list.person', {
    name: entry.name,
    roles: entry.roles.map((role) => phrase(voice, `role.${role}`)).join(', '),
    truck: entry.truck === null ? '' : phrase(voice, 'list.person-truck', { truck: entry.truck }),
  });

export const truckEntry = (entry: Truck, voice: Voice): string =>
  entry.grossLimitLb === null
    ? truckName(voice, entry.id)
    : phrase(voice, 'list.truck-limit', {
        name: truckName(voice, entry.id),
        limit: weight(voice, entry.grossLimitLb),
      });

export const fieldEntry = (entry: Field, voice: Voice): string =>
  entry.acres === null
    ? entry.name
    : phrase(voice, 'list.field-acres', { name: entry.name, acres: number(voice, entry.acres) });

export const stationEntry = (entry: Station, voice: Voice): string =>
  phrase(voice, 'list.station', {
    name: entry.name,
    air: temperature(voice, entry.airLimitF),
    root: temperature(voice, entry.rootLimitF),
  });

export const limitsEntry = (roster: Roster, voice: Voice): string => {
  const { lineLimitMin } = roster.limits;
  const line =
    lineLimitMin === null
      ? phrase(voice, 'list.no-limit')
      : phrase(voice, 'list.line-limit', { min: lineLimitMin });
  return phrase(voice, 'list.limits', { line });
};
