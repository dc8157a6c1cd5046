/**
 * Serials as an odometer of the scale. Each scale prints from its own roll, and a ticket does not say which scale it
 * came from. Only a serial that goes down in order of time shows that there are two rolls; one that jumps up is a gap of
 * unknown count: a new block of tickets, or a scale that was not seen for long.
 */
import { median } from '../../statistics.ts';
import type { Minutes } from '../../units.ts';

export interface SerialReading {
  serial: number;
  weighedMin: Minutes;
}

/** Share of the serials that are not void. Grade: chosen: two in a hundred are. */
export const NOT_VOID = 0.98;

/** Serials that may be ahead at once, whatever the time: the clocks of two tickets differ. Grade: chosen. */
const SERIALS_AHEAD = 10;
/** Two tickets of one roll may seem to be in the wrong order by so much: their times are rough. Grade: chosen. */
const ROUGHLY = { serials: 10, min: 20 };
/** A roll has ended when so many tickets in so long a time came from others. Grade: chosen. */
const ENDED = { tickets: 8, min: 90 };

export interface OnRoll<R extends SerialReading> {
  reading: R;
  roll: number;
  /** The ticket before it on the roll; null = it is the first, or its order is not sure. */
  last: R | null;
}

/** Readings in order of time, each on its roll. */
export const onRolls = <R extends SerialReading>(
  readings: readonly R[],
): { rolls: R[][]; placed: OnRoll<R>[] } => {
  const rolls: R[][] = [];
  const newest: number[] = [];
  const placed = readings.map((reading, at): OnRoll<R> => {
    const runs = rolls.map((roll, number) => {
      const last = roll.at(-1);
      const silent = at - (newest[number] ?? 0);
      return last === undefined || (silent > ENDED.tickets && isLongAgo(last, reading)) ? null : last;
    });
    const found = rollOf(runs, reading);
    const roll = found < 0 ? rolls.push([]) - 1 : found;
    const own = rolls[roll] ?? [];
    const last = own.at(-1) ?? null;
    newest[roll] = at;
    if (last !== null && reading.serial <= last.serial) return { reading, roll, last: null };
    own.push(reading);
    return { reading, roll, last };
  });
  return { rolls, placed };
};

const isLongAgo = (last: SerialReading, now: SerialReading): boolean =>
  now.weighedMin - last.weighedMin > ENDED.min;

/** Index of the roll that the serial follows most closely, by the newest reading of each; -1 = of none. */
export const rollOf = (
  newest: readonly (SerialReading | null)[],
  { serial, weighedMin }: SerialReading,
): number => {
  let best = -1;
  let bestSerial = -Infinity;
  newest.forEach((last, index) => {
    if (last === null || last.serial <= bestSerial) return;
    const rough = weighedMin - last.weighedMin < ROUGHLY.min ? ROUGHLY.serials : 0;
    if (last.serial - rough > serial) return;
    best = index;
    bestSerial = last.serial;
  });
  return best;
};

/** Pairs of tickets closer than this show no rate. Grade: chosen. */
const SHORTEST_PAIR_MIN = 5;
/** Fewer pairs show no usual rate. Grade: chosen. */
const FEWEST_PAIRS = 4;
/** A rate so many times the usual one is a gap. Grade: chosen. */
const MOST_OF_USUAL = 3;

/** Trucks a minute, by serials, beyond which there must be a gap; `mostPerMin` as long as too little was seen. */
export const mostBelievable = (rolls: readonly (readonly SerialReading[])[], mostPerMin: number): number => {
  const rates = rolls.flatMap((roll) =>
    roll.slice(1).flatMap((to, at) => {
      const from = roll[at];
      const min = to.weighedMin - (from?.weighedMin ?? NaN);
      return from !== undefined && min >= SHORTEST_PAIR_MIN ? [(to.serial - from.serial) / min] : [];
    }),
  );
  return rates.length < FEWEST_PAIRS
    ? mostPerMin
    : Math.min(mostPerMin, MOST_OF_USUAL * (median(rates) ?? mostPerMin));
};

export const isGap = (count: number, min: Minutes, mostPerMin: number): boolean =>
  count > SERIALS_AHEAD + mostPerMin * Math.max(0, min);

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
/** A roll of which nothing was seen for so long before or after may not be in use. Grade: chosen. */
const IN_USE_MIN = 90;

const isInUse = (roll: readonly SerialReading[], fromMin: Minutes, toMin: Minutes): boolean =>
  roll.some(({ weighedMin }) => weighedMin > fromMin - IN_USE_MIN && weighedMin < toMin + IN_USE_MIN);

/**
 * Trucks that all scales weighed between two tickets of one roll: counted on that roll, estimated on the others.
 * `sd`: of the sum; large if another roll lacks a ticket on either side. Null = there is a gap in the serials.
 */
export const servedBetween = (
  rolls: readonly (readonly SerialReading[])[],
  own: readonly SerialReading[],
  from: SerialReading,
  to: SerialReading,
  mostPerMin: number,
): { count: number; sd: number } | null => {
  const counted = NOT_VOID * (to.serial - from.serial);
  const min = to.weighedMin - from.weighedMin;
  if (isGap(counted, min, mostPerMin)) return null;
  let count = counted;
  let variance = (SERVED_SD.own.least + SERVED_SD.own.share * counted) ** 2;
  for (const roll of rolls) {
    if (roll === own || !isInUse(roll, from.weighedMin, to.weighedMin)) continue;
    const begin = serialAt(roll, from.weighedMin);
    const end = serialAt(roll, to.weighedMin);
    const reckoned = NOT_VOID * (end.serial - begin.serial);
    const sure = begin.sure && end.sure && !isGap(reckoned, min, mostPerMin);
    const least = OTHER_LEAST * counted;
    count += sure ? reckoned : isGap(reckoned, min, mostPerMin) ? least : Math.max(reckoned, least);
    const { least: sd, share } = sure ? SERVED_SD.otherKnown : SERVED_SD.otherUnknown;
    variance += (sd + share * (sure ? reckoned : counted)) ** 2;
  }
  return { count, sd: Math.sqrt(variance) };
};
