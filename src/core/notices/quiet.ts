import { isWork } from '../book/kinds.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { AT_WORK_MIN, NIGHT } from './assumptions.ts';
import { hasHappened } from '../harvest/chapters.ts';
import type { Harvest } from '../harvest/harvest.ts';

/** It is night in the operation's zone. */
export const isNight = (clock: ZoneClock, zone: string, atMs: EpochMs): boolean => {
  const { hour } = clock.wall(zone, atMs);
  return hour >= NIGHT.fromHour || hour < NIGHT.toHour;
};

/** It is night and nobody is working: no phone should ring without need. */
export const isQuiet = (harvest: Harvest, clock: ZoneClock, atMs: EpochMs): boolean =>
  isNight(clock, harvest.roster.zone, atMs) &&
  !hasHappened(harvest, { fromMs: addMinutes(atMs, 0 - AT_WORK_MIN), toMs: atMs }, isWork);

/** `atMs`, or the end of the night if that lies in a quiet one. */
export const awakeMs = (harvest: Harvest, clock: ZoneClock, atMs: EpochMs): EpochMs => {
  if (!isQuiet(harvest, clock, atMs)) return atMs;
  const { zone } = harvest.roster;
  const addDays = clock.wall(zone, atMs).hour < NIGHT.toHour ? 0 : 1;
  return wallTimeOfDayMs(clock, zone, atMs, NIGHT.toHour, 0, addDays);
};
