import { MS_PER_DAY, MS_PER_HOUR, MS_PER_MINUTE } from '../../src/core/units.ts';
import type { Span } from '../../src/core/units.ts';

const DURATION = /^P(?:(\d+)W)?(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?)?$/;

/**
 * A day is 24 hours here, whatever the calendar at the place says: `P1DT1H` is 25 hours even across the end of daylight
 * time, for which local time would give 26.
 */
const durationMs = (text: string): number | null => {
  const match = DURATION.exec(text);
  if (!match) return null;
  const [weeks, days, hours, minutes] = match.slice(1).map((digits) => Number(digits || 0));
  const allDays = 7 * (weeks ?? 0) + (days ?? 0);
  const ms = allDays * MS_PER_DAY + (hours ?? 0) * MS_PER_HOUR + (minutes ?? 0) * MS_PER_MINUTE;
  return ms > 0 ? ms : null;
};

/** No value is forecast for longer; a duration of years is corrupt, and would fill the memory with hours. Grade: chosen. */
const LONGEST_MS = 16 * MS_PER_DAY;

const instantMs = (text: string, nowMs: number): number | null => {
  const ms = text === 'NOW' ? nowMs : Date.parse(text);
  return Number.isNaN(ms) ? null : ms;
};

/**
 * `validTime` of a grid value: start/duration (the only form seen), start/end or duration/end; an instant may be "NOW"
 * (https://api.weather.gov/openapi.json). Null = none of these, or longer than 16 days.
 */
export const parseInterval = (text: string, nowMs: number): Span | null => {
  const [left = '', right = '', ...more] = text.split('/');
  if (more.length > 0) return null;
  const [leftMs, rightMs] = [durationMs(left), durationMs(right)];
  const fromMs = leftMs === null ? instantMs(left, nowMs) : null;
  const toMs = rightMs === null ? instantMs(right, nowMs) : null;
  const whole = (from: number, to: number): Span | null =>
    from < to && to - from <= LONGEST_MS ? { fromMs: from, toMs: to } : null;
  if (fromMs !== null && rightMs !== null) return whole(fromMs, fromMs + rightMs);
  if (fromMs !== null && toMs !== null) return whole(fromMs, toMs);
  return leftMs !== null && toMs !== null ? whole(toMs - leftMs, toMs) : null;
};
