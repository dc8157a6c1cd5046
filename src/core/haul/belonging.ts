/** Which round trip a step or a ticket belongs to: the one under way, or a new one. */
import { addMinutes, minutesBetween } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { endedMs, furthestStep, hasEnded, loadedSteps, newestStampMs, onTruckSince } from './load.ts';
import type { Load, LoadedStep } from './load.ts';

/**
 * A truck parked loaded brings the load when the station opens again. Heat stops begin about 11 a.m. and stations open
 * at 6 a.m. (Powell Tribune on Wyoming receiving stations, 2020): 19 h, and some to spare.
 */
const LONGEST_TRIP_MIN: Minutes = 20 * 60;
/** Tickets are sometimes sent in a bunch at the end of a shift, or after such a night. */
const LATEST_TICKET_MIN: Minutes = LONGEST_TRIP_MIN;

interface Pace {
  shortestCycleMin: Minutes;
}

/**
 * The same step said again belongs to the same load for so many shortest cycles. Long in the line, and counted from the
 * newest count there: lines of hours happen when a piler breaks. A load too few heals when its ticket comes; a load too
 * many would stay.
 */
const REPEAT_CYCLES: Record<LoadedStep, number> = {
  'left-field': 2,
  'joined-line': 8,
  'first-weighed': 4,
  dumped: 1,
  'second-weighed': 1,
};

/** After the load came off, a step of it may still come in late; a new "loaded" is believed much sooner. */
const lateAllowanceMin = (step: LoadedStep, pace: Pace): Minutes =>
  step === 'left-field' ? pace.shortestCycleMin / 3 : pace.shortestCycleMin;

/** The same step once more while the load is still on the truck. */
const isSaidAgain = (load: Load, step: LoadedStep, toldMs: EpochMs, atMs: EpochMs, pace: Pace): boolean => {
  const allowedMin = REPEAT_CYCLES[step] * pace.shortestCycleMin;
  if (step !== 'joined-line') return minutesBetween(toldMs, atMs) < allowedMin;
  const stillInLine = furthestStep(load) === loadedSteps.indexOf(step);
  return stillInLine
    ? minutesBetween(load.inLineMs ?? toldMs, atMs) < allowedMin
    : minutesBetween(newestStampMs(load), atMs) < pace.shortestCycleMin;
};

/** The same step once more after the load came off: pressed twice, or written a little late. */
const isSaidLate = (
  step: LoadedStep,
  toldMs: EpochMs,
  atMs: EpochMs,
  emptyMs: EpochMs | null,
  pace: Pace,
): boolean => {
  if (minutesBetween(toldMs, atMs) >= pace.shortestCycleMin) return false;
  // The truck said that it was empty since: only the dump is still told long after that.
  return (
    emptyMs === null ||
    step === 'dumped' ||
    minutesBetween(emptyMs, atMs) < lateAllowanceMin('left-field', pace)
  );
};

/**
 * Does this step belong to the truck's last load, rather than to a new one?
 * `emptyMs` is when the truck last said that it was empty: a loaded step after that is a new load.
 */
export const belongsTo = (
  load: Load,
  step: LoadedStep,
  atMs: EpochMs,
  emptyMs: EpochMs | null,
  pace: Pace,
): boolean => {
  const told = load.stamps[step];
  const saidEmptySince = emptyMs !== null && emptyMs > load.startMs;
  if (told)
    return hasEnded(load)
      ? isSaidLate(step, told.atMs, atMs, saidEmptySince ? emptyMs : null, pace)
      : isSaidAgain(load, step, told.atMs, atMs, pace);
  const end = endedMs(load);
  if (end !== null) {
    // The dump is often told after the second weight; everything else after "empty" is a new round.
    if (saidEmptySince && step !== 'dumped') return false;
    return minutesBetween(end, atMs) < lateAllowanceMin(step, pace);
  }
  if (loadedSteps.indexOf(step) > furthestStep(load))
    return minutesBetween(load.startMs, atMs) < LONGEST_TRIP_MIN;
  return minutesBetween(newestStampMs(load), atMs) < pace.shortestCycleMin;
};

const awaitsTicket = (load: Load, atMs: EpochMs): boolean =>
  load.ticket === null &&
  load.startMs <= atMs &&
  minutesBetween(newestStampMs(load), atMs) < LATEST_TICKET_MIN;

/** From joining the line to the second weight it takes at least so long: the dump alone is some 5 min, and two scales. */
const FASTEST_VISIT_MIN: Minutes = 10;

/** Reached the station, as far as anybody said. */
const atStation = (load: Load): boolean => furthestStep(load) > 0;

/** Can have been weighed out by then. Drivers who have just joined the line send the ticket of the load before. */
const canBeWeighedOut = (load: Load, atMs: EpochMs): boolean =>
  furthestStep(load) > loadedSteps.indexOf('joined-line') ||
  (atStation(load) && minutesBetween(newestStampMs(load), atMs) >= FASTEST_VISIT_MIN);

/** "In line", or the first word of the load, may be told so long after the first weight. */
const TOLD_AFTER_MIN: Minutes = 15;

/** On the truck, and in the line if that was told, when it was first weighed. */
const wasWeighed = ({ startMs, stamps }: Load, firstWeighedMs: EpochMs): boolean =>
  Math.max(startMs, stamps['joined-line']?.atMs ?? startMs) <= addMinutes(firstWeighedMs, TOLD_AFTER_MIN);

/**
 * The load that a ticket closes. If it tells the first weight: the newest load without a ticket that was on the truck
 * then, however short the visit. Else the newest one without a ticket that can have been weighed out, or one that has
 * reached the station, or the one under way: a truck that has just left the field full still speaks of the load before.
 */
export const loadOfTicket = (
  loads: readonly Load[],
  { atMs, firstWeighedMs }: { atMs: EpochMs; firstWeighedMs: EpochMs | null },
): Load | undefined => {
  const recent = onTruckSince(loads, addMinutes(atMs, 0 - LATEST_TICKET_MIN));
  const open = recent.filter((load) => awaitsTicket(load, atMs));
  const weighed =
    firstWeighedMs === null ? undefined : open.findLast((load) => wasWeighed(load, firstWeighedMs));
  return (
    weighed ?? open.findLast((load) => canBeWeighedOut(load, atMs)) ?? open.findLast(atStation) ?? open.at(-1)
  );
};
