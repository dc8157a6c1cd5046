import type { FactOf } from '../book/facts.ts';
import { MS_PER_HOUR } from '../units.ts';
import type { EpochMs } from '../units.ts';
import { KEPT_HOURS, KEPT_RAIN_HOURS, RENEWED_HOURS } from './assumptions.ts';
import { stretchToHighs } from './highs.ts';
import type { PeriodHigh } from './highs.ts';
import type { HourlyTemperature, RainTotal } from './types.ts';

type Forecast = Pick<FactOf<'forecast-issued'>, 'issuedMs' | 'hours' | 'rain' | 'freezeAlerts'>;

/** Merges successive dry spans. */
const dryAsOne = (rain: readonly RainTotal[]): RainTotal[] => {
  const spans: RainTotal[] = [];
  for (const next of rain) {
    const last = spans.at(-1);
    const follows = last?.inches === 0 && next.inches === 0 && last.toMs === next.fromMs;
    if (follows) spans[spans.length - 1] = { ...last, toMs: next.toMs };
    else spans.push(next);
  }
  return spans;
};

/**
 * What the book keeps of a forecast: temperatures to a hundredth of a degree, stretched to the highs that the service
 * states because those count for the decisions, and the rain.
 */
export const keptForecast = (
  {
    hours,
    highs,
    rain,
  }: { hours: readonly HourlyTemperature[]; highs: readonly PeriodHigh[]; rain: readonly RainTotal[] },
  nowMs: EpochMs,
): Pick<Forecast, 'hours' | 'rain'> => ({
  hours: stretchToHighs(hours, highs)
    .filter(({ startMs }) => startMs < nowMs + KEPT_HOURS * MS_PER_HOUR)
    .map(({ startMs, temperatureF }) => ({ startMs, temperatureF: Math.round(temperatureF * 100) / 100 })),
  rain: dryAsOne(
    rain
      .filter(({ fromMs }) => fromMs < nowMs + KEPT_RAIN_HOURS * MS_PER_HOUR)
      .map(({ fromMs, toMs, inches }) => ({ fromMs, toMs, inches: Math.round(inches * 1000) / 1000 })),
  ),
});

/** Sorted, because the database does not keep the order. */
const alertsKey = (alerts: Forecast['freezeAlerts']): string =>
  (alerts ?? [])
    .map(({ id, onsetMs, endsMs }) => `${id} ${onsetMs} ${endsMs}`)
    .sort()
    .join();

/** `next` null = not read this time. */
export const sameAlerts = (next: Forecast['freezeAlerts'], known: Forecast['freezeAlerts']): boolean =>
  next === null || alertsKey(next) === alertsKey(known);

const sameFrom = (nowMs: EpochMs, one: Forecast, other: Forecast): boolean => {
  const known = new Map(other.hours.map((hour) => [hour.startMs, hour.temperatureF]));
  const shared = one.hours.filter(({ startMs }) => known.has(startMs));
  const rainOf = ({ rain }: Forecast): string =>
    rain
      .filter(({ toMs, inches }) => toMs > nowMs && inches > 0)
      .map(({ fromMs, toMs, inches }) => `${fromMs} ${toMs} ${inches}`)
      .sort()
      .join();
  return (
    shared.length > 0 &&
    shared.every(({ startMs, temperatureF }) => known.get(startMs) === temperatureF) &&
    rainOf(one) === rainOf(other) &&
    sameAlerts(one.freezeAlerts, other.freezeAlerts)
  );
};

/**
 * Whether a newer forecast says what the two before it said. (Two before it, because a restart waits until two agree.)
 * `before`: the forecasts of the place so far, oldest first.
 */
export const saysNothingNew = (next: Forecast, before: readonly Forecast[], nowMs: EpochMs): boolean => {
  const [previous, newest] = before.slice(-2);
  if (!previous || !newest || next.issuedMs < newest.issuedMs) return false;
  const isRecent = next.issuedMs - newest.issuedMs < RENEWED_HOURS * MS_PER_HOUR;
  return isRecent && [previous, newest].every((known) => sameFrom(nowMs, next, known));
};
