/**
 * The scale line as the operation sees it: what its own crew reported, and the forecast made from that.
 *
 * Wait: minutes from joining the scale line to the first weight. Instants say when something happened, as far as is
 * known; `heardMs` is when the bot heard of it. A forecast uses nothing heard after the instant that it is made for.
 */
import type { StampTelling } from '../haul/stamp-telling.ts';
import type { StationId, TruckId } from '../roster.ts';
import type { EpochMs, Minutes } from '../units.ts';

/** One trip of a truck through the station. Null = not known, or not yet. */
export interface Visit {
  /** Null = a truck of another operation, which shares its tickets. */
  truck: TruckId | null;
  /** When it joined the scale line. */
  joinedMs: EpochMs | null;
  /** False if the join was inferred from another message. */
  joinedStated: boolean;
  /** How the time of joining was told; left out = it is when the message was sent. */
  joinedTelling?: StampTelling;
  firstWeighedMs: EpochMs | null;
  dumpedMs: EpochMs | null;
  secondWeighedMs: EpochMs | null;
  /** True = the ticket was sent at `secondWeighedMs`; the second weight was taken before that, nobody said when. */
  secondIsSending?: true;
  /** By then it had left: it was loaded or empty again, and nobody told when it was dumped. Left out = it had not. */
  goneByMs?: EpochMs;
  /** As printed on the weigh ticket; leading zeros count. */
  serial: string | null;
  /** When the newest of these was heard. */
  heardMs: EpochMs;
}

/** Trucks in the scale line, as counted by somebody there. */
export interface HeadCount {
  atMs: EpochMs;
  ahead: number;
  /** Our truck that they are ahead of; null = the whole line was counted. */
  truck: TruckId | null;
}

/** Pilers open and pilers down, as seen; null = not reported. */
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
  /** When the station opened; the start of the day if nobody reported it. Null = not known. */
  opening: EpochMs | null;
  /** Pilers that the station usually has open. */
  usualPilers: number;
}

export interface WaitAsk {
  nowMs: EpochMs;
  /** Minutes until the truck reaches the line; 0 = now. */
  arriveInMin: Minutes;
  /** Also the courses that the line may take over the next hours. */
  withCourses?: true;
}

/** A forecast that somebody needs, and what the crew has seen of that line. */
export interface WaitNeed {
  observations: LineObservations;
  ask: WaitAsk;
}

/** What a forecast is based on, as data for the words of the answer. Null = not known. */
export interface Evidence {
  /** The newest weigh ticket with a serial, and when that truck was first weighed. */
  lastSerial: { serial: string; atMs: EpochMs } | null;
  /** Trucks ahead of the asking truck when it arrives. */
  trucksAhead: number | null;
  /** Trucks that the station takes per hour. */
  ratePerHour: number | null;
  /** Minutes since the newest observation that the forecast is based on. */
  newestAgeMin: Minutes | null;
}

/** The wait lies between `lowMin` and `highMin` in 80 of 100 cases. */
export type WaitForecast =
  | {
      known: true;
      medianMin: Minutes;
      lowMin: Minutes;
      highMin: Minutes;
      evidence: Evidence;
      /** From `nowMs` on, all equally likely; only if asked for, and if the line can be simulated. */
      courses?: readonly WaitCourse[];
    }
  /** No usable evidence of today's line. `usual`: what is usual at this hour; null = not learned. */
  | {
      known: false;
      newestAgeMin: Minutes | null;
      usual: { medianMin: Minutes; lowMin: Minutes; highMin: Minutes } | null;
    };

/** What the bot noticed about a line by itself. It is stored as a fact, so that it is sent once, also after a restart. */
export type LineWarning =
  /** The forecast has passed the limit that was set, or (`above` false; not sent) fallen well below it again. */
  | { about: 'limit'; above: boolean; limitMin: Minutes; forecast: Extract<WaitForecast, { known: true }> }
  /** Our trucks are waiting, and none was weighed for `silentMin`. */
  | { about: 'stopped'; waiting: readonly TruckId[]; silentMin: Minutes };

export type ForecastWait = (observations: LineObservations, ask: WaitAsk) => WaitForecast;

/** The waits of trucks that join now, and every `COURSE_STEP_MIN` after that, if the line takes this course. */
export type WaitCourse = readonly Minutes[];
