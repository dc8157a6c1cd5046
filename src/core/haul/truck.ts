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
import { orderBunch } from './bunch.ts';
import { asBooked, furthestStep, hasEnded, isLoadedStep, loadedSteps, newLoad } from './load.ts';
import type { Load, LoadedStep, Source } from './load.ts';

export type Phase =
  'at-field' | 'loading' | 'hauling' | 'in-line' | 'on-piler' | 'returning' | 'parked' | 'down';

export interface TruckState {
  truck: TruckId;
  phase: Phase;
  sinceMs: EpochMs;
  source: Source;
  /** All its round trips, oldest first; the last one is under way unless it has ended. */
  loads: Load[];
  /** When the truck last said that it was empty (at field, loading, returning); null = never. */
  emptyMs: EpochMs | null;
  /** The field that it named last. */
  field: FieldId | null;
  /** Why it is down, in the driver's words, and where it was in its round before. */
  down: { words: string | null; before: Phase } | null;
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

const enter = (state: TruckState, phase: Phase, atMs: EpochMs, source: Source): void => {
  if (state.phase !== phase || state.down) state.sinceMs = atMs;
  if (state.phase !== phase || source !== 'inferred') state.source = source;
  state.phase = phase;
  state.down = null;
};

/** A truck that is loaded again, or says it is empty, must have got rid of the load before. */
const endUnderWay = (state: TruckState, atMs: EpochMs): void => {
  const load = state.loads.at(-1);
  if (load && !hasEnded(load)) load.stamps.dumped = { atMs, source: 'inferred' };
};

const openLoad = (state: TruckState, atMs: EpochMs): Load => {
  endUnderWay(state, atMs);
  const load = newLoad(state.truck, atMs);
  state.loads.push(load);
  state.sinceMs = atMs;
  return load;
};

const placeLoad = (
  load: Load,
  said: { field: FieldId | null; station: StationId | null },
  around: Surroundings,
): void => {
  if (said.field !== null) load.fieldSource = 'stated';
  load.field = said.field ?? load.field ?? around.dugField;
  load.station = said.station ?? load.station ?? around.stationOf(load.field);
};

const stamp = (state: TruckState, load: Load, step: LoadedStep, atMs: EpochMs, source: Source): void => {
  const past = loadedSteps.indexOf(step) < furthestStep(load);
  const movedOn = hasEnded(load) && state.phase !== 'on-piler';
  load.stamps[step] ??= { atMs, source };
  if (load === state.loads.at(-1) && !past && !movedOn) enter(state, phaseOfStep(step), atMs, source);
};

/** "Empty" or "at the field" this soon after "loaded" was sent late: the truck cannot have been to the station. */
const tooSoonToBeEmpty = (state: TruckState, atMs: EpochMs, around: Surroundings): boolean => {
  const load = state.loads.at(-1);
  if (!load || hasEnded(load) || furthestStep(load) > 0) return false;
  return minutesBetween(load.startMs, atMs) < around.shortestCycleMin / 2;
};

const applyEmptyStep = (
  state: TruckState,
  phase: 'at-field' | 'loading' | 'returning',
  fact: FactOf<'truck-reported'>,
  around: Surroundings,
): void => {
  state.field = fact.field ?? state.field;
  if (tooSoonToBeEmpty(state, fact.atMs, around)) return;
  endUnderWay(state, fact.atMs);
  state.emptyMs = fact.atMs;
  enter(state, phase, fact.atMs, 'stated');
};

const applyLoadedStep = (
  state: TruckState,
  step: LoadedStep,
  fact: FactOf<'truck-reported'>,
  around: Surroundings,
): void => {
  const last = state.loads.at(-1);
  const load =
    last && belongsTo(last, step, fact.atMs, state.emptyMs, around) ? last : openLoad(state, fact.atMs);
  load.heardMs = Math.max(load.heardMs, fact.heardMs);
  state.field = fact.field ?? state.field;
  if (step === 'joined-line') load.inLineMs = fact.atMs;
  load.grossLb = fact.grossLb ?? load.grossLb;
  placeLoad(load, fact, around);
  stamp(state, load, step, fact.atMs, 'stated');
};

export const applyReport = (
  state: TruckState,
  fact: FactOf<'truck-reported'>,
  around: Surroundings,
): void => {
  const { step, atMs } = fact;
  if (isLoadedStep(step)) {
    applyLoadedStep(state, step, fact, around);
    return;
  }
  switch (step) {
    case 'at-field':
    case 'loading':
    case 'returning':
      applyEmptyStep(state, step, fact, around);
      return;
    case 'parked':
      enter(state, 'parked', atMs, 'stated');
      return;
    case 'down':
      if (state.down) {
        state.down.words ??= fact.words;
        return;
      }
      state.down = { words: fact.words, before: state.phase };
      state.phase = 'down';
      state.sinceMs = atMs;
      state.source = 'stated';
      return;
    case 'up':
      if (state.down) enter(state, state.down.before, atMs, 'inferred');
      return;
  }
};

export const applyTicket = (state: TruckState, fact: FactOf<'ticket-booked'>, around: Surroundings): void => {
  const ticket = asBooked(fact);
  const load = loadOfTicket(state.loads, fact.atMs) ?? openLoad(state, fact.atMs);
  load.ticket = ticket;
  orderBunch(state.loads, load);
  load.heardMs = Math.max(load.heardMs, fact.heardMs);
  placeLoad(load, ticket, around);
  if (ticket.firstWeighedMs !== null) stamp(state, load, 'first-weighed', ticket.firstWeighedMs, 'ticket');
  stamp(state, load, 'second-weighed', fact.atMs, 'ticket');
};
