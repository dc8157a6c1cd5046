import type { CrewMember, Field, ListChange, Roster, Station, Truck } from '../core/roster.ts';
import type { Telling } from '../core/telling.ts';
import { number, phrase, temperature, truckName, weight } from './voice.ts';
import type { Voice } from './voice.ts';

const person = (entry: CrewMember, voice: Voice): string =>
  phrase(voice, 'list.person', {
    name: entry.name,
    roles: entry.roles.map((role) => phrase(voice, `role.${role}`)).join(', '),
    truck: entry.truck === null ? '' : phrase(voice, 'list.person-truck', { truck: entry.truck }),
  });

const truck = (entry: Truck, voice: Voice): string =>
  entry.grossLimitLb === null
    ? truckName(voice, entry.id)
    : phrase(voice, 'list.truck-limit', {
        name: truckName(voice, entry.id),
        limit: weight(voice, entry.grossLimitLb),
      });

const field = (entry: Field, voice: Voice): string =>
  entry.acres === null
    ? entry.name
    : phrase(voice, 'list.field-acres', { name: entry.name, acres: number(entry.acres) });

const station = (entry: Station, voice: Voice): string =>
  phrase(voice, 'list.station', {
    name: entry.name,
    air: temperature(voice, entry.airLimitF),
    root: temperature(voice, entry.rootLimitF),
  });

const limits = (roster: Roster, voice: Voice): string => {
  const { lineLimitMin } = roster.limits;
  const line =
    lineLimitMin === null
      ? phrase(voice, 'list.no-limit')
      : phrase(voice, 'list.line-limit', { min: lineLimitMin });
  return phrase(voice, 'list.limits', { line });
};

export const listText = ({ list }: Extract<Telling, { tell: 'list' }>, voice: Voice): string => {
  const { roster } = voice;
  const joined = (names: readonly string[]): { names: string } => ({ names: names.join(', ') });
  switch (list) {
    case 'people':
      return phrase(voice, 'list.people', joined(roster.people.map((p) => person(p, voice))));
    case 'trucks':
      return phrase(voice, 'list.trucks', joined(roster.trucks.map((t) => truck(t, voice))));
    case 'fields':
      return phrase(voice, 'list.fields', joined(roster.fields.map((f) => field(f, voice))));
    case 'stations':
      return phrase(voice, 'list.stations', joined(roster.stations.map((s) => station(s, voice))));
    case 'limits':
      return limits(roster, voice);
  }
};

type Entered = Exclude<Extract<ListChange, { put: unknown }>, { list: 'rooms' }>;

const entryText = (change: Entered, voice: Voice): string => {
  switch (change.list) {
    case 'people':
      return person(change.put, voice);
    case 'trucks':
      return truck(change.put, voice);
    case 'fields':
      return field(change.put, voice);
    case 'stations':
      return station(change.put, voice);
    case 'limits':
      return limits(voice.roster, voice);
  }
};

export const changeText = (change: ListChange, voice: Voice): string => {
  if (change.list === 'rooms') return phrase(voice, 'put' in change ? 'room.used' : 'room.left');
  return 'remove' in change
    ? phrase(voice, 'list.removed', { name: change.remove })
    : phrase(voice, 'list.put', { entry: entryText(change, voice) });
};
