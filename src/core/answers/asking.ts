/** Who asks when, and what follows from that for every answer. */
import { lineObservations } from '../line/observations.ts';
import type { LineObservations } from '../line/types.ts';
import type { SpanName } from '../intent.ts';
import type { CrewMember, StationId } from '../roster.ts';
import type { Telling } from '../telling.ts';
import { MS_PER_MINUTE, addMinutes } from '../units.ts';
import type { EpochMs, Minutes, Span } from '../units.ts';
import { troubleAt } from '../notices/station-now.ts';
import type { StationTrouble } from '../notices/station-now.ts';
import { calendarDay } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import { firstMs } from '../harvest/chapters.ts';
import type { Harvest } from '../harvest/harvest.ts';

export interface Asking {
  asker: CrewMember;
  nowMs: EpochMs;
  clock: ZoneClock;
}

/** 0 on a Monday: 1 January 1970 was a Thursday. */
const daysSinceMonday = (clock: ZoneClock, zone: string, nowMs: EpochMs): number => {
  const { year, month, day } = clock.wall(zone, nowMs);
  const days =
    clock.instant('UTC', { year, month, day, hour: 0, minute: 0 }) / (MINUTES_PER_DAY * MS_PER_MINUTE);
  return (days + 3) % 7;
};

const MINUTES_PER_DAY = 24 * 60;

/**
 * The calendar day of the operation, or the day before, the week since its Monday, or all that is in the book. Today is the whole of it: phones
 * that run ahead of our clock write what is a few minutes off.
 */
export const spanOf = (harvest: Harvest, { clock, nowMs }: Asking, span: SpanName): Span => {
  const today = calendarDay(clock, harvest.roster.zone, nowMs);
  switch (span) {
    case 'today':
      return today;
    case 'yesterday':
      return calendarDay(clock, harvest.roster.zone, nowMs, -1);
    case 'week': {
      const { zone } = harvest.roster;
      const monday = calendarDay(clock, zone, nowMs, 0 - daysSinceMonday(clock, zone, nowMs));
      return { ...today, fromMs: monday.fromMs };
    }
    case 'season':
      return { ...today, fromMs: Math.min(today.fromMs, firstMs(harvest) ?? today.fromMs) };
  }
};

export const askedStation = (
  harvest: Harvest,
  asking: Asking,
  station: StationId | null,
): StationId | null => {
  const truck = asking.asker.truck === null ? undefined : harvest.trucks.get(asking.asker.truck);
  return station ?? truck?.loads.at(-1)?.station ?? harvest.roster.stations[0]?.id ?? null;
};

/** What was seen today of that station's line. */
export const seenToday = (harvest: Harvest, station: StationId, asking: Asking): LineObservations =>
  lineObservations(harvest, station, spanOf(harvest, asking, 'today'));

/** What keeps a truck waiting there that arrives in so many minutes. */
export const troubleFor = (
  harvest: Harvest,
  station: StationId,
  arriveInMin: Minutes,
  asking: Asking,
): StationTrouble | null => {
  const { fromMs: sinceMs } = spanOf(harvest, asking, 'today');
  const { nowMs } = asking;
  return troubleAt(harvest, { station, sinceMs, nowMs }, addMinutes(nowMs, arriveInMin));
};

export const NO_STATION: Telling = { tell: 'refusal', refusal: { refused: 'no-station' } };
