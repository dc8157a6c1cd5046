/** What stands around one line: the lists of the invented farm, the sender, the clock, and what others filled in. */
import type { CrewMember, FieldId, PersonId, Roster, TruckId } from '../../../src/core/roster.ts';
import type { EpochMs, Lb } from '../../../src/core/units.ts';
import { at } from '../../support/given.ts';
import { sampleRoster } from '../../support/roster.ts';
import type { Line } from '../training/corpus.ts';
import { TRUCKS, peopleFor, senderOf, truckIn } from './crew.ts';
import type { Crew } from './crew.ts';

export interface Scene {
  line: Line;
  crew: Crew;
  roster: Roster;
  sender: CrewMember;
  nowMs: EpochMs;
  ownTruck: TruckId | null;
  /** The field that is dug and that loads are from: one that the line does not speak of, so that none is right by luck. */
  dugField: FieldId;
  /** The first weight of the load under way. */
  grossLb: Lb;
}

const FIELDS = [
  { id: 'river', name: 'River', aliases: ['el rio'] },
  { id: 'north-40', name: 'North 40', aliases: ['norte 40', 'n40'] },
  { id: 'schoolhouse', name: 'Schoolhouse', aliases: ['la escuelita'] },
];

/** The field that a label names. */
export const fieldIn = (said: unknown): FieldId | null =>
  typeof said === 'string' ? said.toLowerCase().replaceAll(' ', '-') : null;

export const STATION = 'cedar';

const GROSS_LB: Lb = 79_460;

const operationOf = (line: Line, crew: Crew, operation: string): Roster => ({
  ...sampleRoster,
  operation,
  people: peopleFor(line, crew),
  trucks: TRUCKS.map((id) => ({
    id,
    name: `Truck ${id}`,
    aliases: [],
    grossLimitLb: null,
    usualTareLb: null,
  })),
  fields: FIELDS.map((field) => ({
    ...field,
    zone: sampleRoster.zone,
    acres: 120,
    yieldTonsPerAcre: 30,
    station: STATION,
  })),
  stations: sampleRoster.stations.map((station) => ({ ...station, id: STATION, name: 'Cedar' })),
});

const IN_TEXT: Record<FieldId, RegExp> = {
  river: /river|rvr|\br[ií]o\b/i,
  'north-40': /north|norte|n ?40|forty|cuarenta/i,
  schoolhouse: /school|skl|escuel/i,
};

const fieldApart = ({ text, acts, also }: Line): FieldId => {
  const labelled = [acts, ...also].flat().map((act) => fieldIn(act['field']));
  const apart = FIELDS.map(({ id }) => id).filter((id) => !labelled.includes(id));
  return apart.find((id) => IN_TEXT[id]?.test(text) !== true) ?? apart[0] ?? 'river';
};

const memberWith = (roster: Roster, id: PersonId): CrewMember => {
  const found = roster.people.find((person) => person.id === id);
  if (!found) throw new Error(`${id} is not on the list`);
  return found;
};

export const sceneOf = (line: Line, crew: Crew, operation: string): Scene => {
  const roster = operationOf(line, crew, operation);
  return {
    line,
    crew,
    roster,
    sender: memberWith(roster, senderOf(line)),
    nowMs: at(line.now),
    ownTruck: truckIn(line.truck),
    dugField: fieldApart(line),
    grossLb: GROSS_LB,
  };
};
