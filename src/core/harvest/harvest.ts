import type { NoticeStep, Fact, FactOf, FieldMachine } from '../book/facts.ts';
import type { PersonId, FieldId, Roster, StationId, TruckId } from '../roster.ts';
import type { EpochMs } from '../units.ts';
import type { Standing } from '../book/standing.ts';
import type { BookedTicket, Load } from '../haul/load.ts';
import type { TruckState } from '../haul/truck.ts';
import type { SharedMap } from '../shared-map.ts';
import type { Filling } from './fills.ts';

/** A notice event with all its steps so far. */
export interface NoticeEvent {
  readonly event: string;
  readonly steps: readonly { step: NoticeStep; atMs: EpochMs; heardMs: EpochMs; by: PersonId | null }[];
  /** Who has said that they saw what it says now: a new stop, or an earlier time, must be seen anew. */
  readonly seen: ReadonlyMap<PersonId, EpochMs>;
}

/** Words that foreman or grower had passed on, and who has said that they saw them. */
export interface PassedWords {
  readonly fact: FactOf<'words-passed'>;
  readonly seen: ReadonlyMap<PersonId, EpochMs>;
}

/** What the standing facts come to, up to one of them. It never changes: the next fact makes a new one (step.ts). */
export interface SeasonState {
  /** The lists after what was changed in chat. */
  readonly roster: Roster;
  readonly trucks: ReadonlyMap<TruckId, TruckState>;
  readonly tickets: readonly BookedTicket[];
  /** `station serial` of the tickets. */
  readonly serials: SharedMap<string, true>;
  readonly dugField: FieldId | null;
  /** What crew words mean by the word of foreman or grower. */
  readonly taught: ReadonlyMap<string, string>;
  readonly acresTold: readonly FactOf<'acres-told'>[];
  /** The digger or topper, where it stands by the crew's word. */
  readonly machinesDown: ReadonlyMap<FieldMachine, FactOf<'machine-reported'>>;
  readonly filling: Filling;
  readonly headCounts: readonly FactOf<'line-seen'>[];
  readonly pilerReports: readonly FactOf<'pilers-seen'>[];
  readonly stationReports: readonly FactOf<'station-reported'>[];
  readonly turnedAway: readonly FactOf<'loads-turned-away'>[];
  readonly rootReadings: readonly FactOf<'root-measured'>[];
  readonly crownChecks: readonly FactOf<'crown-checked'>[];
  /** All forecasts of the last two days by place, oldest issue first. */
  readonly forecasts: ReadonlyMap<StationId, readonly FactOf<'forecast-issued'>[]>;
  /** All of the season by place, and what was measured there, to compare them. */
  readonly issued: ReadonlyMap<StationId, readonly FactOf<'forecast-issued'>[]>;
  readonly observed: ReadonlyMap<StationId, readonly FactOf<'air-observed'>[]>;
  /** What was last told of the forecasts of each place. */
  readonly forecastWarnings: ReadonlyMap<StationId, FactOf<'forecast-warned'>>;
  /** The one with the newest step last. */
  readonly notices: readonly NoticeEvent[];
  /** Words that were passed on, the newest last. */
  readonly passedWords: readonly PassedWords[];
  /** What was noticed of the line, oldest first. */
  readonly lineWarnings: readonly FactOf<'line-warned'>[];
  readonly shifts: ReadonlyMap<PersonId, Shift>;
  /** The newest question of each person about what a message meant, as long as it is not answered. */
  readonly offers: ReadonlyMap<PersonId, FactOf<'reading-offered'>>;
  /** How many such questions there were. */
  readonly offersMade: number;
  /** `platform:user` of people who wrote without being on the list. */
  readonly strangers: ReadonlySet<string>;
}

/** A stretch of the season. */
export interface Chapter {
  readonly before: SeasonState;
  /** Those that stand, in order of happening; never empty. */
  readonly facts: readonly Fact[];
}

/** In memory only: made anew from the facts of the book at each start. */
export interface Season {
  readonly chapters: readonly Chapter[];
  /** After all of them. */
  readonly state: SeasonState;
}

/** The state of the season by the facts of the book. */
export interface Harvest extends SeasonState {
  /** The operation's lists as the operation file has them. */
  readonly fileRoster: Roster;
  /** For undo and for questions about entries: to be asked by the functions of book/standing.ts. */
  readonly standing: Standing;
  /** How it came about (chapters.ts). */
  readonly season: Season;
  /** Tickets that other operations share; no facts of ours. */
  readonly othersTickets: readonly SharedTicket[];
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
