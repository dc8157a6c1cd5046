/** The people of the scene, and the names that a writer gives them. */
import type { CrewMember, CrewRole, Language, PersonId, TruckId } from '../../../src/core/roster.ts';
import type { Line } from '../training/corpus.ts';

export const TRUCKS: readonly TruckId[] = ['1', '2', '3', '4', '5'];

const ROLES: Record<string, CrewRole> = {
  grower: 'grower',
  foreman: 'foreman',
  driver: 'driver',
  digger: 'digger-operator',
  topper: 'topper-operator',
};

/** Invented names that no writer uses, so that nobody is called by them by chance. */
const PEOPLE = [
  ['ottilie', 'grower', null],
  ['zebulon', 'foreman', null],
  ['ysolde', 'driver', '1'],
  ['quentin', 'driver', '2'],
  ['xander', 'driver', '3'],
  ['ulrich', 'driver', '4'],
  ['ignatz', 'driver', '5'],
  ['leopold', 'driver', null],
  ['baldur', 'digger', null],
  ['evander', 'topper', null],
] as const;

export const truckIn = (said: unknown): TruckId | null =>
  typeof said === 'number' || typeof said === 'string' ? String(said) : null;

/** Foremen and growers drive too at times; they stay who they are. */
export const senderOf = ({ role, truck }: Pick<Line, 'role' | 'truck'>): PersonId => {
  const own = role === 'driver' ? truckIn(truck) : null;
  const found = PEOPLE.find(([, theirs, drives]) => theirs === role && drives === own);
  if (!found) throw new Error(`Nobody in the scene is ${role} of truck ${String(truck)}`);
  return found[0];
};

/** What the writer calls the crew: names by person. */
export type Crew = ReadonlyMap<PersonId, readonly string[]>;

export const folded = (name: string): string => name.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** They stand for machines or for everybody. */
const NOBODY = /^(digger|topper|all)$/;
/** Who gets hurt need not be of the crew. */
const STRANGERS_IN = new Set(['danger']);

interface Named {
  name: string;
  truck: TruckId | null;
}

const namedIn = ({ acts, also }: Line): Named[] =>
  [acts, ...also].flat().flatMap(({ act, person, truck }) => {
    const isCrew = typeof person === 'string' && !NOBODY.test(person) && !STRANGERS_IN.has(act);
    return isCrew ? [{ name: person, truck: act === 'take_truck' ? null : truckIn(truck) }] : [];
  });

/**
 * Everybody whom a file names: senders as who they are (in a log by `from`, else who takes a truck and has none), others
 * on the truck that is theirs, the rest in turn.
 */
export const crewOf = (lines: readonly Line[]): Crew => {
  const known = new Map<string, { person: PersonId; name: string }>();
  const add = (name: string, person: PersonId): void => {
    if (!known.has(folded(name))) known.set(folded(name), { person, name });
  };
  for (const line of lines) if (line.from !== undefined) add(line.from, senderOf(line));
  for (const { role, truck, acts } of lines)
    for (const { act, person } of acts)
      if (act === 'take_truck' && truck == null && role === 'driver' && typeof person === 'string')
        add(person, senderOf({ role, truck }));
  const named = lines.flatMap(namedIn);
  for (const { name, truck } of named) if (truck !== null) add(name, senderOf({ role: 'driver', truck }));
  for (const { name } of named)
    add(name, senderOf({ role: 'driver', truck: TRUCKS[known.size % TRUCKS.length] }));
  const crew = new Map<PersonId, string[]>();
  for (const { person, name } of known.values()) crew.set(person, [...(crew.get(person) ?? []), name]);
  return crew;
};

export const personCalled = (crew: Crew, name: string): PersonId | null =>
  [...crew].find(([, names]) => names.some((known) => folded(known) === folded(name)))?.[0] ?? null;

export const truckOfPerson = (person: PersonId): TruckId | null =>
  PEOPLE.find(([id]) => id === person)?.[2] ?? null;

/** The crew as the sender of that line belongs to it. */
export const peopleFor = ({ role, truck, lang }: Line, crew: Crew): CrewMember[] => {
  const sender = senderOf({ role, truck });
  return PEOPLE.map(([id, theirs, drives]) => {
    const language: Language = id === sender && lang !== 'en' ? 'es' : 'en';
    return {
      id,
      name: id.charAt(0).toUpperCase() + id.slice(1),
      roles: [ROLES[theirs] ?? 'driver'],
      language,
      truck: id === sender ? truckIn(truck) : drives,
      addresses: [{ platform: 'local', user: id }],
      aliases: crew.get(id) ?? [],
      shiftHours: null,
    };
  });
};
