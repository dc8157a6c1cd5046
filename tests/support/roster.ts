import type { CrewMember, Field, Language, CrewRole, Roster, TruckId } from '../../src/core/roster.ts';

const ZONE = 'America/Boise';

const member = (
  name: string,
  roles: readonly CrewRole[],
  language: Language,
  truck: TruckId | null,
): CrewMember => ({
  id: name.toLowerCase(),
  name,
  roles,
  language,
  truck,
  addresses: [{ platform: 'local', user: name.toLowerCase() }],
  aliases: [],
  shiftHours: null,
});

const field = (id: string, name: string, acres: number | null, aliases: readonly string[]): Field => ({
  id,
  name,
  aliases,
  zone: ZONE,
  acres,
  yieldTonsPerAcre: null,
  station: 'north-station',
});

/** An invented operation: five trucks, three fields, one station, one room. */
export const sampleRoster: Roster = {
  operation: 'sample',
  name: 'Sample farm',
  zone: ZONE,
  units: 'short-tons',
  people: [
    member('Ruth', ['grower'], 'en', null),
    member('Mateo', ['foreman'], 'es', null),
    member('Ana', ['driver'], 'es', '1'),
    member('Ben', ['driver'], 'en', '2'),
    member('Carla', ['driver'], 'es', '3'),
    member('Dale', ['driver'], 'en', '4'),
    member('Eli', ['driver'], 'en', '5'),
    member('Fritz', ['digger-operator'], 'en', null),
    member('Gus', ['topper-operator'], 'en', null),
  ],
  trucks: ['1', '2', '3', '4', '5'].map((id) => ({
    id,
    name: `Truck ${id}`,
    aliases: [],
    grossLimitLb: null,
    usualTareLb: null,
  })),
  fields: [
    field('north-40', 'North 40', 38, ['n40']),
    field('south-80', 'South 80', null, []),
    field('creek-bottom', 'Creek bottom', null, []),
  ],
  stations: [
    {
      id: 'north-station',
      name: 'North station',
      aliases: [],
      zone: ZONE,
      airLimitF: 60,
      rootLimitF: 55,
      location: null,
      pilers: 2,
    },
  ],
  rooms: [{ id: 'crew', platform: 'local', room: 'crew' }],
  limits: { lineLimitMin: null, shortestCycleMin: 15 },
  digger: null,
  workHours: [0, 24],
  outlookTo: 'nobody',
  pools: {},
};

/** Somebody of the list; fails where nobody has that name. */
export const memberOf = ({ people }: Roster, id: string): CrewMember => {
  const found = people.find((person) => person.id === id);
  if (!found) throw new Error(`${id} is not on the list`);
  return found;
};

/** The crew reads on Slack what it says in the terminal. */
export const rosterOnSlack: Roster = {
  ...sampleRoster,
  people: sampleRoster.people.map((person) => ({
    ...person,
    addresses: [{ platform: 'slack', user: person.id }],
  })),
  rooms: [{ id: 'crew', platform: 'slack', room: 'crew' }],
};
