/** Plans of a day by invented forecasts of the sample farm, made as the bot makes them. */
import { foldHarvest } from '../../src/core/harvest/fold.ts';
import { planOf } from '../../src/core/answers/plan.ts';
import type { Roster } from '../../src/core/roster.ts';
import type { Telling } from '../../src/core/telling.ts';
import type { Fahrenheit } from '../../src/core/units.ts';
import { zoneClock } from '../../src/run/host/zone-clock.ts';
import { at, fact } from './given.ts';
import { sampleRoster } from './roster.ts';
import type { RainTotal } from '../../src/core/weather/types.ts';

const HOUR_MS = 3_600_000;

/** From midnight; passes 60 °F between 12:00 (58) and 13:00 (62), so at 12:30; high 70 at 16:00. */
export const WARM = [
  44, 42, 41, 40, 39, 38, 38, 40, 43, 48, 52, 55, 58, 62, 66, 68, 70, 67, 62, 57, 53, 50, 48, 46,
];
export const COOL = WARM.map((f) => 38 + (f - 38) * 0.5);
export const FROSTY = WARM.map((f) => f - 16);

/**
 * At `clock` on 2026-10-20, from a forecast issued at `issued` with these temperatures today and tomorrow (from
 * midnight on).
 */
export const outlookTelling = (
  days: readonly (readonly Fahrenheit[])[],
  addDays: 0 | 1,
  clock: string,
  {
    issued = clock,
    rain = [],
    roster = sampleRoster,
  }: { issued?: string; rain?: readonly RainTotal[]; roster?: Roster } = {},
): Extract<Telling, { tell: 'outlook' }> => {
  const [station] = roster.stations;
  if (!station) throw new Error('the sample has a station');
  const hours = days.flat().map((temperatureF, hour) => ({
    startMs: at('00:00') + hour * HOUR_MS,
    temperatureF,
  }));
  const issuedMs = at(issued);
  const forecast = fact(
    { kind: 'forecast-issued', place: station.id, issuedMs, hours, rain, freezeAlerts: [] },
    issued,
  );
  const harvest = foldHarvest(roster, hours.length > 0 ? [forecast] : []);
  const plan = planOf(harvest, station, zoneClock, at(clock), addDays);
  return { tell: 'outlook', station: station.id, addDays, plan };
};

/** One of each that can be said. */
export const outlooks: readonly Extract<Telling, { tell: 'outlook' }>[] = [
  outlookTelling([], 1, '18:00'),
  outlookTelling([WARM], 1, '22:00', { issued: '03:00' }),
  ...([0, 1] as const).flatMap((addDays) => [
    outlookTelling([WARM, WARM, WARM], addDays, '05:00', {
      rain: [{ fromMs: at('04:00'), toMs: at('09:00'), inches: 0.27 }],
    }),
    outlookTelling([COOL, COOL], addDays, '05:00'),
    outlookTelling([FROSTY, FROSTY], addDays, '00:00'),
    outlookTelling([WARM.map((f) => f + 30), WARM.map((f) => f + 30)], addDays, '00:00'),
  ]),
];
