import { endedMs } from '../haul/load.ts';
import type { Load } from '../haul/load.ts';
import type { FieldId, TruckId } from '../roster.ts';
import type { EpochMs, Lb } from '../units.ts';
import type { Harvest } from '../harvest/harvest.ts';

export interface TallyLine {
  loads: number;
  netLb: Lb;
}

/** Loads and net weight of a span of time. Net of the tickets: payment weight comes later, less the lab's tare. */
export interface Tally extends TallyLine {
  sinceMs: EpochMs;
  untilMs: EpochMs;
  /** Loads that came off a truck but have no ticket yet; they are in `loads`, not in `netLb`. */
  withoutTicket: number;
  /** Null = nobody said which field. */
  byField: (TallyLine & { field: FieldId | null })[];
  byTruck: (TallyLine & { truck: TruckId })[];
  /** Set where only one of them was asked for. */
  truck: TruckId | null;
  field: FieldId | null;
}

export interface TallyAsk {
  fromMs: EpochMs;
  toMs: EpochMs;
  truck: TruckId | null;
  field: FieldId | null;
}

const brought = (harvest: Harvest, ask: TallyAsk): Load[] =>
  [...harvest.trucks.values()]
    .flatMap((truck) => truck.loads)
    .filter((load) => {
      const end = endedMs(load);
      if (end === null || end < ask.fromMs || end >= ask.toMs) return false;
      return (
        (ask.truck === null || load.truck === ask.truck) && (ask.field === null || load.field === ask.field)
      );
    });

const sum = (loads: readonly Load[]): TallyLine => ({
  loads: loads.length,
  netLb: loads.reduce((lb, load) => lb + (load.ticket?.netLb ?? 0), 0),
});

const grouped = <K>(loads: readonly Load[], keyOf: (load: Load) => K): [K, TallyLine][] =>
  [...Map.groupBy(loads, keyOf)].map(([key, group]) => [key, sum(group)]);

/** A load counts where it came off the truck: dumped, weighed out, or shown by a later message to be off. */
export const tally = (harvest: Harvest, ask: TallyAsk): Tally => {
  const loads = brought(harvest, ask);
  return {
    ...sum(loads),
    sinceMs: ask.fromMs,
    untilMs: ask.toMs,
    withoutTicket: loads.filter((load) => load.ticket === null).length,
    byField: grouped(loads, (load) => load.field)
      .map(([field, line]) => ({ field, ...line }))
      .sort((a, b) => b.netLb - a.netLb),
    byTruck: grouped(loads, (load) => load.truck)
      .map(([truck, line]) => ({ truck, ...line }))
      .sort((a, b) => (a.truck < b.truck ? -1 : 1)),
    truck: ask.truck,
    field: ask.field,
  };
};
