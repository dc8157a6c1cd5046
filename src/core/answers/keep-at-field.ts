/** Whether a truck had better wait loaded at the field than in the line. */
import { holds } from '../notices/notices.ts';
import type { TruckId } from '../roster.ts';
import { addMinutes, minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { adviseHold } from '../line/fleet.ts';
import type { HoldAdvice } from '../line/fleet.ts';
import type { LineObservations, WaitForecast } from '../line/types.ts';
import type { Harvest } from '../harvest/harvest.ts';

/** The hold that is weighed: half an hour. */
export const HOLD_MIN: Minutes = 30;
/** A shorter line is no reason to hold. */
const WORTH_HOLDING_MIN: Minutes = 20;

/** Chance that the line does not move when the truck gets there: by the newest word from the station. */
const standstillChance = (observations: LineObservations, atMs: EpochMs): number => {
  const word = observations.pilers
    .filter((report) => report.atMs <= atMs && (report.down !== null || report.open !== null))
    .reduce<LineObservations['pilers'][number] | null>(
      (newest, report) => (newest === null || report.atMs >= newest.atMs ? report : newest),
      null,
    );
  return (word?.down ?? 0) >= observations.usualPilers ? 1 : 0;
};

/** Empty trucks that are at the digger besides this one: it is not the next that is needed. */
const isNeededNext = (harvest: Harvest, truck: TruckId): boolean =>
  ![...harvest.trucks.values()].some(
    (other) => other.truck !== truck && (other.phase === 'at-field' || other.phase === 'loading'),
  );

/** The truck is still where it could be kept. */
export const canBeKept = (harvest: Harvest, truck: TruckId): boolean => {
  const phase = harvest.trucks.get(truck)?.phase;
  return phase === 'at-field' || phase === 'loading' || phase === 'hauling';
};

interface Asked {
  nowMs: EpochMs;
  arriveInMin: Minutes;
  haulMin: Minutes;
  /** When the station opens that is closed when the truck gets there; null = it is open, or nobody has said when. */
  opensMs: EpochMs | null;
}

/**
 * Null if the truck has left, or its wait is short. `first`: the wait on arrival; `later`: if it arrives `HOLD_MIN` later.
 */
export const keepAtField = (
  harvest: Harvest,
  truck: TruckId,
  observations: LineObservations,
  { nowMs, arriveInMin, haulMin, opensMs }: Asked,
  [first, later]: readonly (WaitForecast | undefined)[],
): HoldAdvice | null => {
  if (!canBeKept(harvest, truck)) return null;
  const arriveMs = addMinutes(nowMs, arriveInMin);
  if (opensMs !== null && minutesBetween(arriveMs, opensMs) >= WORTH_HOLDING_MIN)
    return { hold: true, because: 'closed', untilMs: opensMs };
  if (!first?.known || first.medianMin < WORTH_HOLDING_MIN || !later?.known) return null;
  const backMs = addMinutes(arriveMs, first.medianMin + haulMin);
  const stop = holds(harvest, nowMs).coming;
  return adviseHold({
    neededNext: isNeededNext(harvest, truck),
    standstillChance: standstillChance(observations, arriveMs),
    // First come, first served: of the minutes held, those not saved in the line are lost at the scale.
    joinedPerServed: 1 + (later.medianMin - first.medianMin) / HOLD_MIN,
    fieldStops: stop?.stopAtMs != null && stop.stopAtMs < backMs,
  });
};
