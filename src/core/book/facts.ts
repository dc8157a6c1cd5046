/**
 * Everything that can have happened. Facts are only ever added: an undo or a correction is a new fact.
 *
 * Words of the trade, as used in every name of this project:
 * - operation: one farm's harvest. Crew member: a person of it, with roles grower, foreman, driver, digger operator,
 *   topper operator.
 * - topper (defoliator): takes the leaves off ahead of the digger (lifter), which lifts the roots into a truck.
 * - receiving station: where beets are weighed and piled. Scale line: the trucks waiting to weigh in.
 * - load: one round trip of a truck. First weight: gross, loaded, on the way in. Second weight: tare, empty (with the
 *   dirt put back), on the way out. Net = first - second. Weigh ticket: the station's paper with its serial.
 * - on the piler: between the two weights. Tons: short tons unless the operation is metric.
 * - heat stop, frost hold, mud hold: digging halted and why. All-clear: the end of one.
 */
import type { Intent } from '../intent.ts';
import type { FieldId, Language, ListChange, PersonId, StationId, TruckId } from '../roster.ts';
import type { LineWarning } from '../line/types.ts';
import type { EpochMs, Fahrenheit, Lb } from '../units.ts';
import type { HourlyTemperature, FreezeAlert, RainTotal } from '../weather/types.ts';
import type { Correction, EntryTarget, FieldMachine, HaulStep, HoldReason } from './terms.ts';

export type { Correction, Counted, EntryTarget, FieldMachine, HaulStep, HoldReason } from './terms.ts';

export interface Ticket {
  station: StationId;
  /** As printed, as text: leading zeros count. Null where a person gave weights alone. */
  serial: string | null;
  truck: TruckId;
  /** Null = the field of the load it closes. */
  field: FieldId | null;
  grossLb: Lb | null;
  tareLb: Lb | null;
  netLb: Lb;
  /** When the first weight was taken, where the person or the ticket tells it. */
  firstWeighedMs: EpochMs | null;
}

/**
 * One step of a notice. All steps of one stop share the event id.
 * - watch: a stop is likely later. stop: dig until `stopAtMs`, then no more. update: the times have moved.
 * - all-clear: the stop is over.
 */
export interface NoticeStep {
  event: string;
  /** 1, 2, 3 ... within the event. */
  number: number;
  notice: HoldReason;
  stage: 'watch' | 'stop' | 'update' | 'all-clear';
  /**
   * `forecast`: raised from the hourly forecast. `person`: ordered by foreman or grower. `drill`: ordered by them as an
   * exercise, which is confirmed like a real stop and holds nothing.
   */
  source: 'forecast' | 'person' | 'drill';
  place: StationId | null;
  stopToppingMs: EpochMs | null;
  stopAtMs: EpochMs | null;
  resumeAtMs: EpochMs | null;
  /** Highest forecast temperature in the afternoon window, and the limit that it passes. */
  peakF: Fahrenheit | null;
  peakMs: EpochMs | null;
  limitF: Fahrenheit | null;
  /** Chance (0-1) that the limit is passed; null = not estimated. */
  chance: number | null;
  /** The orderer's own words. */
  words: string | null;
  /** Of a stop that has begun, only the restart that is expected has moved: nothing is ordered anew. */
  restartOnly?: true;
  /** What the bot went by; absent in orders, and in books of earlier versions. */
  basis?: NoticeBasis;
}

/** The steps that follow keep the mark of the step that they change, and it means nothing there. */
export const movesRestartOnly = ({ stage, restartOnly }: NoticeStep): boolean =>
  stage === 'update' && restartOnly === true;

export interface NoticeBasis {
  /** When the forecast was issued; null = there was none. */
  forecastMs: EpochMs | null;
  /** The newest measurement that counted; null = nothing was measured. */
  measured: { what: 'air' | 'root'; temperatureF: Fahrenheit; atMs: EpochMs } | null;
}

/** Why there is no forecast of a place. */
export interface MissingForecast {
  /**
   * - refused: the service refuses the bot. silent: no usable answer comes. old: what comes is too old.
   * - settings: no service is set up for the place.
   */
  why: 'refused' | 'silent' | 'old' | 'settings';
  /** When the service last had a usable answer, else the newest forecast was issued; null = there never was one. */
  sinceMs: EpochMs | null;
  /** The service's own words; null = none. */
  words: string | null;
}

