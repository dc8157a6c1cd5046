/** How long a load takes from the digger to the pile, as this operation's own times have it. */
import { USUAL_FILL_MIN } from '../assumptions.ts';
import type { StationId, FieldId } from '../roster.ts';
import { minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import type { Haul } from '../weather/ladder.ts';
import type { Load, LoadedStep } from '../haul/load.ts';
import { medianFillMin } from './fills.ts';
import type { Harvest } from './harvest.ts';
import { allLoads } from './harvest.ts';
import { median } from '../statistics.ts';

/** Until something is learned. Grade: common practice. */
export const USUAL = { fillMin: USUAL_FILL_MIN, lineWaitMin: 20, unloadMin: 10, marginMin: 15 };

/** Loads that count: those of today and the days just before. */
const RECENT_LOADS = 40;
/** Fewer tell nothing; then the usual counts. */
const LEAST = 3;
/** Longer than this between two steps and something else happened. */
const LONGEST_MIN: Minutes = 240;

const medianOr = (minutes: readonly Minutes[], usual: Minutes): Minutes => {
  const believed = minutes.filter((min) => min >= 0 && min <= LONGEST_MIN);
  return (believed.length < LEAST ? null : median(believed)) ?? usual;
};

const between = (loads: readonly Load[], from: LoadedStep, to: LoadedStep): Minutes[] =>
  loads.flatMap(({ stamps }) => {
    const [a, b] = [stamps[from], stamps[to]];
    return a && b && b.source !== 'inferred' ? [minutesBetween(a.atMs, b.atMs)] : [];
  });

/**
 * Medians over the recent loads to that station up to `nowMs`: medians, so that one slow truck does not move a stop that
 * was told.
 */
export const usualHaul = (harvest: Harvest, station: StationId, nowMs: EpochMs): Haul => {
  const loads = [...harvest.trucks.values()]
    .flatMap((truck) => truck.loads)
    .filter((load) => load.station === station && load.startMs <= nowMs)
    .sort((a, b) => a.startMs - b.startMs)
    .slice(-RECENT_LOADS);
  return {
    fillMin: medianFillMin(harvest.filling.fills.slice(-RECENT_LOADS)) ?? USUAL.fillMin,
    haulMin: haulMinutes(harvest, station, harvest.dugField),
    lineWaitMin: medianOr(between(loads, 'joined-line', 'first-weighed'), USUAL.lineWaitMin),
    unloadMin: medianOr(between(loads, 'first-weighed', 'dumped'), USUAL.unloadMin),
    marginMin: USUAL.marginMin,
  };
};

/** One way loaded, where nothing has been learned: 20-30 min (a driver's account, travelingwithtucson, 2020). */
const USUAL_HAUL_MIN: Minutes = 25;

/** Longer ones had a stop on the way that nobody told. */
const LONGEST_HAUL_MIN: Minutes = 180;

/** Median minutes from leaving the field full to joining the line, of this field and station, else of any field. */
export const haulMinutes = (harvest: Harvest, station: StationId, field: FieldId | null): Minutes => {
  const hauls = allLoads(harvest).flatMap((load) => {
    const { 'left-field': left, 'joined-line': joined } = load.stamps;
    if (load.station !== station || left?.source !== 'stated' || joined?.source !== 'stated') return [];
    const min = minutesBetween(left.atMs, joined.atMs);
    return min > 0 && min <= LONGEST_HAUL_MIN ? [{ field: load.field, min }] : [];
  });
  const own = hauls.filter((haul) => haul.field === field);
  return median((own.length > 0 ? own : hauls).map((haul) => haul.min)) ?? USUAL_HAUL_MIN;
};
