import type { FieldId, StationId, TruckId } from '../roster.ts';
import type { EpochMs } from '../units.ts';
import { endedMs, onTruckSince } from '../haul/load.ts';
import type { Source } from '../haul/load.ts';
import type { Phase, TruckState } from '../haul/truck.ts';
import type { Harvest } from '../harvest/harvest.ts';

/** One truck as "where is everybody" shows it. */
export interface BoardRow {
  truck: TruckId;
  /** Null = nothing heard of it yet. */
  phase: Phase | null;
  sinceMs: EpochMs | null;
  source: Source;
  field: FieldId | null;
  station: StationId | null;
  /** Loads brought since the day began. */
  loads: number;
  /** Why it is down, in the driver's words. */
  words: string | null;
}

/** Loads that came off the truck at or after `fromMs` and before `toMs`. */
export const loadsEnded = (state: TruckState, fromMs: EpochMs, toMs: EpochMs): number =>
  onTruckSince(state.loads, fromMs).filter((load) => {
    const end = endedMs(load);
    return end !== null && end >= fromMs && end < toMs;
  }).length;

const rowOf = (truck: TruckId, state: TruckState | undefined, dayStartMs: EpochMs): BoardRow => {
  if (!state)
    return {
      truck,
      phase: null,
      sinceMs: null,
      source: 'inferred',
      field: null,
      station: null,
      loads: 0,
      words: null,
    };
  const load = state.loads.at(-1);
  const empty = state.phase === 'at-field' || state.phase === 'loading';
  return {
    truck,
    phase: state.phase,
    sinceMs: state.sinceMs,
    source: state.source,
    field: empty ? state.field : (load?.field ?? state.field),
    station: load?.station ?? null,
    loads: loadsEnded(state, dayStartMs, Infinity),
    words: state.down?.words ?? null,
  };
};

/** Every truck of the list, in the list's order, with its phase, since when, and its loads of the day. */
export const board = (harvest: Harvest, dayStartMs: EpochMs): BoardRow[] =>
  harvest.roster.trucks.map((truck) => rowOf(truck.id, harvest.trucks.get(truck.id), dayStartMs));
