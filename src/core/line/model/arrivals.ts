/** How many trucks usually come, by half hour, from the serials of the operation's own tickets. */
import type { Minutes } from '../../units.ts';
import { BIN_MIN, DAY_BINS } from './usual-day.ts';
import type { UsualDay } from './usual-day.ts';
import { isGap, mostBelievable, onRolls, servedBetween } from './rolls.ts';
import type { SerialReading } from './rolls.ts';
import { lastHeardMs, tripsOf } from './trips.ts';
import type { LineObservations } from '../types.ts';

/** `count` trucks joined within these stretches of usual-day time. */
export interface JoinCount {
  spans: readonly { fromMin: Minutes; toMin: Minutes }[];
  count: number;
  /** The day of the later ticket. */
  day: number;
}

interface SerialOfDay extends SerialReading {
  joinedMin: Minutes;
  day: number;
}

/** Believable trucks in a minute, over all pilers. Grade: chosen: six pilers at their usual pace. */
const MOST_PER_MIN = 1.2;
/** Days that the mean rate counts for, half hour by half hour. Grade: chosen. */
const PRIOR_DAYS = 1.5;
/** With less seen of a station's arrivals they are not learned. Grade: chosen. */
const FEWEST_MIN_SEEN: Minutes = 120;
/** Grade: chosen: the rates no longer move by then. */
const EM_ROUNDS = 30;
export const ticketsOf = (days: readonly LineObservations[], profile: UsualDay): SerialOfDay[] =>
  days.flatMap((seen, day) => {
    if (seen.opening === null) return [];
    return tripsOf(seen, seen.opening, lastHeardMs(seen), profile)
      .flatMap(({ joinedMin, weighedMin, serial }) =>
        joinedMin === null || weighedMin === null || serial === null
          ? []
          : // All days on one time axis, so that rolls can be followed overnight.
            { joinedMin, weighedMin: weighedMin + day * DAY_BINS * BIN_MIN, serial, day },
      )
      .sort((a, b) => a.weighedMin - b.weighedMin);
  });

/**
 * The line is first come, first served, so the serials of two of our trucks show how many joined between them. A roll
 * of serials continues overnight; what else is weighed at night cannot be told from a gap, and so is left out.
 */
export const countsOf = (days: readonly LineObservations[], profile: UsualDay): JoinCount[] => {
  const { rolls, placed } = onRolls(ticketsOf(days, profile));
  const most = mostBelievable(rolls, MOST_PER_MIN);
  return placed.flatMap(({ reading: to, roll, last: from }) => {
    if (from === null || to.day - from.day > 1) return [];
    const sameDay = rolls.filter((other) => other.some(({ day }) => day === to.day));
    const isOvernight = from.day !== to.day;
    // What the other rolls served overnight cannot be estimated.
    if (isOvernight && (sameDay.length > 1 || isNightGap(from, to, most))) return [];
    const served = servedBetween(sameDay, rolls[roll] ?? [], from, to, most);
    return served === null ? [] : [{ spans: spansOf(from, to), count: served.count, day: to.day }];
  });
};

/** Overnight, this much of the time belongs to a day: before the first truck of ours and after the last. Grade: chosen. */
const NIGHT_MIN: Minutes = 60;

const isNightGap = (from: SerialOfDay, to: SerialOfDay, mostPerMin: number): boolean =>
  isGap(to.serial - from.serial, NIGHT_MIN, mostPerMin);

const spansOf = (from: SerialOfDay, to: SerialOfDay): JoinCount['spans'] =>
  from.day === to.day
    ? [{ fromMin: from.joinedMin, toMin: to.joinedMin }]
    : [
        { fromMin: from.joinedMin, toMin: DAY_BINS * BIN_MIN },
        { fromMin: 0, toMin: to.joinedMin },
      ];

