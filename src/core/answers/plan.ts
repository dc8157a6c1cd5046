/** The plan of a day at one station: for the outlook of the evening, the plan of the morning, and whoever asks. */
import { DAY_BEGINS_HOUR } from '../assumptions.ts';
import { forecastsBy, heatBasis, freezeAlerts } from '../weather/heat-basis.ts';
import type { Station } from '../roster.ts';
import { MS_PER_MINUTE } from '../units.ts';
import type { EpochMs, Span } from '../units.ts';
import { hasGap, nodesOf } from '../weather/crossing.ts';
import { HEAT_OPTIONS, withPast } from '../weather/heat-options.ts';
import { airWithPast } from '../weather/past-air.ts';
import { OUTLOOK_OPTIONS, outlook } from '../weather/outlook.ts';
import type { Outlook } from '../weather/outlook.ts';
import type { HourlyTemperature } from '../weather/types.ts';
import { wallTimeOfDayMs } from '../zone-clock.ts';
import type { ZoneClock } from '../zone-clock.ts';
import type { Harvest } from '../harvest/harvest.ts';

export type DayPlan =
  | {
      plan: 'made';
      outlook: Outlook;
      /** All hours that are known: those forecast now, and earlier ones as they were forecast before. */
      hours: readonly HourlyTemperature[];
      /** When the crew may dig by the forecast, within that day: before the stop, and after the restart. */
      dig: readonly Span[];
    }
  /** No forecast is fresh enough, or far enough. `newestMs`: when the newest one was issued; null = there is none at all. */
  | { plan: 'none'; newestMs: EpochMs | null; isTooShort: boolean };

/** From five in the morning, or from the thaw where frost holds the dig, less the heat stop. */
const digSpans = ({ heat, frost }: Outlook, firstMs: EpochMs, endMs: EpochMs): Span[] => {
  const isHeld = frost.likely === 'hold';
  const fromMs = isHeld ? Math.max(firstMs, frost.thawMs ?? endMs) : firstMs;
  const spans =
    heat.stopAtMs === null
      ? [{ fromMs, toMs: endMs }]
      : [
          { fromMs, toMs: heat.stopAtMs },
          { fromMs: Math.max(fromMs, heat.resumeAtMs ?? endMs), toMs: endMs },
        ];
  return spans.filter((span) => span.fromMs < span.toMs);
};

/** The forecast reaches to the end of the span, and has no gap in it. Hours that are past need not be known. */
const isKnown = (hours: readonly HourlyTemperature[], span: Span): boolean => {
  const nodes = nodesOf(hours);
  return (nodes.at(-1)?.atMs ?? 0) >= span.toMs && !hasGap(nodes, span);
};

/** `addDays`: 0 = today, 1 = tomorrow, by the clock at the station. */
export const planOf = (
  harvest: Harvest,
  station: Station,
  clock: ZoneClock,
  nowMs: EpochMs,
  addDays: 0 | 1,
): DayPlan => {
  const forecasts = forecastsBy(harvest, station.id, nowMs);
  const forecast = forecasts.at(-1);
  if (!forecast) return { plan: 'none', newestMs: null, isTooShort: false };
  const { issuedMs, rain } = forecast;
  if (nowMs - issuedMs > HEAT_OPTIONS.maxAgeMin * MS_PER_MINUTE)
    return { plan: 'none', newestMs: issuedMs, isTooShort: false };
  const basis = heatBasis(harvest, station, clock, nowMs);
  const alerts = freezeAlerts(forecasts, nowMs);
  const made = outlook(forecast, station, clock, nowMs, addDays, {
    heat: { ...OUTLOOK_OPTIONS.heat, ...basis },
    frost: { ...OUTLOOK_OPTIONS.frost, alerts },
    rain,
    air: airWithPast(
      forecast,
      harvest.issued.get(station.id) ?? [],
      harvest.observed.get(station.id) ?? [],
      nowMs,
    ),
  });
  const at = (hour: number, days = 0): EpochMs =>
    wallTimeOfDayMs(clock, station.zone, made.dayMs, hour, 0, days);
  const { hours } = withPast(forecast, basis.earlier);
  // "No heat stop" of an afternoon that nobody has forecast would be taken for a promise.
  const [fromHour, toHour] = harvest.roster.workHours;
  if (made.heat.stopAtMs === null && !isKnown(hours, { fromMs: at(fromHour), toMs: at(toHour) }))
    return { plan: 'none', newestMs: issuedMs, isTooShort: true };
  return {
    plan: 'made',
    outlook: made,
    hours,
    dig: digSpans(made, at(DAY_BEGINS_HOUR), at(0, 1)),
  };
};
