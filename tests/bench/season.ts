/** Days of five trucks and 60 loads as the bench has them, one message every three minutes. */
import type { Fact } from '../../src/core/book/facts.ts';
import type { Heard } from '../../src/ports/chat.ts';
import type { Bot } from '../../src/run/host/bot.ts';
import { hear } from '../../src/run/in/hear.ts';

export const MINUTE_MS = 60_000;
export const DAY_MS = 1_440 * MINUTE_MS;
export const MESSAGES_A_DAY = 300;
const EVERY_MIN = 3;

/** The drivers' round trips in turn: field, loaded, line, dumped, ticket. */
const TRUCKS = [
  ['ana', '1'],
  ['ben', '2'],
  ['carla', '3'],
  ['dale', '4'],
  ['eli', '5'],
] as const;

const wordsOf = (stage: number, load: number): string =>
  [
    'at the field',
    'loaded',
    'in line, 9 ahead',
    'dumped',
    `ticket ${50_000 + load} gross ${79_000 + (load % 50) * 20} tare 29320`,
  ][stage] ?? '';

/** A message of the local crew; null = to the bot alone. */
export const heardFrom = (
  user: string,
  room: string | null,
  id: string,
  text: string,
  atMs: number,
): Heard => ({
  platform: 'local',
  id,
  user,
  userName: null,
  room,
  sentMs: atMs,
  heardMs: atMs,
  event: { is: 'message', text, addressed: false, repliesTo: null },
});

/** `step` counts the messages of the day. */
export const messageOf = (step: number, dayStartMs: number): Heard => {
  const [user] = TRUCKS[step % TRUCKS.length] ?? TRUCKS[0];
  const round = Math.floor(step / TRUCKS.length);
  const load = Math.floor(round / 5) * TRUCKS.length + (step % TRUCKS.length);
  const text = wordsOf(round % 5, load + Math.floor(dayStartMs / DAY_MS) * 1_000);
  return heardFrom(user, 'crew', `m${dayStartMs}-${step}`, text, dayStartMs + step * EVERY_MIN * MINUTE_MS);
};

/** The same day again, so many days earlier. */
const earlier = (fact: Fact, daysBefore: number): Fact => {
  const shiftMs = daysBefore * DAY_MS;
  const cause = `${fact.cause}-${daysBefore}`;
  const times = {
    atMs: fact.atMs - shiftMs,
    sentMs: fact.sentMs - shiftMs,
    heardMs: fact.heardMs - shiftMs,
  };
  const moved = { ...fact, ...times, cause, id: `${fact.id}-${daysBefore}` };
  if (moved.kind !== 'ticket-booked') return moved;
  const serial = `${moved.ticket.serial ?? ''}${daysBefore}`;
  return { ...moved, ticket: { ...moved.ticket, serial } };
};

/** Hears the day that begins at `startMs`, with an undo at its end where wanted, and writes it for the days before as well. */
export const writeSeason = async (
  bot: Bot,
  startMs: number,
  days: number,
  undoes: boolean,
): Promise<readonly Fact[]> => {
  const { book, roster } = bot;
  for (let step = 0; step < MESSAGES_A_DAY; step += 1) await hear(bot, messageOf(step, startMs));
  const endMs = startMs + MESSAGES_A_DAY * EVERY_MIN * MINUTE_MS;
  if (undoes) await hear(bot, heardFrom('eli', 'crew', `undo-${startMs}`, 'undo', endMs));
  const rows = await book.inOneGo(roster.operation, (page) => page.factsAfter(0));
  const day = rows.map(({ fact }) => fact);
  for (let before = days - 1; before > 0; before -= 1)
    await book.inOneGo(roster.operation, (page) => page.write(day.map((fact) => earlier(fact, before))));
  return day;
};
