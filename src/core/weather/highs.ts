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
): HourlyTemperature[] =>
  hours.map((hour) => {
    const high = highs.find(({ fromMs, toMs }) => hour.startMs >= fromMs && hour.startMs < toMs);
    if (!high) return hour;
    const period = hours.filter(({ startMs }) => startMs >= high.fromMs && startMs < high.toMs);
    const temperatures = period.map(({ temperatureF }) => temperatureF);
    const [lowF, highF] = [Math.min(...temperatures), Math.max(...temperatures)];
    const isPast = period[0]?.temperatureF === highF;
    if (isPast || high.temperatureF <= highF) return hour;
    const share = (hour.temperatureF - lowF) / (highF - lowF);
    return { ...hour, temperatureF: hour.temperatureF + share * (high.temperatureF - highF) };
  });
