import type { Audience, Tell, Telling } from '../telling.ts';
import { managers } from '../roster.ts';
import type { Roster } from '../roster.ts';

export const roomsOf = ({ rooms }: Roster): Audience[] =>
  rooms.map((room): Audience => ({ to: 'room', room: room.id }));

export const managersOf = (roster: Roster): Audience[] =>
  managers(roster).map((person): Audience => ({ to: 'person', person: person.id }));

export const tellAll = (
  audiences: readonly Audience[],
  telling: Telling,
  key: string,
  urgent: boolean,
): Tell[] => audiences.map((audience) => ({ audience, telling, urgent, key }));
