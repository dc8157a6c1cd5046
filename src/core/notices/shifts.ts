import type { PersonId } from '../roster.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { ON_SHIFT } from '../harvest/harvest.ts';

/**
 * "Off shift" ends by itself, so that nobody who forgot to say "on shift" misses the next stop: ten hours off duty, as
 * between two shifts of a truck driver (49 CFR 395.3).
 */
const OFF_MIN: Minutes = 10 * 60;

/** The person said to be off shift, and did not ask for notices then: no notice by direct message, and no reminder. */
export const isOffShift = (day: Pick<Harvest, 'shifts'>, person: PersonId, nowMs: EpochMs): boolean => {
  const { offSinceMs, noticesWhenOff } = day.shifts.get(person) ?? ON_SHIFT;
  return offSinceMs !== null && !noticesWhenOff && nowMs < addMinutes(offSinceMs, OFF_MIN);
};
