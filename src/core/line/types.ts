/**
 * The scale line as the operation sees it: what its own crew reported, and the forecast made from that.
 *
 * Wait: minutes from joining the scale line to the first weight. All instants are the operation's best knowledge of
 * when a thing happened; `heardMs` is when the bot came to know it. Nothing later than the asked-for instant is used.
 */
import type { StationId, TruckId } from '../roster.ts';
import type { EpochMs, Minutes } from '../units.ts';

/** One trip of a truck through the station. Null = not known, or not yet. */
export interface Visit {
  /** Null = a truck of another operation, which shares its tickets. */
  truck: TruckId | null;
  /** When it joined the scale line. */
  joinedMs: EpochMs | null;
  /** False where the join was inferred from another message. */
  joinedStated: boolean;
  firstWeighedMs: EpochMs | null;
  dumpedMs: EpochMs | null;
  secondWeighedMs: EpochMs | null;
  /** As printed on the weigh ticket; leading zeros count. */
  serial: string | null;
  /** When the newest of these was heard. */
  heardMs: EpochMs;
}

/** Trucks in the scale line, as counted by somebody who stands there. */
export interface HeadCount {
  atMs: EpochMs;
  ahead: number;
  /** The truck of ours that they stand ahead of; null = the whole line was counted. */
  truck: TruckId | null;
}

/** Pilers open and pilers down, as seen; null = not told. */
export interface PilerReport {
  atMs: EpochMs;
  open: number | null;
  down: number | null;
}

export interface LineObservations {
  station: StationId;
  visits: readonly Visit[];
  headCounts: readonly HeadCount[];
  pilers: readonly PilerReport[];
  /** When the station opened; start of the day where nobody told. Null = not known. */
  opening: EpochMs | null;
  /** Pilers that the station usually has open. */
  usualPilers: number;
}

export interface WaitAsk {
  nowMs: EpochMs;
  /** Minutes until the truck reaches the line; 0 = now. */
  arriveInMin: Minutes;
  /** Also the ways in which the line may go over the next hours. */
  withCourses?: true;
}

/** A forecast that somebody needs, and what the crew has seen of that line. */
export interface WaitNeed {
  observations: LineObservations;
  ask: WaitAsk;
}

/** What a forecast rests on, as data; the words for it are made elsewhere. Null = nothing known of it. */
export interface Evidence {
  /** The newest weigh ticket with a serial, and when that truck was first weighed. */
  lastSerial: { serial: string; atMs: EpochMs } | null;
  /** Trucks that stand ahead of the asking truck when it arrives. */
  trucksAhead: number | null;
  /** Trucks that the station takes per hour. */
  ratePerHour: number | null;
  /** Minutes since the newest observation that the forecast rests on. */
  newestAgeMin: Minutes | null;
}

/** `lowMin` to `highMin` holds the wait in 80 of 100 cases. */
export type WaitForecast =
  | {
      known: true;
      medianMin: Minutes;
      lowMin: Minutes;
      highMin: Minutes;
      evidence: Evidence;
      /** From `nowMs` on, each as likely as the others; only where they were asked for and can be told. */
      courses?: readonly WaitCourse[];
    }
  /** No usable evidence of today's line; what is usual at this hour, where that has been learned. */
  | {
      known: false;
      newestAgeMin: Minutes | null;
      usual: { medianMin: Minutes; lowMin: Minutes; highMin: Minutes } | null;
    };

/** What the bot has noticed of a line by itself. It is a fact, so that it is told once, also after a restart. */
export type LineWarning =
  /** The forecast has passed the limit that was set, or (`above` false; nobody is told) fallen well below it again. */
  | { about: 'limit'; above: boolean; limitMin: Minutes; forecast: Extract<WaitForecast, { known: true }> }
  /** Trucks of ours wait, and none was weighed for `silentMin`. */
  | { about: 'stopped'; waiting: readonly TruckId[]; silentMin: Minutes };

export type ForecastWait = (observations: LineObservations, ask: WaitAsk) => WaitForecast;

/** The wait of a truck that joins now, and every `COURSE_STEP_MIN` after that, if the line goes this way. */
export type WaitCourse = readonly Minutes[];
