/** What the crew's words say of a receiving station now: closed, all pilers down, loads turned away. */
import type { FactOf } from '../book/facts.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { stationById } from '../roster.ts';
import type { StationId } from '../roster.ts';
import { addMinutes, minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { TURNED_AWAY_HOLDS_MIN } from './assumptions.ts';

export type StationFact = FactOf<'station-reported' | 'pilers-seen' | 'loads-turned-away'>;

/** Why no load comes in. Words count from `sinceMs` on, the start of the day; "closed till 6" counts till then. */
export interface StationAsk {
  station: StationId;
  sinceMs: EpochMs;
  nowMs: EpochMs;
}

export type StationTrouble =
  /** `leastMin`: until it opens, from when a truck gets there; null = nobody has said when it opens. */
  | { trouble: 'closed'; sinceMs: EpochMs; untilMs: EpochMs | null; leastMin: Minutes | null }
  | { trouble: 'all-down'; sinceMs: EpochMs }
  | { trouble: 'turned-away'; sinceMs: EpochMs; words: string | null };

/** Pilers that run, of those that the station has. */
export const pilersRunning = (
  { open, down }: Pick<FactOf<'pilers-seen'>, 'open' | 'down'>,
  pilers: number,
): number => Math.max(0, open ?? pilers - (down ?? 0));

export const pilersOf = ({ roster }: Harvest, station: StationId): number =>
  stationById(roster, station)?.pilers ?? 1;

const newest = <F extends StationFact>(facts: readonly F[], { station, nowMs }: StationAsk): F | undefined =>
  facts.findLast((fact) => fact.station === station && fact.atMs <= nowMs);

/** The word by which the station is closed to a truck that gets there at `arriveMs`; null = it is open. */
export const closingAt = (
  { stationReports }: Harvest,
  ask: StationAsk,
  arriveMs: EpochMs,
): FactOf<'station-reported'> | null => {
  const word = newest(stationReports, ask);
  if (!word || word.open) return null;
  const holds = word.untilMs === null ? word.atMs >= ask.sinceMs : arriveMs < word.untilMs;
  return holds ? word : null;
};

const allDown = (harvest: Harvest, ask: StationAsk): StationTrouble | null => {
  const word = newest(harvest.pilerReports, ask);
  if (!word || word.atMs < ask.sinceMs) return null;
  const isDown = pilersRunning(word, pilersOf(harvest, ask.station)) === 0;
  return isDown ? { trouble: 'all-down', sinceMs: word.atMs } : null;
};

/** Until loads are taken again: a ticket, the word that it is open, or nothing more heard for a while. */
const turnedAway = ({ turnedAway: words, tickets, stationReports }: Harvest, ask: StationAsk) => {
  const word = newest(words, ask);
  if (!word || addMinutes(word.atMs, TURNED_AWAY_HOLDS_MIN) < ask.nowMs) return null;
  const isAfter = (fact: { station: StationId; atMs: EpochMs }): boolean =>
    fact.station === ask.station && fact.atMs > word.atMs && fact.atMs <= ask.nowMs;
  const isOver = tickets.some(isAfter) || stationReports.some((report) => report.open && isAfter(report));
  return isOver ? null : ({ trouble: 'turned-away', sinceMs: word.atMs, words: word.words } as const);
};

/** What keeps a truck waiting that gets to the station at `arriveMs`, by what is known now; null = nothing. */
export const troubleAt = (harvest: Harvest, ask: StationAsk, arriveMs: EpochMs): StationTrouble | null => {
  const closing = closingAt(harvest, ask, arriveMs);
  if (closing === null) return allDown(harvest, ask) ?? turnedAway(harvest, ask);
  const { atMs, untilMs } = closing;
  const leastMin = untilMs === null ? null : minutesBetween(arriveMs, untilMs);
  return { trouble: 'closed', sinceMs: atMs, untilMs, leastMin };
};
