/** The outlook of the evening and the plan of the morning: when they are due, and who gets them. */
import { DAY_BEGINS_HOUR } from '../assumptions.ts';
import { planOf } from './plan.ts';
import type { Roster, Station } from '../roster.ts';
import type { Audience, Tell } from '../telling.ts';
import { MS_PER_HOUR } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { startOfDayMs, wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import type { Harvest } from '../harvest/harvest.ts';
import { managersOf } from '../notices/audiences.ts';

/** In time for the evening's decisions on topping and crews. Common practice, no source. */
const EVENING_HOUR = 18;

/** Places from which nothing was heard for so long are no longer told of. */
const SILENT_MS = 72 * MS_PER_HOUR;

/** The next 5:00 or 18:00 after `nowMs`, by the operation's clock. */
const nextMs = ({ zone }: Roster, clock: ZoneClock, nowMs: EpochMs): EpochMs => {
  const at = (hour: number, days = 0): EpochMs => wallTimeOfDayMs(clock, zone, nowMs, hour, 0, days);
  const [morning, evening] = [at(DAY_BEGINS_HOUR), at(EVENING_HOUR)];
  if (nowMs < morning) return morning;
  return nowMs < evening ? evening : at(DAY_BEGINS_HOUR, 1);
};

const told = (harvest: Harvest, nowMs: EpochMs): Station[] =>
  harvest.roster.stations.filter(({ id }) => {
    const heardMs = harvest.forecasts.get(id)?.at(-1)?.heardMs;
    return heardMs !== undefined && nowMs - heardMs < SILENT_MS;
  });

/** When the next outlook is due; null = nobody wants one, or no forecasts come any more. */
export const nextOutlookMs = (harvest: Harvest, clock: ZoneClock, nowMs: EpochMs): EpochMs | null =>
  harvest.roster.outlookTo === 'nobody' || told(harvest, nowMs).length === 0
    ? null
    : nextMs(harvest.roster, clock, nowMs);

const audienceOf = (roster: Roster): Audience[] => [
  ...(roster.outlookTo === 'crew'
    ? roster.rooms.map((room): Audience => ({ to: 'room', room: room.id }))
    : []),
  ...managersOf(roster),
];

/** In the morning the plan of today, else the outlook of tomorrow, one for each station with forecasts. */
export const outlookTells = (harvest: Harvest, clock: ZoneClock, nowMs: EpochMs): Tell[] => {
  const { zone, outlookTo } = harvest.roster;
  if (outlookTo === 'nobody') return [];
  const addDays = clock.wall(zone, nowMs).hour < 12 ? 0 : 1;
  const dayMs = startOfDayMs(clock, zone, nowMs);
  return told(harvest, nowMs).flatMap((station) => {
    const plan = planOf(harvest, station, clock, nowMs, addDays);
    const key = `outlook:${station.id}:${dayMs}:${addDays}`;
    return audienceOf(harvest.roster).map((audience): Tell => ({
      audience,
      telling: { tell: 'outlook', station: station.id, addDays, plan },
      urgent: false,
      key,
    }));
  });
};
