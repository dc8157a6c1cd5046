import type { EpochMs, Fahrenheit } from '../units.ts';
import type { HourlyTemperature } from './types.ts';

/** The highest temperature that a service states for a period. */
export interface PeriodHigh {
  fromMs: EpochMs;
  toMs: EpochMs;
  temperatureF: Fahrenheit;
}

/**
 * Hourly temperatures stretched so that each period reaches the high that the service states for it. That high is
 * 0-4 °F above the highest hourly value, because the warmest moment falls between two hours. Each hour is raised by its
 * share of the way from the period's lowest to its highest. A stated high below the hourly one changes nothing, nor does
 * one of a period whose warmest hours are past: the first of the hours left is then the warmest.
 */
export const stretchToHighs = (
  hours: readonly HourlyTemperature[],
  highs: readonly PeriodHigh[],
): HourlyTemperature[] => {
  const periods = highs.toSorted((a, b) => a.fromMs - b.fromMs);
  const sorted = hours.toSorted((a, b) => a.startMs - b.startMs);
  const stretched: HourlyTemperature[] = [];
  let at = 0;
  // One pass over both, because a corrupt reply may have thousands of each.
  for (const high of periods) {
    for (; isBefore(sorted[at], high.fromMs); at += 1) stretched.push(...sorted.slice(at, at + 1));
    const fromAt = at;
    while (isBefore(sorted[at], high.toMs)) at += 1;
    stretched.push(...stretchedTo(sorted.slice(fromAt, at), high.temperatureF));
  }
  return [...stretched, ...sorted.slice(at)];
};

const isBefore = (hour: HourlyTemperature | undefined, atMs: EpochMs): boolean =>
  hour !== undefined && hour.startMs < atMs;

/** The hours of one period, in order of time, raised to its high. */
const stretchedTo = (
  period: readonly HourlyTemperature[],
  statedF: Fahrenheit,
): readonly HourlyTemperature[] => {
  const temperatures = period.map(({ temperatureF }) => temperatureF);
  const [lowF, highF] = [Math.min(...temperatures), Math.max(...temperatures)];
  const isPast = period[0]?.temperatureF === highF;
  if (isPast || statedF <= highF) return period;
  return period.map((hour) => {
    const share = (hour.temperatureF - lowF) / (highF - lowF);
    return { ...hour, temperatureF: hour.temperatureF + share * (statedF - highF) };
  });
};
