import { CLOCKS_APART_MIN } from '../assumptions.ts';
import type { Fact, Happening } from '../book/facts.ts';
import { hasEnded } from '../haul/load.ts';
import type { Intent } from '../intent.ts';
import { fieldById } from '../roster.ts';
import type { CrewMember, FieldId, Roster, StationId, TruckId } from '../roster.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';
import type { Harvest } from '../harvest/harvest.ts';
import type { Refusal, Warning } from '../refusal.ts';

/** The message that is being taken in: who sent it, when, and where. */
export interface Speaking {
  speaker: CrewMember;
  cause: string;
  /** Where it was sent, by the platform's own names; `room` null = to the bot alone. */
  place: { platform: string; room: string | null };
  sentMs: EpochMs;
  heardMs: EpochMs;
  /** Number of facts from this message so far, for their ids. */
  factsSoFar: number;
}

export type Accepted =
  | { outcome: 'facts'; facts: readonly Fact[]; warnings: readonly Warning[] }
  | { outcome: 'refused'; refusal: Refusal };

export type IntentOf<D extends Intent['do']> = Extract<Intent, { do: D }>;

export const refused = (refusal: Refusal): Accepted => ({ outcome: 'refused', refusal });

/** Later than anything that can have happened by the time the message was sent. */
export const isAhead = (atMs: EpochMs, { sentMs }: Speaking): boolean =>
  atMs > addMinutes(sentMs, CLOCKS_APART_MIN);

const factsOf = (
  { cause, factsSoFar, sentMs, heardMs, speaker }: Speaking,
  atMs: EpochMs | null,
  happenings: readonly Happening[],
): Fact[] =>
  happenings.map((happening, at) => ({
    id: `${cause}#${factsSoFar + at}`,
    cause,
    atMs: atMs ?? sentMs,
    sentMs,
    heardMs,
    by: speaker.id,
    timeStated: atMs !== null,
    ...happening,
  }));

/** The facts of what happened when the message was sent. */
export const happened = (speaking: Speaking, ...happenings: readonly Happening[]): Fact[] =>
  factsOf(speaking, null, happenings);

/** The facts of what happened at `atMs` (null = when the message was sent). A report of the future is refused. */
export const taken = (
  speaking: Speaking,
  atMs: EpochMs | null,
  happenings: readonly Happening[],
  warnings: readonly Warning[] = [],
): Accepted => {
  if (atMs !== null && isAhead(atMs, speaking)) return refused({ refused: 'time-ahead', atMs });
  return { outcome: 'facts', facts: factsOf(speaking, atMs, happenings), warnings };
};

/** The station that was named, else that of the field, else the operation's first. */
export const stationFor = (
  roster: Roster,
  station: StationId | null,
  field: FieldId | null,
): StationId | null =>
  station ??
  (field === null ? undefined : fieldById(roster, field))?.station ??
  roster.stations[0]?.id ??
  null;

/** As `stationFor`; if nothing was named, the one that the truck's load goes to, else that of the field being dug. */
export const stationOfTruck = (
  harvest: Harvest,
  truck: TruckId | null,
  station: StationId | null,
  field: FieldId | null,
): StationId | null => {
  const load = truck === null ? undefined : harvest.trucks.get(truck)?.loads.at(-1);
  const underWay = load && !hasEnded(load) && field === null ? load.station : null;
  return stationFor(harvest.roster, station ?? underWay, field ?? harvest.dugField);
};

export const truckFor = (speaking: Speaking, truck: TruckId | null): TruckId | null =>
  truck ?? speaking.speaker.truck;
