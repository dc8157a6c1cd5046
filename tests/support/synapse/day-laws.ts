/** What must hold at the end of a day, whatever was killed or cut in it. */
import { expect } from 'vitest';
import { waitFor } from '../wait-for.ts';
import type { Book, Day } from './harvest-day.ts';
import { DRIVERS, GROSS_LB, TARE_LB } from './harvest-day.ts';

const WITHIN_MS = 180_000;

export const HOLD = 'MUD HOLD';
export const CLEAR = 'ALL-CLEAR';

const KIND_OF: Record<string, string> = { ticket: 'ticket-booked', order: 'notice-raised' };

/** Each check-in became one fact of the right kind, each load of each driver one ticket, and nothing waits or was put aside. */
export const expectCountedOnce = ({ said }: Day, { heard, facts, outbox, unread }: Book): void => {
  const ids = said.map(({ id }) => id).toSorted();
  expect(heard.map(({ messageId }) => messageId).toSorted()).toEqual(ids);
  expect(heard.filter(({ parked }) => parked !== null)).toEqual([]);
  for (const { id, became } of said) {
    const own = facts.filter(({ cause }) => cause === `matrix:${id}`);
    const kinds = own.map((fact) => (fact.kind === 'truck-reported' ? fact.step : fact.kind));
    expect(kinds).toEqual(became === 'question' ? [] : [KIND_OF[became] ?? became]);
  }
  const tickets = facts.flatMap((fact) => (fact.kind === 'ticket-booked' ? [fact.ticket.netLb] : []));
  expect(tickets.every((netLb) => netLb === GROSS_LB - TARE_LB)).toBe(true);
  const last = said.filter((each) => each.last).map(({ id }) => `matrix:${id}`);
  expect(outbox.filter(({ outcome, cause }) => outcome !== 'sent' && !last.includes(cause))).toEqual([]);
  expect(unread).toEqual([]);
};

/** Every message of the bot stands once where it belongs, and everybody could read it. */
export const expectShownOnce = (
  { drivers, foreman, room }: Day,
  { outbox }: Book,
  encrypted: boolean,
): void => {
  for (const person of [foreman, ...drivers]) {
    expect(person.cannotRead()).toEqual([]);
    const ofBot = person.messages().filter(({ sender }) => sender.startsWith('@bell'));
    expect(ofBot.every((message) => message.encrypted === encrypted)).toBe(true);
    const shown = (isHere: (where: string) => boolean): string[] =>
      ofBot.filter((message) => isHere(message.room)).map(({ heard }) => heard);
    const expectOnly = (events: string[], to: { room: string } | { user: string }): void => {
      const rows = outbox.filter((row) => JSON.stringify(row.to) === JSON.stringify(to));
      expect(events).toHaveLength(rows.length);
      expect(events).toEqual(expect.arrayContaining(rows.flatMap(({ messageId }) => messageId ?? [])));
    };
    expectOnly(
      shown((where) => where === room),
      { room },
    );
    expectOnly(
      shown((where) => where !== room),
      { user: person.user },
    );
    // One room of the two, although the bot was killed about when it made it.
    expect(new Set(ofBot.map((message) => message.room)).size).toBe(2);
  }
};

/** So many stops were ordered and ended: each was told once in the room and once to each person alone. */
export const noticesShown = ({ drivers, foreman, room }: Day, words: string): number[] =>
  [foreman, ...drivers].flatMap((person) => {
    const told = person
      .messages()
      .filter(({ sender, text }) => sender.startsWith('@bell') && text.includes(words));
    const inRoom = told.filter((message) => message.room === room).length;
    return [inRoom, told.length - inRoom];
  });

const PEOPLE = DRIVERS.length + 1;
export const toEverybody = (count: number): number[] => Array.from({ length: 2 * PEOPLE }, () => count);

export const waitForNotices = (harvest: Day, words: string, count: number): Promise<true> =>
  waitFor(
    `${count} x ${words} for everybody, there are ${String(noticesShown(harvest, words))}`,
    () => noticesShown(harvest, words).every((shown) => shown >= count),
    WITHIN_MS,
  );
