import { isOffShift } from './shifts.ts';
import type { Audience, Tell, Telling } from '../telling.ts';
import type { EpochMs } from '../units.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { managers } from '../roster.ts';
import type { Roster } from '../roster.ts';

/** The rooms, and everybody who is not off shift. */
export const crew = (harvest: Harvest, nowMs: EpochMs): Audience[] => [
  ...harvest.roster.rooms.map((room): Audience => ({ to: 'room', room: room.id })),
  ...harvest.roster.people
    .filter((person) => !isOffShift(harvest, person.id, nowMs))
    .map((person): Audience => ({ to: 'person', person: person.id })),
];

export const managersOf = (roster: Roster): Audience[] =>
  managers(roster).map((person): Audience => ({ to: 'person', person: person.id }));

export const tellAll = (
  audiences: readonly Audience[],
  telling: Telling,
  key: string,
  urgent: boolean,
): Tell[] => audiences.map((audience) => ({ audience, telling, urgent, key }));
