/**
 * The round trip of a truck as a state machine. Steps arrive in the order in which they happened (late messages have
 * been sorted in), but any of them may be missing, said twice, or stamped late because the driver waited for a safe
 * place to write.
 *
 * | phase      | entered on                                        | left on                          |
 * | at field   | "at the field"                                    | loading, or any loaded step      |
 * | loading    | "loading"                                         | any loaded step                  |
 * | hauling    | "loaded", "leaving full"                          | in line, first weight, dumped, ticket |
 * | in line    | "in line"                                         | first weight, dumped, ticket     |
 * | on piler   | first weight, "dumped" (between the two weights)  | ticket, "empty", any empty step  |
 * | returning  | a ticket (source ticket), "empty, heading back"   | any field or loaded step         |
 * | parked     | "parked", "done for the day"                      | any step                         |
 * | down       | "broke down"                                      | "back up" (to the phase before), or any step |
 *
 * Which load a loaded step belongs to is settled in belonging.ts. Ignored: an empty step that comes so soon after
 * "loaded" that the truck cannot have been to the station (it was sent late); a step that the load is already past. A
 * ticket or "dumped" that comes in after the truck said where it went next is of the load, and moves the truck no more.
 */
import type { FactOf } from '../book/facts.ts';
import type { FieldId, StationId, TruckId } from '../roster.ts';
import { minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { belongsTo, loadOfTicket } from './belonging.ts';
import { inOrderOfSerials } from './bunch.ts';
import {
  asBooked,
  furthestStep,
  hasEnded,
  isLoadedStep,
  loadedSteps,
  newLoad,
  stamped,
  statedStamp,
} from './load.ts';
import type { Load, LoadedStep, Source, Stamp } from './load.ts';

export type Phase =
  'at-field' | 'loading' | 'hauling' | 'in-line' | 'on-piler' | 'returning' | 'parked' | 'down';

export interface TruckState {
  readonly truck: TruckId;
  readonly phase: Phase;
  readonly sinceMs: EpochMs;
  readonly source: Source;
  /** All its round trips, oldest first; the last one is under way unless it has ended. */
  readonly loads: readonly Load[];
  /** When the truck last said that it was empty (at field, loading, returning); null = never. */
  readonly emptyMs: EpochMs | null;
  /** The field that it named last. */
  readonly field: FieldId | null;
  /** Why it is down, in the driver's words, and where it was in its round before. */
  readonly down: { readonly words: string | null; readonly before: Phase } | null;
}

/** What the fold knows besides the truck when a step arrives. */
export interface Surroundings {
  shortestCycleMin: Minutes;
  /** The field that anybody named last: one digger digs one field at a time. */
  dugField: FieldId | null;
  stationOf: (field: FieldId | null) => StationId | null;
}

export const freshTruck = (truck: TruckId, sinceMs: EpochMs): TruckState => ({
  truck,
  phase: 'parked',
  sinceMs,
  source: 'inferred',
  loads: [],
  emptyMs: null,
  field: null,
  down: null,
});

const phaseOfStep = (step: LoadedStep): Phase => {
  switch (step) {
    case 'left-field':
      return 'hauling';
    case 'joined-line':
      return 'in-line';
    case 'first-weighed':
    case 'dumped':
      return 'on-piler';
    case 'second-weighed':
      return 'returning';
  }
};

const entered = (state: TruckState, phase: Phase, atMs: EpochMs, source: Source): TruckState => {
  const isNew = state.phase !== phase;
  return {
    ...state,
    phase,
    sinceMs: isNew || state.down ? atMs : state.sinceMs,
    source: isNew || source !== 'inferred' ? source : state.source,
    down: null,
  };
};

/** With its load number `at` changed (-1 = the last one). */
const withLoad = (state: TruckState, at: number, changed: (load: Load) => Load): TruckState => {
  const load = state.loads.at(at);
  return load === undefined ? state : { ...state, loads: state.loads.with(at, changed(load)) };
};

/** A truck that is loaded again, or says it is empty, must have got rid of the load before. */
const endedUnderWay = (state: TruckState, atMs: EpochMs): TruckState => {
  const load = state.loads.at(-1);
  if (!load || hasEnded(load)) return state;
  return withLoad(state, -1, (under) => stamped(under, 'dumped', { atMs, source: 'inferred' }));
};

const withNewLoad = (state: TruckState, atMs: EpochMs): TruckState => {
  const ended = endedUnderWay(state, atMs);
  return { ...ended, loads: [...ended.loads, newLoad(state.truck, atMs)], sinceMs: atMs };
};

/** Field and station as they were said now, else before, else by what is being dug. */
const placed = (
  load: Load,
  said: { field: FieldId | null; station: StationId | null },
  around: Surroundings,
): Load => {
  const field = said.field ?? load.field ?? around.dugField;
  return {
    ...load,
    field,
    fieldSource: said.field === null ? load.fieldSource : 'stated',
    station: said.station ?? load.station ?? around.stationOf(field),
  };
};

/** The load number `at`, changed so, has reached the step, and the truck with it where that brings it further. */
const reached = (
  state: TruckState,
  at: number,
  step: LoadedStep,
  stamp: Stamp,
  changed: (load: Load) => Load = (load) => load,
): TruckState => {
  const load = state.loads.at(at);
  if (!load) return state;
  const isPast = loadedSteps.indexOf(step) < furthestStep(load);
  const hasMovedOn = hasEnded(load) && state.phase !== 'on-piler';
  const now = withLoad(state, at, (known) => stamped(changed(known), step, stamp));
  const isLast = at === state.loads.length - 1;
  return isLast && !isPast && !hasMovedOn ? entered(now, phaseOfStep(step), stamp.atMs, stamp.source) : now;
};

/** "Empty" or "at the field" this soon after "loaded" was sent late: the truck cannot have been to the station. */
const tooSoonToBeEmpty = (state: TruckState, atMs: EpochMs, around: Surroundings): boolean => {
  const load = state.loads.at(-1);
  if (!load || hasEnded(load) || furthestStep(load) > 0) return false;
  return minutesBetween(load.startMs, atMs) < around.shortestCycleMin / 2;
};

const withEmptyStep = (
  state: TruckState,
  phase: 'at-field' | 'loading' | 'returning',
  fact: FactOf<'truck-reported'>,
  around: Surroundings,
): TruckState => {
  const named = { ...state, field: fact.field ?? state.field };
  if (tooSoonToBeEmpty(state, fact.atMs, around)) return named;
  const empty = { ...endedUnderWay(named, fact.atMs), emptyMs: fact.atMs };
  return entered(empty, phase, fact.atMs, 'stated');
};

const withLoadedStep = (
  state: TruckState,
  step: LoadedStep,
  fact: FactOf<'truck-reported'>,
  around: Surroundings,
): TruckState => {
  const last = state.loads.at(-1);
  const isSameLoad = last !== undefined && belongsTo(last, step, fact.atMs, state.emptyMs, around);
  const onIt = isSameLoad ? state : withNewLoad(state, fact.atMs);
  const named = { ...onIt, field: fact.field ?? onIt.field };
  return reached(named, named.loads.length - 1, step, statedStamp(fact), (load) => {
    const heardMs = Math.max(load.heardMs, fact.heardMs);
    const inLineMs = step === 'joined-line' ? fact.atMs : load.inLineMs;
    return placed({ ...load, heardMs, inLineMs, grossLb: fact.grossLb ?? load.grossLb }, fact, around);
  });
};

/** A truck that is down already keeps the first reason. */
const brokenDown = (state: TruckState, { words, atMs }: FactOf<'truck-reported'>): TruckState =>
  state.down
    ? { ...state, down: { ...state.down, words: state.down.words ?? words } }
    : { ...state, down: { words, before: state.phase }, phase: 'down', sinceMs: atMs, source: 'stated' };

/** The truck after this report. */
export const withReport = (
  state: TruckState,
  fact: FactOf<'truck-reported'>,
  around: Surroundings,
): TruckState => {
  const { step, atMs } = fact;
  if (isLoadedStep(step)) return withLoadedStep(state, step, fact, around);
  switch (step) {
    case 'at-field':
    case 'loading':
    case 'returning':
      return withEmptyStep(state, step, fact, around);
    case 'parked':
      return entered(state, 'parked', atMs, 'stated');
    case 'down':
      return brokenDown(state, fact);
    case 'up':
      return state.down ? entered(state, state.down.before, atMs, 'inferred') : state;
  }
};

/** The truck after this ticket, which closes one of its loads, or is all that was heard of one. */
export const withTicket = (
  state: TruckState,
  fact: FactOf<'ticket-booked'>,
  around: Surroundings,
): TruckState => {
  const ticket = asBooked(fact);
  const { atMs, heardMs } = fact;
  const known = loadOfTicket(state.loads, { atMs, firstWeighedMs: fact.ticket.firstWeighedMs });
  const onIt = known === undefined ? withNewLoad(state, atMs) : state;
  const at = known === undefined ? onIt.loads.length - 1 : onIt.loads.lastIndexOf(known);
  const closed = withLoad(onIt, at, (load) =>
    placed({ ...load, ticket, heardMs: Math.max(load.heardMs, heardMs) }, ticket, around),
  );
  const ordered = { ...closed, loads: inOrderOfSerials(closed.loads, at) };
  const { firstWeighedMs } = ticket;
  const weighed =
    firstWeighedMs === null
      ? ordered
      : reached(ordered, at, 'first-weighed', { atMs: firstWeighedMs, source: 'ticket' });
  const second: Stamp = fact.timeStated
    ? { atMs, source: 'ticket', telling: 'time-said' }
    : { atMs, source: 'ticket' };
  return reached(weighed, at, 'second-weighed', second);
};
