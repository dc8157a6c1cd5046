import type { Fahrenheit, Lb } from './units.ts';

/** Names are short slugs: person `ana`, truck `3`, field `north-40`, station `north-station`. */
export type PersonId = string;
export type TruckId = string;
export type FieldId = string;
export type StationId = string;
export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];
export type CrewRole = 'grower' | 'foreman' | 'driver' | 'digger-operator' | 'topper-operator';

/** Where a person can be reached: the platform (`local`, `slack`, `matrix`) and the user id there. */
export interface Address {
  platform: string;
  user: string;
}

export interface CrewMember {
  id: PersonId;
  name: string;
  roles: readonly CrewRole[];
  language: Language;
  /** The truck that a message means when it names none. */
  truck: TruckId | null;
  addresses: readonly Address[];
  /** Other words the crew calls the person by. */
  aliases: readonly string[];
  /** The usual hours of work by the operation's clock, 0-24; 18 to 6 is a night. Null = by day, and as the person says. */
  shiftHours: readonly [fromHour: number, toHour: number] | null;
}

export interface Truck {
  id: TruckId;
  /** As shown: "Truck 3". */
  name: string;
  aliases: readonly string[];
  /** The gross limit set for this truck; null = no warning. */
  grossLimitLb: Lb | null;
  /** The usual range of its empty (second) weight; null = the trade's range. */
  usualTareLb: { min: Lb; max: Lb } | null;
}

export interface Field {
  id: FieldId;
  name: string;
  aliases: readonly string[];
  zone: string;
  acres: number | null;
  /** What the field is expected to bring, for what is left; null = not told. */
  yieldTonsPerAcre: number | null;
  /** The station its loads go to. */
  station: StationId;
}

export interface Station {
  id: StationId;
  name: string;
  aliases: readonly string[];
  zone: string;
  /** Air temperature above which beets may not be piled. Set by the station; never a constant of the trade. */
  airLimitF: Fahrenheit;
  /** Root temperature above which the station refuses loads. */
  rootLimitF: Fahrenheit;
  /** For forecast services; null = forecasts come from a file or from replay. */
  location: { latitude: number; longitude: number } | null;
  pilers: number;
}

/** A shared room of the crew, on some platform. */
export interface Room {
  /** Our name for it, `crew`. */
  id: string;
  platform: string;
  /** The platform's name for it. */
  room: string;
}

/** The digger as it works, for acres an hour. */
export interface Digger {
  rows: number;
  rowSpacingIn: number;
  speedMph: number;
  /** Share of the time that it really digs, 0-1. */
  efficiency: number;
}

export interface Limits {
  /** Tell grower and foreman when the forecast wait passes this; null = don't. */
  lineLimitMin: number | null;
  /** Fastest believable round trip: two "loaded" closer than this are the same load said twice. */
  shortestCycleMin: number;
}

/** Who and what the operation has: the operation file, changed by what was said in chat since. */
export interface Roster {
  operation: string;
  name: string;
  /** Zone of the operation's day. */
  zone: string;
  units: 'short-tons' | 'metric';
  people: readonly CrewMember[];
  trucks: readonly Truck[];
  fields: readonly Field[];
  stations: readonly Station[];
  rooms: readonly Room[];
  limits: Limits;
  digger: Digger | null;
  /** Hours of wall time at a station within which the crew digs: their start and their end, 0-24. Warmth beyond stops nothing. */
  workHours: readonly [fromHour: number, toHour: number];
  /** Who gets the outlook of the evening and the plan of the morning. `crew`: the managers and the crew's rooms. */
  outlookTo: 'managers' | 'crew' | 'nobody';
  /** Stations whose ticket times and serials are shared with other operations of this installation, and under what name. */
  pools: Readonly<Record<StationId, string>>;
}

/** A change of the lists. An entry with a known id replaces the old one. */
export type ListChange =
  | { list: 'people'; put: CrewMember }
  | { list: 'trucks'; put: Truck }
  | { list: 'fields'; put: Field }
  | { list: 'stations'; put: Station }
  | { list: 'limits'; put: Limits }
  | { list: 'rooms'; put: Room }
  | { list: 'people' | 'trucks' | 'fields' | 'stations'; remove: string }
  | { list: 'rooms'; remove: string };

