/**
 * Serials as an odometer of the scale. Each scale prints from its own roll, and a ticket does not say which scale it
 * came from: a serial belongs to the roll that it follows most closely at a believable rate, else it begins a new roll.
 */
import type { Minutes } from '../../units.ts';

export interface SerialReading {
  serial: number;
  weighedMin: Minutes;
}

/** Share of the serials that are not void. Grade: chosen: two in a hundred are. */
export const NOT_VOID = 0.98;

/** Serials that may be ahead at once, whatever the time: the clocks of two tickets differ. Grade: chosen. */
const SERIALS_AHEAD = 10;

/** Index of the roll, or -1. `mostPerMin`: the most trucks that the station can weigh. */
export const rollOf = (
  rolls: readonly (readonly SerialReading[])[],
  { serial, weighedMin }: SerialReading,
  mostPerMin: number,
): number => {
  let best = -1;
  let bestSerial = -Infinity;
  rolls.forEach((roll, index) => {
    const last = roll.at(-1);
    if (last === undefined) return;
    const ahead = serial - last.serial;
    const believable = ahead > 0 && ahead <= SERIALS_AHEAD + mostPerMin * (weighedMin - last.weighedMin);
    if (!believable || last.serial <= bestSerial) return;
    best = index;
    bestSerial = last.serial;
  });
  return best;
};

/** Serial of the roll at an instant, interpolated between its tickets; beyond its ends constant, and not `sure`. */
const serialAt = (roll: readonly SerialReading[], atMin: Minutes): { serial: number; sure: boolean } => {
  const after = roll.findIndex(({ weighedMin }) => weighedMin >= atMin);
  const next = roll[after];
  const last = after < 0 ? roll.at(-1) : roll[after - 1];
  if (next === undefined || last === undefined) return { serial: (next ?? last)?.serial ?? 0, sure: false };
  const share = (atMin - last.weighedMin) / Math.max(0.1, next.weighedMin - last.weighedMin);
  return { serial: last.serial + share * (next.serial - last.serial), sure: true };
};

/** Standard deviations of what was served between two tickets: at least so many trucks, and a share. Grade: chosen. */
const SERVED_SD = {
  own: { least: 1.6, share: 0.07 },
  otherKnown: { least: 0.5, share: 0.25 },
  /** As a share of what this roll counted. */
  otherUnknown: { least: 1, share: 0.5 },
};
/** Of what this roll counted, the least that another one served meanwhile. Grade: chosen. */
const OTHER_LEAST = 0.4;

/**
 * Trucks that all scales weighed between two tickets of one roll: counted on that roll, estimated on the others.
 * `sd`: of the sum; large if another roll lacks a ticket on either side.
 */
export const servedBetween = (
  rolls: readonly (readonly SerialReading[])[],
  own: readonly SerialReading[],
  from: SerialReading,
  to: SerialReading,
): { count: number; sd: number } => {
  const counted = NOT_VOID * (to.serial - from.serial);
  let count = counted;
  let variance = (SERVED_SD.own.least + SERVED_SD.own.share * counted) ** 2;
  for (const roll of rolls) {
    if (roll === own) continue;
    const begin = serialAt(roll, from.weighedMin);
    const end = serialAt(roll, to.weighedMin);
    const reckoned = NOT_VOID * (end.serial - begin.serial);
    const sure = begin.sure && end.sure;
    count += sure ? reckoned : Math.max(reckoned, OTHER_LEAST * counted);
    const { least, share } = sure ? SERVED_SD.otherKnown : SERVED_SD.otherUnknown;
    variance += (least + share * (sure ? reckoned : counted)) ** 2;
  }
  return { count, sd: Math.sqrt(variance) };
};
