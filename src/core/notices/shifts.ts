import { isWork } from '../book/kinds.ts';
import { hasHappened } from '../harvest/chapters.ts';
import { ON_SHIFT } from '../harvest/harvest.ts';
import type { Harvest } from '../harvest/harvest.ts';
import type { CrewMember } from '../roster.ts';
import { MS_PER_HOUR, addMinutes } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { AT_WORK_MIN, OFF_SHIFT_MIN } from './assumptions.ts';

/** The harvest at one moment, and what o'clock that is. */
export interface Moment {
  harvest: Harvest;
  clock: ZoneClock;
  nowMs: EpochMs;
}

const backFrom = (nowMs: EpochMs, minutes: Minutes) => ({
  fromMs: addMinutes(nowMs, 0 - minutes),
  toMs: nowMs,
});

/** By the own report of the last hours, or by "on shift". */
export const isAtWork = ({ harvest, nowMs }: Moment, { id }: CrewMember): boolean =>
  hasHappened(harvest, backFrom(nowMs, AT_WORK_MIN), (fact) => fact.by === id && isWork(fact)) ||
  hasHappened(
    harvest,
    backFrom(nowMs, OFF_SHIFT_MIN),
    (fact) => fact.kind === 'shift-told' && fact.person === id && fact.off === false,
  );

/** Hours since the listed shift began; null = there is none, or it is not on. */
export const hoursIntoShift = (
  { harvest, clock, nowMs }: Moment,
  { shiftHours }: CrewMember,
): number | null => {
  if (shiftHours === null) return null;
  const { hour, minute } = clock.wall(harvest.roster.zone, nowMs);
  const [fromHour, toHour] = shiftHours;
  const into = (hour + minute / 60 - fromHour + 24) % 24;
  return into < (toHour - fromHour + 24) % 24 || (fromHour === 0 && toHour === 24) ? into : null;
};

/** "Off shift" was said, and neither is the time for it over nor has the listed shift begun since. */
const saidOff = (moment: Moment, person: CrewMember): boolean => {
  const { offSinceMs } = moment.harvest.shifts.get(person.id) ?? ON_SHIFT;
  if (offSinceMs === null || moment.nowMs >= addMinutes(offSinceMs, OFF_SHIFT_MIN)) return false;
  const into = hoursIntoShift(moment, person);
  return into === null || moment.nowMs - offSinceMs <= into * MS_PER_HOUR;
};

/** The person is off shift and did not ask for notices meanwhile: no notice by direct message, and no reminder. */
export const isOffShift = (moment: Moment, person: CrewMember): boolean => {
  const { noticesWhenOff } = moment.harvest.shifts.get(person.id) ?? ON_SHIFT;
  if (noticesWhenOff) return false;
  if (saidOff(moment, person)) return true;
  return person.shiftHours !== null && hoursIntoShift(moment, person) === null && !isAtWork(moment, person);
};