const replaced = <T extends { id: string }>(
  list: readonly T[],
  change: { put: T } | { remove: string },
): T[] =>
  'put' in change
    ? [...list.filter((entry) => entry.id !== change.put.id), change.put]
    : list.filter((entry) => entry.id !== change.remove);

/** A room that the operation file names too stays as the file has it: nobody should hear a notice twice there. */
const withRooms = (rooms: readonly Room[], change: { put: Room } | { remove: string }): readonly Room[] => {
  const isThere = (put: Room): boolean =>
    rooms.some(({ platform, room }) => platform === put.platform && room === put.room);
  return 'put' in change && isThere(change.put) ? rooms : replaced(rooms, change);
};

export const changeRoster = (roster: Roster, change: ListChange): Roster => {
  switch (change.list) {
    case 'people':
      return { ...roster, people: replaced(roster.people, change) };
    case 'trucks':
      return { ...roster, trucks: replaced(roster.trucks, change) };
    case 'fields':
      return { ...roster, fields: replaced(roster.fields, change) };
    case 'stations':
      return { ...roster, stations: replaced(roster.stations, change) };
    case 'rooms':
      return { ...roster, rooms: withRooms(roster.rooms, change) };
    case 'limits':
      return { ...roster, limits: change.put };
  }
};

/** On the local platform (terminal, replay) crew members go by their own ids, and rooms by ours. */
export const LOCAL = 'local';

/** The crew member who writes from there; undefined = a stranger. */
export const personAt = (roster: Roster, platform: string, user: string): CrewMember | undefined =>
  roster.people.find(
    (person) =>
      person.addresses.some((address) => address.platform === platform && address.user === user) ||
      (platform === LOCAL && person.id === user),
  );

/** Where a person can be reached over these platforms, in the person's own order; empty = nowhere. */
export const addressesOf = (person: CrewMember, platforms: readonly string[]): readonly Address[] => {
  const known = person.addresses.filter((address) => platforms.includes(address.platform));
  return known.length === 0 && platforms.includes(LOCAL) ? [{ platform: LOCAL, user: person.id }] : known;
};

/** The crew's room that the platform calls so; undefined = a room that is not the operation's. */
export const roomAt = (roster: Roster, platform: string, room: string): Room | undefined =>
  roster.rooms.find((known) =>
    platform === LOCAL ? known.id === room : known.platform === platform && known.room === room,
  );

export const personById = (roster: Roster, id: PersonId): CrewMember | undefined =>
  roster.people.find((p) => p.id === id);
export const truckById = (roster: Roster, id: TruckId): Truck | undefined =>
  roster.trucks.find((t) => t.id === id);
export const fieldById = (roster: Roster, id: FieldId): Field | undefined =>
  roster.fields.find((f) => f.id === id);
export const stationById = (roster: Roster, id: StationId): Station | undefined =>
  roster.stations.find((s) => s.id === id);

/** Spoken to those of whose language nothing is known. */
export const FIRST_LANGUAGE: Language = LANGUAGES[0];

/** The crew's languages, the one of most people first. */
export const crewLanguages = ({ people }: Roster): readonly [Language, ...Language[]] => {
  const speakers = (language: Language): number => people.filter((one) => one.language === language).length;
  const [first = FIRST_LANGUAGE, ...others] = LANGUAGES.filter((language) => speakers(language) > 0).sort(
    (a, b) => speakers(b) - speakers(a),
  );
  return [first, ...others];
};

/** Foreman and grower may stop or resume the dig, correct others' entries and change the lists; nobody else may. */
export const mayManage = (person: CrewMember): boolean =>
  person.roles.includes('grower') || person.roles.includes('foreman');

/** The ones who must hear of trouble: foreman and grower. */
export const managers = (roster: Roster): CrewMember[] => roster.people.filter(mayManage);
