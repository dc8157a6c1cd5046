/** When a driver is asked to count the trucks ahead. */
import type { StationId, TruckId } from '../roster.ts';
import { minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { firstEstimate } from '../line/first-estimate.ts';
import type { ForecastWait, LineObservations } from '../line/types.ts';
import type { Harvest } from '../harvest/harvest.ts';

/** The longest interval that a head count would not make shorter. */
const NARROW_MIN: Minutes = 20;
const FRESH_COUNT_MIN: Minutes = 15;
/** A driver who tells it later may have moved on. */
const JUST_NOW_MIN: Minutes = 10;

/** Of a line in which nobody of ours was weighed for longer than this, only a count can say more. Grade: chosen. */
const SEEN_MOVING_MIN: Minutes = 30;

/** What can be said of the wait at once, without a forecast. */
const roughly: ForecastWait = (observations, ask) => {
  const isSeenMoving = observations.visits.some(
    ({ firstWeighedMs }) =>
      firstWeighedMs !== null && minutesBetween(firstWeighedMs, ask.nowMs) < SEEN_MOVING_MIN,
  );
  return isSeenMoving ? firstEstimate(observations, ask) : { known: false, newestAgeMin: null, usual: null };
};

/**
 * Would a count by this truck, which has just joined the line, make the forecast narrower? Asked once a visit, with the
 * receipt, which does not wait for a forecast: a first estimate is enough to tell.
 */
export const countHelps = (
  harvest: Harvest,
  truck: TruckId,
  joinedMs: EpochMs,
  observations: (station: StationId) => LineObservations,
  nowMs: EpochMs,
): boolean => {
  const state = harvest.trucks.get(truck);
  const load = state?.loads.at(-1);
  const isFirstWord = load?.stamps['joined-line']?.atMs === joinedMs && load.inLineMs === joinedMs;
  if (state?.phase !== 'in-line' || !isFirstWord || load.station === null) return false;
  if (minutesBetween(joinedMs, nowMs) > JUST_NOW_MIN) return false;
  const seen = observations(load.station);
  if (seen.headCounts.some(({ atMs }) => minutesBetween(atMs, nowMs) < FRESH_COUNT_MIN)) return false;
  const forecast = roughly(seen, { nowMs, arriveInMin: 0 });
  return !forecast.known || forecast.highMin - forecast.lowMin > NARROW_MIN;
};
