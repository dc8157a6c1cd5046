import type { Fact } from '../book/facts.ts';
import { addMinutes } from '../units.ts';
import type { EpochMs, Minutes } from '../units.ts';
import { wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { hasHappened } from '../harvest/chapters.ts';
import type { Harvest } from '../harvest/harvest.ts';

/** The crew sleeps, unless it digs at night. Common practice, no source. */
export const NIGHT = { fromHour: 22, toHour: 5 };
/** Who was heard from so lately is at work. Chosen. */
const AT_WORK_MIN: Minutes = 120;

const isWork = ({ kind }: Fact): boolean =>
  kind === 'truck-reported' ||
  kind === 'ticket-booked' ||
  kind === 'line-seen' ||
  kind === 'root-measured' ||
  kind === 'field-dug';

/** It is night in the operation's zone. */
export const isNight = (clock: ZoneClock, zone: string, atMs: EpochMs): boolean => {
  const { hour } = clock.wall(zone, atMs);
  return hour >= NIGHT.fromHour || hour < NIGHT.toHour;
};

/** It is night and nobody works: no phone should ring without need. */
export const isQuiet = (harvest: Harvest, clock: ZoneClock, atMs: EpochMs): boolean =>
  isNight(clock, harvest.roster.zone, atMs) &&
  !hasHappened(harvest, { fromMs: addMinutes(atMs, 0 - AT_WORK_MIN), toMs: atMs }, isWork);

/** `atMs`, or five in the morning where that lies in a quiet night. */
export const awakeMs = (harvest: Harvest, clock: ZoneClock, atMs: EpochMs): EpochMs => {
  if (!isQuiet(harvest, clock, atMs)) return atMs;
  const { zone } = harvest.roster;
  const addDays = clock.wall(zone, atMs).hour < NIGHT.toHour ? 0 : 1;
  return wallTimeOfDayMs(clock, zone, atMs, NIGHT.toHour, 0, addDays);
};