export const overlapMin = ({ spans }: JoinCount, bin: number): Minutes =>
  spans.reduce(
    (sum, { fromMin, toMin }) =>
      sum + Math.max(0, Math.min(toMin, (bin + 1) * BIN_MIN) - Math.max(fromMin, bin * BIN_MIN)),
    0,
  );

/**
 * Rates by half hour from counts over unequal spans: expectation-maximisation for Poisson counts, smoothed in every
 * round (Silverman, Jones, Wilson & Nychka, J. R. Stat. Soc. B 52(2), 1990), with a gamma prior of `PRIOR_DAYS` days
 * at the mean rate. Hours at which none of our trucks was ever seen get less (`unseenShare`), and never nothing.
 */
export const learnArrivals = (
  counts: readonly JoinCount[],
  on: readonly boolean[],
  fresh: UsualDay,
  days: number,
): number[] => {
  const bins = on.map((_, bin) => bin);
  const overlaps = counts.map((count) => bins.map((bin) => (on[bin] ? overlapMin(count, bin) : 0)));
  const minutes = overlaps.reduce((sum, row) => sum + row.reduce((a, b) => a + b, 0), 0);
  if (minutes < FEWEST_MIN_SEEN) return [...fresh.arrivalsPerMin];
  const meanRate = counts.reduce((sum, { count }) => sum + count, 0) / minutes;
  const priorMin = PRIOR_DAYS * BIN_MIN;
  let rates = bins.map((bin) => (on[bin] ? meanRate : 0));
  for (let round = 0; round < EM_ROUNDS; round += 1) {
    const credited = bins.map(() => meanRate * priorMin);
    const exposed = bins.map(() => priorMin);
    overlaps.forEach((row, index) => {
      const expected = row.reduce((sum, min, bin) => sum + min * (rates[bin] ?? 0), 0);
      if (expected <= 0) return;
      row.forEach((min, bin) => {
        const share = (min * (rates[bin] ?? 0)) / expected;
        credited[bin] = (credited[bin] ?? 0) + share * (counts[index]?.count ?? 0);
        exposed[bin] = (exposed[bin] ?? 0) + min;
      });
    });
    rates = smoothed(
      bins.map((bin) => (on[bin] ? (credited[bin] ?? 0) / (exposed[bin] ?? 1) : 0)),
      on,
    );
  }
  return rates.map((rate, bin) => (on[bin] ? rate : meanRate * unseenShare(on, bin, days)));
};

/** Of the mean rate, while few days were seen: within two hours of hours at which ours came, and at the others. Grade: chosen. */
const UNSEEN = { near: 0.5, far: 0.5, nearBins: 4 };

/**
 * That none of ours came at an hour says little of the others. Near the hours of ours it stays so; far from them each day
 * makes it less.
 */
const unseenShare = (on: readonly boolean[], bin: number, days: number): number => {
  const isNear = on.some((is, other) => is && Math.abs(other - bin) <= UNSEEN.nearBins);
  const isStillOpen = PRIOR_DAYS / (PRIOR_DAYS + days);
  return isNear ? UNSEEN.near * Math.max(0.3, isStillOpen) : UNSEEN.far * isStillOpen;
};

/** Each half hour takes a quarter from each neighbour that is on. */
const smoothed = (rates: readonly number[], on: readonly boolean[]): number[] =>
  rates.map((rate, bin) => {
    const side = (at: number): number => (on[at] ? (rates[at] ?? rate) : rate);
    return on[bin] ? 0.5 * rate + 0.25 * (side(bin - 1) + side(bin + 1)) : 0;
  });

/** Half hours at which trucks of ours were in the line on some day, and the one before the first of these. */
export const hoursOn = (tickets: readonly SerialOfDay[]): boolean[] => {
  const joined = tickets.map(({ joinedMin }) => joinedMin);
  const first = Math.floor(Math.min(...joined) / BIN_MIN) - 1;
  const last = Math.floor(Math.max(...joined) / BIN_MIN);
  return Array.from({ length: DAY_BINS }, (_, bin) => bin >= first && bin <= last);
};
