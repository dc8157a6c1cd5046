/** Learns a station's usual day from past days of the operation's own tickets. */
import { minutesBetween } from '../../units.ts';
import type { EpochMs, Minutes } from '../../units.ts';
import { mean, quantile } from '../../statistics.ts';
import { filterOf } from '../wait-forecast.ts';
import { BIN_MIN, DAY_BINS, LEVEL_SD, USUAL_BLOCK_MIN, defaultProfile } from './usual-day.ts';
import type { Particle } from './particle.ts';
import type { UsualDay, UsualWait } from './usual-day.ts';
import { rollOf, servedBetween } from './rolls.ts';
import type { SerialReading } from './rolls.ts';
import { timelineOf, tripsOf } from './timeline.ts';
import type { LineObservations } from '../types.ts';

/** `count` trucks joined within these stretches of usual-day time. */
interface JoinCount {
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
/** Fewer waits, or times in the yard, are not learned from. Grade: chosen. */
const FEWEST_WAITS = 8;
/** Grade: chosen: the rates no longer move by then. */
const EM_ROUNDS = 30;
/** Days on which the returning share is tried. Grade: chosen, for the time that it takes. */
const RETURNING_DAYS = 15;

/** `days` in order of time, each with everything that was heard of it. */
export const learnProfile = (days: readonly LineObservations[], usualPilers: number): UsualDay => {
  const fresh = defaultProfile(usualPilers);
  if (days.length === 0) return fresh;
  const counts = countsOf(days, fresh);
  const arrivalsPerMin = learnArrivals(counts, hoursOn(ticketsOf(days, fresh)), fresh);
  const profile = {
    ...fresh,
    ...learnNoise(counts, arrivalsPerMin),
    arrivalsPerMin,
    yardMin: learnYard(days) ?? fresh.yardMin,
    usual: learnUsual(days, fresh),
    days: days.length,
  };
  const first = explained(days, profile);
  return explained(days, { ...first, returning: likeliestReturning(days.slice(-RETURNING_DAYS), first) });
};

const lastMs = ({ visits, opening }: LineObservations): EpochMs =>
  Math.max(opening ?? 0, ...visits.map((visit) => visit.heardMs));

const ticketsOf = (days: readonly LineObservations[], profile: UsualDay): SerialOfDay[] =>
  days.flatMap((seen, day) => {
    if (seen.opening === null) return [];
    return tripsOf(seen, seen.opening, lastMs(seen), profile)
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
 * of serials continues overnight.
 */
const countsOf = (days: readonly LineObservations[], profile: UsualDay): JoinCount[] => {
  const rolls: SerialOfDay[][] = [];
  for (const ticket of ticketsOf(days, profile)) {
    const found = rollOf(rolls, ticket, MOST_PER_MIN);
    if (found < 0) rolls.push([ticket]);
    else rolls[found]?.push(ticket);
  }
  return rolls.flatMap((roll) =>
    roll.slice(1).flatMap((to, index) => {
      const from = roll[index];
      if (from === undefined || to.day - from.day > 1) return [];
      const sameDay = rolls.filter((other) => other.some(({ day }) => day === to.day));
      // What the other rolls served overnight cannot be estimated.
      if (from.day !== to.day && sameDay.length > 1) return [];
      return { spans: spansOf(from, to), count: servedBetween(sameDay, roll, from, to).count, day: to.day };
    }),
  );
};

const spansOf = (from: SerialOfDay, to: SerialOfDay): JoinCount['spans'] =>
  from.day === to.day
    ? [{ fromMin: from.joinedMin, toMin: to.joinedMin }]
    : [
        { fromMin: from.joinedMin, toMin: DAY_BINS * BIN_MIN },
        { fromMin: 0, toMin: to.joinedMin },
      ];

const overlapMin = ({ spans }: JoinCount, bin: number): Minutes =>
  spans.reduce(
    (sum, { fromMin, toMin }) =>
      sum + Math.max(0, Math.min(toMin, (bin + 1) * BIN_MIN) - Math.max(fromMin, bin * BIN_MIN)),
    0,
  );

/**
 * Rates by half hour from counts over unequal spans: expectation-maximisation for Poisson counts, smoothed in every
 * round (Silverman, Jones, Wilson & Nychka, J. R. Stat. Soc. B 52(2), 1990), with a gamma prior of `PRIOR_DAYS` days
 * at the mean rate. The rate is 0 at hours at which none of our trucks was ever seen.
 */
const learnArrivals = (counts: readonly JoinCount[], on: readonly boolean[], fresh: UsualDay): number[] => {
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
  return rates;
};

/** Each half hour takes a quarter from each neighbour that is on. */
const smoothed = (rates: readonly number[], on: readonly boolean[]): number[] =>
  rates.map((rate, bin) => {
    const side = (at: number): number => (on[at] ? (rates[at] ?? rate) : rate);
    return on[bin] ? 0.5 * rate + 0.25 * (side(bin - 1) + side(bin + 1)) : 0;
  });

/** Half hours at which trucks of ours were in the line on some day, and the one before the first of these. */
const hoursOn = (tickets: readonly SerialOfDay[]): boolean[] => {
  const joined = tickets.map(({ joinedMin }) => joinedMin);
  const first = Math.floor(Math.min(...joined) / BIN_MIN) - 1;
  const last = Math.floor(Math.max(...joined) / BIN_MIN);
  return Array.from({ length: DAY_BINS }, (_, bin) => bin >= first && bin <= last);
};

const learnYard = (days: readonly LineObservations[]): Minutes | null => {
  const yards = days
    .flatMap(({ visits }) => visits)
    .flatMap(({ firstWeighedMs, secondWeighedMs }) =>
      firstWeighedMs === null || secondWeighedMs === null
        ? []
        : minutesBetween(firstWeighedMs, secondWeighedMs),
    )
    .sort((a, b) => a - b);
  return yards.length < FEWEST_WAITS ? null : quantile(yards, 0.5);
};

const learnUsual = (days: readonly LineObservations[], profile: UsualDay): (UsualWait | null)[] => {
  const waits = days.flatMap((seen) => {
    if (seen.opening === null) return [];
    return tripsOf(seen, seen.opening, lastMs(seen), profile).flatMap(({ joinedMin, weighedMin }) =>
      joinedMin === null || weighedMin === null ? [] : { joinedMin, waitMin: weighedMin - joinedMin },
    );
  });
  return Array.from({ length: (DAY_BINS * BIN_MIN) / USUAL_BLOCK_MIN }, (_, block) => {
    const of = waits
      .filter(({ joinedMin }) => Math.floor(joinedMin / USUAL_BLOCK_MIN) === block)
      .map(({ waitMin }) => waitMin)
      .sort((a, b) => a - b);
    if (of.length < FEWEST_WAITS) return null;
    return { medianMin: quantile(of, 0.5), lowMin: quantile(of, 0.1), highMin: quantile(of, 0.9) };
  });
};

interface DayEnd {
  evidence: number;
  logMinPerTruck: number;
  open: number[];
  line: number[];
}

const endOf = (seen: LineObservations, profile: UsualDay): DayEnd => {
  const timeline = timelineOf(seen, profile, lastMs(seen));
  const nowMin = minutesBetween(timeline.openingMs, lastMs(seen));
  const { paths, evidence } = filterOf(seen, profile, timeline, nowMin);
  const byBin = (of: (particle: Particle, bin: number) => number): number[] =>
    Array.from({ length: DAY_BINS }, (_, bin) => mean(paths.map((particle) => of(particle, bin))));
  return {
    evidence,
    logMinPerTruck: mean(paths.map((particle) => -Math.log(particle.perPilerMin))),
    open: byBin((particle, bin) => Math.max(1, particle.openThen[bin] ?? 1)),
    line: byBin((particle, bin) => particle.lineThen[bin] ?? 0),
  };
};

/** Trucks that come by themselves, or go round in fleets of 50, 20, 10. Grade: chosen. */
const RETURNING = [0, 0.02, 0.05, 0.1] as const;

const likeliestReturning = (days: readonly LineObservations[], profile: UsualDay): number => {
  const tried = RETURNING.map((returning) => ({
    returning,
    evidence: mean(days.map((seen) => endOf(seen, { ...profile, returning }).evidence)),
  }));
  return tried.reduce((best, next) => (next.evidence > best.evidence ? next : best)).returning;
};

/** What explains the days best, averaged over them; one step of expectation-maximisation. */
const explained = (days: readonly LineObservations[], profile: UsualDay): UsualDay => {
  const ends = days.map((seen) => endOf(seen, profile));
  const byBin = (of: (end: DayEnd) => number[]): number[] =>
    Array.from({ length: DAY_BINS }, (_, bin) => mean(ends.map((end) => of(end)[bin] ?? 0)));
  return {
    ...profile,
    minPerTruck: Math.exp(mean(ends.map(({ logMinPerTruck }) => logMinPerTruck))),
    pilersOpen: byBin(({ open }) => open),
    usualLine: byBin(({ line }) => line),
  };
};

/** Days, or spans, that the default noise counts for. Grade: chosen. */
const NOISE_PRIOR = 8;
/** The default noise from day to day, once there is something to learn from. Grade: chosen. */
const LEARNED_DAY_SD = 0.2;
/** The least noise. Grade: chosen. */
const LEAST_SD = 0.05;
/** The least dispersion: even fleets that are loaded one after another scatter so much. Grade: chosen. */
const LEAST_DISPERSION = 0.2;
/** Variance of a count, trucks², because its two joins were reported late. Grade: chosen. */
const LATE_VARIANCE = 2;
/** Expected trucks of a span: with fewer a count shows nothing of the noise, with more the level has drifted. Grade: chosen. */
const SPAN_TRUCKS = { fewest: 2, short: 15 };

type Noise = Pick<UsualDay, 'daySd' | 'levelSd' | 'dispersion'>;

/**
 * By moments. `dispersion`: variance over mean of the trucks that join in a short time; 1 for Poisson arrivals, less for
 * fleets that are loaded one after another. `daySd`, `levelSd`: scatter beyond that, from day to day and within the day.
 */
const learnNoise = (counts: readonly JoinCount[], rates: readonly number[]): Noise => {
  const spans = counts.flatMap((count) => {
    const expected = rates.reduce((sum, rate, bin) => sum + rate * overlapMin(count, bin), 0);
    return count.spans.length === 1 && expected > SPAN_TRUCKS.fewest ? [{ ...count, expected }] : [];
  });
  const days = [...Map.groupBy(spans, ({ day }) => day).values()].map((ofDay) => {
    const expected = ofDay.reduce((sum, span) => sum + span.expected, 0);
    const ratio = ofDay.reduce((sum, span) => sum + span.count, 0) / expected;
    return { ratio, expected, spans: ofDay.map((span) => ({ ...span, expected: ratio * span.expected })) };
  });
  const within = days.flatMap((day) => day.spans);
  const dispersion = dispersionOf(within.filter(({ expected }) => expected < SPAN_TRUCKS.short));
  return {
    dispersion,
    daySd: excessSd(
      days.map(({ ratio, expected }) => ({ count: ratio * expected, expected })),
      dispersion,
      LEARNED_DAY_SD,
    ),
    levelSd: excessSd(within, dispersion, LEVEL_SD),
  };
};

interface Expected {
  count: number;
  expected: number;
}

const dispersionOf = (spans: readonly Expected[]): number => {
  const sum = spans.reduce(
    (total, { count, expected }) => total + ((count - expected) ** 2 - LATE_VARIANCE) / expected,
    NOISE_PRIOR,
  );
  return Math.min(1, Math.max(LEAST_DISPERSION, sum / (NOISE_PRIOR + spans.length)));
};

/** Standard deviation of count / expected, beyond what the dispersion of counts explains. */
const excessSd = (spans: readonly Expected[], dispersion: number, usualSd: number): number => {
  const sum = spans.reduce(
    (total, { count, expected }) => {
      const chance = (dispersion * expected + LATE_VARIANCE) / (expected * expected);
      return total + (count / expected - 1) ** 2 - chance;
    },
    NOISE_PRIOR * usualSd * usualSd,
  );
  return Math.sqrt(Math.max(LEAST_SD * LEAST_SD, sum / (NOISE_PRIOR + spans.length)));
};
