/** What the bot said, as a person would read it aloud: when, to whom, and the first line in English or Spanish. */
import { personById } from '../../src/core/roster.ts';
import type { Roster } from '../../src/core/roster.ts';
import type { Claimed } from '../../src/ports/outbox.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';

const two = (n: number): string => String(n).padStart(2, '0');

const clockOf = (roster: Roster, atMs: number): string => {
  const { hour, minute } = zoneClock.wall(roster.zone, atMs);
  return `${two(hour)}:${two(minute)}`;
};

const nameOf = (roster: Roster, { recipient }: Claimed): string =>
  'room' in recipient ? 'room' : (personById(roster, recipient.person)?.name ?? recipient.person);

const line = (roster: Roster, message: Claimed, to: string): string => {
  const { notBeforeMs, said } = message;
  return `${clockOf(roster, notBeforeMs)} ${to}${said.ring ? ' (rings)' : ''}: ${said.text.split('\n')[0] ?? ''}`;
};

/** Notices in the room, where all are told the same; the rest as it was said to each. */
export const transcript = (roster: Roster, delivered: readonly Claimed[]): string[] =>
  delivered
    .filter(({ kind, recipient }) => kind !== 'notice' || 'room' in recipient)
    .map((message) => line(roster, message, nameOf(roster, message)));

/** Only what tells of stops: notices and who has not confirmed them. */
export const ofStops = (delivered: readonly Claimed[]): Claimed[] =>
  delivered.filter(({ kind }) => kind === 'notice' || kind === 'unseen');
