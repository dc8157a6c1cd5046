import type { NoticeStep, Fact, FactOf } from '../book/facts.ts';
import type { PersonId, FieldId, Roster, StationId, TruckId } from '../roster.ts';
import type { EpochMs } from '../units.ts';
import type { BookedTicket, Load } from '../haul/load.ts';
import type { TruckState } from '../haul/truck.ts';
import type { Fill } from './fills.ts';

/** A notice event with all its steps so far. */
export interface NoticeEvent {
  event: string;
  steps: { step: NoticeStep; atMs: EpochMs; heardMs: EpochMs; by: PersonId | null }[];
  /** Who has said that they saw what it says now: a new stop or a new time must be seen anew. */
  seen: Map<PersonId, EpochMs>;
}

/** The state of the season by the facts of the book. */
export interface Harvest {
  /** The operation's lists as the operation file has them. */
  fileRoster: Roster;
  /** The lists after what was changed in chat. */
  roster: Roster;
  /** All facts as written, for undo and for questions about entries. */
  facts: readonly Fact[];
  trucks: ReadonlyMap<TruckId, TruckState>;
  tickets: readonly BookedTicket[];
  dugField: FieldId | null;
  /** Oldest first. */
  fills: readonly Fill[];
  headCounts: readonly FactOf<'line-seen'>[];
  pilerReports: readonly FactOf<'pilers-seen'>[];
  stationReports: readonly FactOf<'station-reported'>[];
  rootReadings: readonly FactOf<'root-measured'>[];
  crownChecks: readonly FactOf<'crown-checked'>[];
  /** All forecasts of the last two days by place, oldest issue first. */
  forecasts: ReadonlyMap<StationId, readonly FactOf<'forecast-issued'>[]>;
  /** The one with the newest step last. */
  notices: readonly NoticeEvent[];
  /** What was noticed of the line, oldest first. */
  lineWarnings: readonly FactOf<'line-warned'>[];
  shifts: ReadonlyMap<PersonId, Shift>;
  /** `platform:user` of people who wrote without being on the list. */
  strangers: ReadonlySet<string>;
  /** Tickets that other operations share; no facts of ours. */
  othersTickets: readonly SharedTicket[];
}

/** What a person said of the shift. */
export interface Shift {
  /** Null = on shift. */
  offSinceMs: EpochMs | null;
  /** Wants notices by direct message when off shift too. */
  noticesWhenOff: boolean;
}

export const ON_SHIFT: Shift = { offSinceMs: null, noticesWhenOff: false };

export interface SharedTicket {
  /** The name under which the operations share that station. */
  pool: string;
  serial: string;
  joinedMs: EpochMs | null;
  firstWeighedMs: EpochMs | null;
  secondWeighedMs: EpochMs | null;
  heardMs: EpochMs;
}

/** One and the same where an operation shares nothing. */
export const NOTHING_SHARED: readonly SharedTicket[] = [];

export const allLoads = (harvest: Harvest): Load[] =>
  [...harvest.trucks.values()].flatMap((truck) => truck.loads);
