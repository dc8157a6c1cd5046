import type { PersonId } from '../roster.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { OFF_SHIFT_MIN } from './assumptions.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { ON_SHIFT } from '../harvest/harvest.ts';

/** The person is off shift and did not ask for notices meanwhile: no notice by direct message, and no reminder. */
export const isOffShift = (day: Pick<Harvest, 'shifts'>, person: PersonId, nowMs: EpochMs): boolean => {
  const { offSinceMs, noticesWhenOff } = day.shifts.get(person) ?? ON_SHIFT;
  return offSinceMs !== null && !noticesWhenOff && nowMs < addMinutes(offSinceMs, OFF_SHIFT_MIN);
};
