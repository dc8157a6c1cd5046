/** Days at the scale line as a crew tells them: trips of five trucks, one after another, with serials and waits. */
import type { Fact } from '../../src/core/book/facts.ts';
import { at, step, ticket } from './given.ts';

const FIRST_TRIP_MIN = 30;
const TRIPS_EVERY_MIN = 35;

/** Waits of a usual day: a wave at the start of the shift, and another after noon. */
const waitMin = (day: number, trip: number): number =>
  8 + ((7 * day + 11 * trip) % 9) + (trip % 6 < 3 ? 14 : 0);

/** Trip number `trip` of October `date`: loaded, in line, weighed twice, all told at once. */
const tripFacts = (date: number, trip: number): Fact[] => {
  const truck = String((trip % 5) + 1);
  const dawnMs = at(`2026-10-${String(date).padStart(2, '0')} 07:00`);
  const told = (afterMin: number) => {
    const atMs = dawnMs + (FIRST_TRIP_MIN + TRIPS_EVERY_MIN * trip + afterMin) * 60_000;
    return { atMs, sentMs: atMs, heardMs: atMs, cause: `season:${date}:${trip}:${afterMin}` };
  };
  const wait = waitMin(date, trip);
  const serial = String(40_000 + 300 * date + 14 * trip + Math.round(wait / 3));
  const left = step(truck, 'left-field', '07:00', { header: told(0) });
  const joined = step(truck, 'joined-line', '07:00', { header: told(20) });
  const weighed = step(truck, 'first-weighed', '07:00', { header: told(20 + wait) });
  const booked = ticket(truck, '07:00', 50_000, { serial, header: told(32 + wait) });
  return [left, joined, weighed, booked];
};

/** From the first to the last of these days of October 2026. */
export const seasonFacts = (fromDate: number, toDate: number, tripsPerDay: number): Fact[] =>
  Array.from({ length: toDate - fromDate + 1 }, (_, day) => fromDate + day).flatMap((date) =>
    Array.from({ length: tripsPerDay }, (_, trip) => trip).flatMap((trip) => tripFacts(date, trip)),
  );
