import type { CrewMember, Field, Room, Roster, Station, Truck } from '../core/roster.ts';
import { truckLimitLb } from '../core/haul/bridge-formula.ts';
import { called, idOf, type NamedEntry } from './names.ts';
import type { OperationFile } from './operation-schema.ts';

type FileEntry<L extends 'people' | 'trucks' | 'fields' | 'stations' | 'rooms'> = OperationFile[L][number];

const idCalled = (entries: readonly NamedEntry[], said: string | null): string | null => {
  const entry = said === null ? undefined : called(entries, said);
  return entry === undefined ? null : idOf(entry);
};

const personOf =
  (file: OperationFile) =>
  (said: FileEntry<'people'>): CrewMember => ({
    id: idOf(said),
    name: said.name,
    roles: said.role,
    language: said.language,
    truck: idCalled(file.trucks, said.truck),
    addresses: Object.entries(said.addresses ?? { local: idOf(said) }).flatMap(([platform, user]) =>
      user === undefined ? [] : [{ platform, user }],
    ),
    aliases: said.aliases,
    shiftHours: said.shift,
  });

/** The limit that was set, else by the federal bridge formula if axles and wheelbase are given. */
const grossLimitLb = (said: FileEntry<'trucks'>): number | null => {
  if (said['gross-limit'] !== null) return said['gross-limit'];
  return said.axles === null || said.wheelbase === null ? null : truckLimitLb(said.axles, said.wheelbase);
};

const truckOf = (said: FileEntry<'trucks'>): Truck => ({
  id: said.id,
  name: said.name ?? `Truck ${said.id}`,
  aliases: said.aliases,
  grossLimitLb: grossLimitLb(said),
  usualTareLb: said['usual-tare'],
});

const fieldOf =
  (file: OperationFile) =>
  (said: FileEntry<'fields'>): Field => ({
    id: idOf(said),
    name: said.name,
    aliases: said.aliases,
    zone: said.zone ?? file.zone,
    acres: said.acres,
    yieldTonsPerAcre: said.yield,
    station: idCalled(file.stations, said.station) ?? file.stations.map(idOf)[0] ?? '',
  });

const stationOf =
  (file: OperationFile) =>
  (said: FileEntry<'stations'>): Station => ({
    id: idOf(said),
    name: said.name,
    aliases: said.aliases,
    zone: said.zone ?? file.zone,
    airLimitF: said['air-limit'],
    rootLimitF: said['root-limit'],
    location: said.location,
    pilers: said.pilers,
  });

const roomOf = (said: FileEntry<'rooms'>): Room => ({
  id: said.id,
  platform: said.platform,
  room: said.room ?? said.id,
});

/** The roster of a file without faults. */
export const rosterOf = (file: OperationFile): Roster => ({
  operation: idOf(file),
  name: file.name,
  zone: file.zone,
  units: file.units,
  people: file.people.map(personOf(file)),
  trucks: file.trucks.map(truckOf),
  fields: file.fields.map(fieldOf(file)),
  stations: file.stations.map(stationOf(file)),
  rooms: file.rooms.map(roomOf),
  limits: {
    lineLimitMin: file.limits['line-limit'],
    shortestCycleMin: file.limits['shortest-cycle'],
  },
  digger: file.digger && {
    rows: file.digger.rows,
    rowSpacingIn: file.digger['row-spacing'],
    speedMph: file.digger.speed,
    efficiency: file.digger.efficiency,
  },
  workHours: file['work-hours'],
  outlookTo: file['outlook-to'],
  pools: Object.fromEntries(
    file.stations.flatMap((said) => (said.pool === null ? [] : [[idOf(said), said.pool]])),
  ),
});
