/**
 * Forecasts of a whole season as they are revised: one every six hours, two days ahead, in whole °F. The high of each
 * day is off by what stays unknown to its hour (0.8 °F too cool, give or take 2.2) and by its revisions, of which most
 * are small and few are large. Real ones (seven places in or near beet country): see README.md.
 */
import type { HourlyTemperature } from '../../src/core/weather/types.ts';
import { HOUR_MS, deviate } from './season.ts';
import type { HarvestDay, Issue } from './season.ts';

const DAY_HOURS = 24;
const ISSUED_EVERY_HOURS = 6;
const FIRST_HOUR = 4;
const HIGH_HOUR = 15;
const HOURS_AHEAD = 48;
/** What is never known before, °F: forecasts run cool by the first, and scatter by the second. */
const LAST_ERROR = { cool: 0.8, sd: 2.2 };
/** A revision within six hours, °F: one in ten is large. Two of them have a standard deviation of 1.3. */
const REVISION = { small: 0.5, large: 2.5, largeShare: 0.1 };

export interface SeasonForecasts {
  issues: readonly Issue[];
  /** By how much each day's high was revised from one issue to the second after it, whole °F. */
  revisionsF: readonly number[];
}

const revision = (random: () => number): number =>
  (random() < REVISION.largeShare ? REVISION.large : REVISION.small) * deviate(random);

/** The errors of a day's high in the issues before it, from the last before the hour of the high backwards. */
const errorsOf = (random: () => number): number[] => {
  const errors = [LAST_ERROR.sd * deviate(random) - LAST_ERROR.cool];
  while (errors.length * ISSUED_EVERY_HOURS < HOURS_AHEAD + DAY_HOURS)
    errors.push((errors.at(-1) ?? 0) + revision(random));
  return errors;
};

export const forecastsOf = (days: readonly HarvestDay[], random: () => number): SeasonForecasts => {
  const [first] = days;
  if (!first) return { issues: [], revisionsF: [] };
  const actual = days.flatMap((day) => day.actual.slice(0, DAY_HOURS));
  const errors = days.map(() => errorsOf(random));
  const dayOf = (ms: number): number => Math.floor((ms - first.midnightMs) / (DAY_HOURS * HOUR_MS));
  const issuesBefore = (issuedMs: number, day: number): number =>
    Math.max(
      0,
      Math.ceil(
        ((days[day]?.midnightMs ?? 0) + HIGH_HOUR * HOUR_MS - issuedMs) / (ISSUED_EVERY_HOURS * HOUR_MS),
      ) - 1,
    );
  const issueAt = (issuedMs: number): Issue => ({
    issuedMs,
    hours: actual
      .filter(({ startMs }) => startMs >= issuedMs && startMs < issuedMs + HOURS_AHEAD * HOUR_MS)
      .map(({ startMs, temperatureF }): HourlyTemperature => {
        const day = dayOf(startMs);
        return {
          startMs,
          temperatureF: Math.round(temperatureF + (errors[day]?.[issuesBefore(issuedMs, day)] ?? 0)),
        };
      }),
  });
  const count = (days.length * DAY_HOURS) / ISSUED_EVERY_HOURS;
  return {
    issues: Array.from({ length: count }, (_, at) =>
      issueAt(first.midnightMs + (FIRST_HOUR + at * ISSUED_EVERY_HOURS) * HOUR_MS),
    ),
    revisionsF: errors.flatMap((list) =>
      list.slice(2, 8).map((earlier, at) => Math.round(earlier - (list[at] ?? 0))),
    ),
  };
};