export type Happening =
  | {
      kind: 'truck-reported';
      truck: TruckId;
      step: HaulStep;
      field: FieldId | null;
      station: StationId | null;
      /** The first weight, where it was told with the step. */
      grossLb: Lb | null;
      words: string | null;
      /** Until when it is parked or down, where that was told. */
      untilMs?: EpochMs;
    }
  | { kind: 'ticket-booked'; ticket: Ticket }
  | { kind: 'line-seen'; station: StationId; ahead: number; truck: TruckId | null }
  | { kind: 'pilers-seen'; station: StationId; open: number | null; down: number | null }
  | { kind: 'station-reported'; station: StationId; open: boolean; untilMs: EpochMs | null }
  /** The station refuses to take loads. `truck`: the one that was turned away; `words`: why. Null = not said. */
  | { kind: 'loads-turned-away'; station: StationId; truck: TruckId | null; words: string | null }
  | { kind: 'root-measured'; field: FieldId | null; station: StationId | null; temperatureF: Fahrenheit }
  | { kind: 'crown-checked'; field: FieldId | null; sound: boolean }
  | { kind: 'field-dug'; field: FieldId }
  /** Dug or topped so far, by the sender's word; null = no field is known. */
  | { kind: 'acres-told'; machine: FieldMachine; field: FieldId | null; acres: number }
  /** It stands still, with the sender's words why and until when, or works again. */
  | {
      kind: 'machine-reported';
      machine: FieldMachine;
      runs: boolean;
      untilMs: EpochMs | null;
      words: string | null;
    }
  /** What a message may mean, the likeliest first: its sender was asked. `number`: of the operation's questions like it. */
  | {
      kind: 'reading-offered';
      person: PersonId;
      number: number;
      readings: readonly (readonly Intent[])[];
    }
  /** The sender has said which; null = none of them. */
  | { kind: 'reading-chosen'; person: PersonId; number: number; which: number | null }
  | { kind: 'truck-taken'; person: PersonId; truck: TruckId }
  | { kind: 'entry-withdrawn'; target: EntryTarget }
  | { kind: 'entry-corrected'; target: EntryTarget; set: Correction }
  | {
      kind: 'forecast-issued';
      place: StationId;
      issuedMs: EpochMs;
      hours: readonly HourlyTemperature[];
      /** Null = not read, or the service has none. */
      freezeAlerts: readonly FreezeAlert[] | null;
      rain: readonly RainTotal[];
    }
  /** The air as a weather station near the place measured it. */
  | { kind: 'air-observed'; place: StationId; temperatureF: Fahrenheit }
  /** Grower and foreman are told that forecasts of the place do not come; null = that they come again. */
  | { kind: 'forecast-warned'; place: StationId; missing: MissingForecast | null }
  /** Foreman or grower have these words passed on; they order nothing. `room`: where they were said. */
  | {
      kind: 'words-passed';
      to: readonly PersonId[];
      toAll: boolean;
      words: string;
      room: string | null;
      soundsLikeOrder: boolean;
    }
  | { kind: 'notice-raised'; step: NoticeStep }
  | { kind: 'notice-seen'; person: PersonId }
  | { kind: 'line-warned'; station: StationId; warning: LineWarning }
  /** Null = as before. `noticesWhenOff`: also by direct message when off shift. */
  | { kind: 'shift-told'; person: PersonId; off: boolean | null; noticesWhenOff: boolean | null }
  | { kind: 'emergency-called'; words: string; caller: string }
  | { kind: 'stranger-heard'; platform: string; user: string }
  /** To this operation's crew `said` means what `means` does; null = no longer. */
  | { kind: 'word-taught'; said: string; means: string | null }
  | { kind: 'language-chosen'; person: PersonId; language: Language }
  | { kind: 'list-changed'; change: ListChange };

export interface FactHeader {
  /** Unique in the operation: the cause and a number within it. */
  id: string;
  /** What brought it about: `platform:message id`, `forecast:...` or `timer:...`. All facts of one message share it. */
  cause: string;
  /** When it happened: the person's words, else when it was sent. The day is folded by this. */
  atMs: EpochMs;
  /** When the message was sent; an undo counts back from here. */
  sentMs: EpochMs;
  /** When the bot heard it. */
  heardMs: EpochMs;
  /** Null = the bot itself (forecasts, notices from forecasts). */
  by: PersonId | null;
  /** True where `atMs` was read from the person's words rather than taken from the message's time. */
  timeStated: boolean;
}

export type Fact = FactHeader & Happening;
export type FactOf<K extends Happening['kind']> = Extract<Fact, { kind: K }>;
