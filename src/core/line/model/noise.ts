/** How much arrivals scatter around the usual ones: from day to day, within a day, and truck by truck. */
import { overlapMin } from './arrivals.ts';
import type { JoinCount } from './arrivals.ts';
import { LEVEL_SD } from './usual-day.ts';
import type { UsualDay } from './usual-day.ts';

/** Days, or spans, that the default noise counts for. Grade: chosen. */
const NOISE_PRIOR = 8;
/** The default noise from day to day, once there is something to learn from. Grade: chosen. */
const LEARNED_DAY_SD = 0.2;
/** The least noise. Grade: chosen: on a few dozen spans a station looks more regular than it is. */
const LEAST_SD = 0.1;
/** The least dispersion: even fleets that are loaded one after another scatter so much. Grade: chosen. */
const LEAST_DISPERSION = 0.4;
/** Variance of a count, trucks², because its two joins were reported late. Grade: chosen. */
const LATE_VARIANCE = 2;
/** Expected trucks of a span: with fewer a count shows nothing of the noise, with more the level has drifted. Grade: chosen. */
const SPAN_TRUCKS = { fewest: 2, short: 15 };

type Noise = Pick<UsualDay, 'daySd' | 'levelSd' | 'dispersion'>;

/**
 * By moments. `dispersion`: variance over mean of the trucks that join in a short time; 1 for Poisson arrivals, less for
 * fleets that are loaded one after another. `daySd`, `levelSd`: scatter beyond that, from day to day and within the day.
 */
export const learnNoise = (counts: readonly JoinCount[], rates: readonly number[]): Noise => {
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
