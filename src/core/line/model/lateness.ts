/**
 * How late "in line" is told: by how its time is known, and by the habit of the crew, which is learned. Exponential with
 * these means; each path of the filter supposes one habit, so that a path whose habit fits outlives the others.
 */
import { median } from '../../statistics.ts';
import type { Minutes } from '../../units.ts';
import type { Visit } from '../types.ts';

/** Habits of crews that are tried: minutes late, on average, of a message that tells no time. Grade: chosen. */
export const HABITS_MIN: readonly Minutes[] = [0.3, 1, 2, 4, 8];

/** How likely each habit is, as long as nothing is learned: most write at once. Grade: chosen. */
export const HABITS_PRIOR: readonly number[] = [0.25, 0.35, 0.2, 0.13, 0.07];

/** Of a time in the driver's own words; half of them round to five minutes. Grade: chosen. */
const SAID_LATE_MIN: Minutes = 0.5;
/** Of a message from a phone without network, against the habit: it may have been written when it had network again. Grade: chosen. */
const HELD_UP_RATIO = 2;
/** Of a join that was only inferred. Grade: chosen. */
const INFERRED_LATE_MIN: Minutes = 10;

/** How the time of a join is known. */
export type JoinTelling = 'sent' | 'time-said' | 'held-up' | 'inferred';

export const tellingOf = ({ joinedStated, joinedTelling }: Visit): JoinTelling =>
  joinedStated ? (joinedTelling ?? 'sent') : 'inferred';

/** Mean lateness of a join that is told so, by a crew of that habit. */
export const lateMinOf = (telling: JoinTelling, habitMin: Minutes): Minutes => {
  switch (telling) {
    case 'sent':
      return habitMin;
    case 'time-said':
      return SAID_LATE_MIN;
    case 'held-up':
      return HELD_UP_RATIO * habitMin;
    case 'inferred':
      return INFERRED_LATE_MIN;
  }
};

/** Mean of the habits, each as likely as its share. */
export const meanHabitMin = (shares: readonly number[]): Minutes =>
  HABITS_MIN.reduce((sum, habitMin, at) => sum + habitMin * (shares[at] ?? 0), 0);

/** The days' evidence counts for less than it says: the paths are few, and their log-likelihood is noisy. Grade: chosen. */
const EVIDENCE_WEIGHT = 0.5;
/** One odd day moves a habit's log-likelihood no further than this against the middle one. Grade: chosen. */
const MOST_EVIDENCE = 3;
/** A habit is never quite ruled out. Grade: chosen. */
const LEAST_SHARE = 0.02;

/** Shares of the habits after days with these log-likelihoods, by habit. */
export const likelyHabits = (days: readonly (readonly number[])[]): number[] => {
  const shown = days.map((day) => {
    const middle = median(day) ?? 0;
    return day.map((log) => Math.max(-MOST_EVIDENCE, Math.min(MOST_EVIDENCE, log - middle)));
  });
  const logs = HABITS_MIN.map(
    (_, at) =>
      Math.log(HABITS_PRIOR[at] ?? 0) + EVIDENCE_WEIGHT * shown.reduce((sum, day) => sum + (day[at] ?? 0), 0),
  );
  const most = Math.max(...logs);
  const shares = logs.map((log) => LEAST_SHARE + Math.exp(log - most));
  const sum = shares.reduce((a, b) => a + b, 0);
  return shares.map((share) => share / sum);
};
