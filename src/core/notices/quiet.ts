import { isWork } from '../book/kinds.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { AT_WORK_MIN, NIGHT } from './assumptions.ts';
import { hasHappened } from '../harvest/chapters.ts';
import type { Harvest } from '../harvest/harvest.ts';
import type { CrewMember, CrewRole } from '../roster.ts';
import { hoursIntoShift, isAtWork } from './shifts.ts';
import type { Moment } from './shifts.ts';

/** It is night in the operation's zone. */
export const isNight = (clock: ZoneClock, zone: string, atMs: EpochMs): boolean => {
  const { hour } = clock.wall(zone, atMs);
  return hour >= NIGHT.fromHour || hour < NIGHT.toHour;
};

/** It is night, nobody is working and nobody has a shift: what can wait waits for the morning. */
export const isQuiet = (harvest: Harvest, clock: ZoneClock, atMs: EpochMs): boolean =>
  isNight(clock, harvest.roster.zone, atMs) &&
  !harvest.roster.people.some((person) => hoursIntoShift({ harvest, clock, nowMs: atMs }, person) !== null) &&
  !hasHappened(harvest, { fromMs: addMinutes(atMs, 0 - AT_WORK_MIN), toMs: atMs }, isWork);

/** Somebody loads, so that digger and topper run though their operators seldom report. */
const isDigging = ({ harvest, nowMs }: Moment): boolean =>
  hasHappened(
    harvest,
    { fromMs: addMinutes(nowMs, 0 - AT_WORK_MIN), toMs: nowMs },
    (fact) => fact.kind === 'truck-reported' && (fact.step === 'loading' || fact.step === 'left-field'),
  );

const OPERATORS: readonly CrewRole[] = ['digger-operator', 'topper-operator'];

/** At night, unless at work by own report or shift: no phone of the person should ring without need. */
export const isAsleep = (moment: Moment, person: CrewMember): boolean => {
  const { harvest, clock, nowMs } = moment;
  if (!isNight(clock, harvest.roster.zone, nowMs)) return false;
  if (hoursIntoShift(moment, person) !== null || isAtWork(moment, person)) return false;
  const mayRun = person.shiftHours === null && person.roles.some((role) => OPERATORS.includes(role));
  return !(mayRun && isDigging(moment));
};

const endOfNightMs = (clock: ZoneClock, zone: string, atMs: EpochMs): EpochMs => {
  const addDays = clock.wall(zone, atMs).hour < NIGHT.toHour ? 0 : 1;
  return wallTimeOfDayMs(clock, zone, atMs, NIGHT.toHour, 0, addDays);
};

/** When the listed shift begins next. */
const shiftMs = ({ harvest, clock, nowMs }: Moment, fromHour: number): EpochMs => {
  const starts = [0, 1].map((addDays) =>
    wallTimeOfDayMs(clock, harvest.roster.zone, nowMs, fromHour, 0, addDays),
  );
  return starts.find((ms) => ms > nowMs) ?? Infinity;
};

/** Now, or when the person wakes: at the end of the night, or for the shift. */
export const personAwakeMs = (moment: Moment, person: CrewMember): EpochMs => {
  const { harvest, clock, nowMs } = moment;
  if (!isAsleep(moment, person)) return nowMs;
  const morningMs = endOfNightMs(clock, harvest.roster.zone, nowMs);
  return person.shiftHours === null ? morningMs : Math.min(morningMs, shiftMs(moment, person.shiftHours[0]));
};

/** `atMs`, or the end of the night if that lies in a quiet one. */
export const awakeMs = (harvest: Harvest, clock: ZoneClock, atMs: EpochMs): EpochMs => {
  if (!isQuiet(harvest, clock, atMs)) return atMs;
  return endOfNightMs(clock, harvest.roster.zone, atMs);
};
