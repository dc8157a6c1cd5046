import type { FactHeader, FactOf, HaulStep, Ticket } from '../book/facts.ts';
import type { FieldId, PersonId, StationId, TruckId } from '../roster.ts';
import type { StampTelling } from './stamp-telling.ts';
import { firstIndex } from '../sorted.ts';
import { minutesBetween } from '../units.ts';
import type { EpochMs, Lb, Span } from '../units.ts';

/** Where a time comes from. `inferred` = nobody said it; a later message shows that it must have happened. */
export type Source = 'stated' | 'ticket' | 'inferred';

export interface Stamp {
  readonly atMs: EpochMs;
  readonly source: Source;
  readonly telling?: StampTelling;
}

/** The steps of a loaded truck, in the order in which they happen. */
export const loadedSteps = [
  'left-field',
  'joined-line',
  'first-weighed',
  'dumped',
  'second-weighed',
] as const;
export type LoadedStep = (typeof loadedSteps)[number];

export interface BookedTicket extends Ticket {
  /** The entry that booked it, by whom, and when the second weight was taken (or the ticket sent). */
  cause: string;
  by: PersonId | null;
  atMs: EpochMs;
  sentMs: EpochMs;
}

/** One round trip. A stamp is null while the step has not been told. */
export interface Load {
  readonly truck: TruckId;
  readonly field: FieldId | null;
  readonly fieldSource: Source;
  readonly station: StationId | null;
  readonly startMs: EpochMs;
  readonly stamps: Readonly<Record<LoadedStep, Stamp | null>>;
  readonly ticket: BookedTicket | null;
  /** The first weight where the driver told it before there was a ticket. */
  readonly grossLb: Lb | null;
  /** When it was last said to stand in the scale line: drivers count anew while they wait. Null = never. */
  readonly inLineMs: EpochMs | null;
  /** When the newest message about it was heard. */
  readonly heardMs: EpochMs;
}

export const isLoadedStep = (step: HaulStep): step is Exclude<LoadedStep, 'second-weighed'> =>
  step === 'left-field' || step === 'joined-line' || step === 'first-weighed' || step === 'dumped';

export const newLoad = (truck: TruckId, startMs: EpochMs): Load => ({
  truck,
  field: null,
  fieldSource: 'inferred',
  station: null,
  startMs,
  stamps: {
    'left-field': null,
    'joined-line': null,
    'first-weighed': null,
    dumped: null,
    'second-weighed': null,
  },
  ticket: null,
  grossLb: null,
  inLineMs: null,
  heardMs: startMs,
});

/** The first word of a step counts. */
export const stamped = (load: Load, step: LoadedStep, stamp: Stamp): Load =>
  load.stamps[step] === null ? { ...load, stamps: { ...load.stamps, [step]: stamp } } : load;

/** A message that took longer was held up on the way. */
const HELD_UP_MIN = 3;

/** The stamp of a step that the driver told himself. */
export const statedStamp = ({ atMs, sentMs, heardMs, timeStated }: FactHeader): Stamp => {
  const stamp = { atMs, source: 'stated' } as const;
  if (timeStated) return { ...stamp, telling: 'time-said' };
  return minutesBetween(sentMs, heardMs) > HELD_UP_MIN ? { ...stamp, telling: 'held-up' } : stamp;
};

/** The load is off the truck: dumped or weighed out. */
export const hasEnded = (load: Load): boolean =>
  load.stamps.dumped !== null || load.stamps['second-weighed'] !== null;

/** When the load came off the truck, by the earlier of the two words for it; null while it is on. */
export const endedMs = ({ stamps: { dumped, 'second-weighed': weighed } }: Load): EpochMs | null =>
  dumped && weighed ? Math.min(dumped.atMs, weighed.atMs) : ((dumped ?? weighed)?.atMs ?? null);

/** Those of a truck's loads that began in the span. They are in the order in which they began. */
export const begunIn = (loads: readonly Load[], { fromMs, toMs }: Span): readonly Load[] =>
  loads.slice(
    firstIndex(loads, ({ startMs }) => startMs >= fromMs),
    firstIndex(loads, ({ startMs }) => startMs >= toMs),
  );

/** Those of a truck's loads that can have been on it at `fromMs` or later: each ends before the next one begins. */
export const onTruckSince = (loads: readonly Load[], fromMs: EpochMs): readonly Load[] =>
  loads.slice(Math.max(0, firstIndex(loads, ({ startMs }) => startMs >= fromMs) - 1));

/** Place of the furthest step told, -1 for none. */
export const furthestStep = (load: Load): number =>
  loadedSteps.findLastIndex((step) => load.stamps[step] !== null);

export const newestStampMs = ({ startMs, stamps }: Load): EpochMs =>
  loadedSteps.reduce((newestMs, step) => Math.max(newestMs, stamps[step]?.atMs ?? startMs), startMs);

export const asBooked = (fact: FactOf<'ticket-booked'>): BookedTicket => ({
  ...fact.ticket,
  cause: fact.cause,
  by: fact.by,
  atMs: fact.atMs,
  sentMs: fact.sentMs,
});
