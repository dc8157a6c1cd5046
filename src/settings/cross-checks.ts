import { z } from 'zod';
import type { Fault } from './faults.ts';
import { called, idOf, slug, type NamedEntry } from './names.ts';
import { grossWeight, tareRange, text } from './values.ts';

// Entries are checked against each other on an outline of the file: names and references, without the faulty ones. So the
// checks also run on a file with other faults, and all faults are reported at once.
const loose = <T extends z.ZodType>(value: T) => value.optional().catch(undefined);
const naming = { id: loose(text), name: loose(text), aliases: loose(z.array(text)) };
const list = <S extends z.ZodRawShape>(shape: S) => z.array(z.looseObject({ ...naming, ...shape })).catch([]);

const outlineSchema = z.object({
  ...naming,
  people: list({
    role: loose(z.union([text, z.array(text)])),
    truck: loose(text),
    addresses: loose(z.record(text, text)),
  }),
  trucks: list({ 'gross-limit': loose(grossWeight), 'usual-tare': loose(tareRange) }),
  fields: list({ station: loose(text) }),
  stations: list({}),
  rooms: list({ platform: loose(text), room: loose(text) }),
});
type Outline = z.output<typeof outlineSchema>;

const LISTS = ['people', 'trucks', 'fields', 'stations', 'rooms'] as const;

/** Finds values that several entries have; each place after the first is a fault. */
const repeated = (
  values: readonly { key: string; path: Fault['path']; entry: number }[],
  says: (key: string) => string,
): Fault[] => {
  const first = new Map<string, number>();
  const faults = new Map<string, Fault>();
  for (const { key, path, entry } of values) {
    const owner = first.get(key) ?? entry;
    first.set(key, owner);
    // A name and the id made from it are one fault, not two.
    if (owner !== entry) faults.set(path.join('/'), { path, says: says(key) });
  }
  return [...faults.values()];
};

const names = (entry: NamedEntry): { key: string; at: (string | number)[] }[] =>
  [
    { key: idOf(entry), at: [entry.id === undefined ? 'name' : 'id'] },
    { key: entry.name ?? '', at: ['name'] },
    ...(entry.aliases ?? []).map((alias, i) => ({ key: alias, at: ['aliases', i] })),
  ]
    .map(({ key, at }) => ({ key: key.toLowerCase(), at }))
    .filter(({ key }) => key !== '');

/** A word that could mean two entries of a list would make the crew's messages ambiguous. */
const nameClashes = (outline: Outline): Fault[] =>
  LISTS.flatMap((section) =>
    repeated(
      outline[section].flatMap((one, entry) =>
        names(one).map(({ key, at }) => ({ key, path: [section, entry, ...at], entry })),
      ),
      (key) => `"${key}" means another entry of ${section} already: give each its own names and aliases`,
    ),
  );

const namelessIds = (outline: Outline): Fault[] =>
  LISTS.flatMap((section) =>
    outline[section].flatMap((one, i) =>
      one.id === undefined && one.name !== undefined && slug(one.name) === ''
        ? [
            {
              path: [section, i, 'name'],
              says: 'has no letter a-z or digit: add a line "id:" with a short name',
            },
          ]
        : [],
    ),
  );

const sharedAddresses = (outline: Outline): Fault[] =>
  repeated(
    outline.people.flatMap(({ addresses }, entry) =>
      Object.entries(addresses ?? {}).map(([platform, user]) => ({
        key: `${platform} ${user}`,
        path: ['people', entry, 'addresses', platform],
        entry,
      })),
    ),
    () => 'is the address of another person too: give each person their own',
  );

const sharedRooms = (outline: Outline): Fault[] =>
  repeated(
    outline.rooms.map(({ id, platform, room }, entry) => ({
      key: `${platform ?? ''} ${room ?? id ?? ''}`,
      path: ['rooms', entry, room === undefined ? 'id' : 'room'],
      entry,
    })),
    () => 'is listed already: remove one of the two',
  );

const unknownName = (
  path: Fault['path'],
  said: string | undefined,
  entries: readonly NamedEntry[],
  section: string,
) => {
  if (said === undefined || called(entries, said) !== undefined) return [];
  const known = entries.map((entry) => entry.name ?? idOf(entry)).join(', ');
  return [{ path, says: `"${said}" is not under ${section} (${known}): correct it, or add it there` }];
};

const references = ({ people, trucks, fields, stations }: Outline): Fault[] => [
  ...people.flatMap(({ truck }, i) => unknownName(['people', i, 'truck'], truck, trucks, 'trucks')),
  ...fields.flatMap(({ station }, i) => unknownName(['fields', i, 'station'], station, stations, 'stations')),
  ...fields.flatMap(({ station }, i) =>
    station === undefined && stations.length > 1
      ? [{ path: ['fields', i], says: 'has no station, and there are several: add a line "station:"' }]
      : [],
  ),
];

const managers = ({ people }: Outline): Fault[] =>
  people.length === 0 ||
  people.some(({ role }) => [role].flat().some((r) => r === 'grower' || r === 'foreman'))
    ? []
    : [{ path: ['people'], says: 'has no grower and no foreman, so nobody could stop the dig: add one' }];

const weights = ({ trucks }: Outline): Fault[] =>
  trucks.flatMap(({ 'gross-limit': gross, 'usual-tare': tare }, i) =>
    gross !== undefined && tare !== undefined && tare.max >= gross
      ? [{ path: ['trucks', i, 'usual-tare'], says: 'is not below the gross limit: correct one of the two' }]
      : [],
  );

/** Faults between the entries of a file that was read from YAML. */
export const crossChecks = (file: unknown): Fault[] => {
  const outline = outlineSchema.safeParse(file);
  if (!outline.success) return [];
  const checks = [nameClashes, namelessIds, sharedAddresses, sharedRooms, references, managers, weights];
  return checks.flatMap((check) => check(outline.data));
};
