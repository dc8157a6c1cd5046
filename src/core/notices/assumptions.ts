/** Figures of notices and reminders; the grades are defined in core/assumptions.ts. */
import { DAY_BEGINS_HOUR } from '../assumptions.ts';
import type { Minutes } from '../units.ts';

/** Hours of wall time in which the crew sleeps, unless it digs at night. */
export const NIGHT = {
  /** Grade: common practice. */
  fromHour: 22,
  toHour: DAY_BEGINS_HOUR,
};

/** Whoever reported so recently is at work. Grade: chosen: a round trip in a long line. */
export const AT_WORK_MIN: Minutes = 120;

/**
 * So long before the topper must stop, advice becomes an order. Grade: chosen: time for a truck to be on its way, and short
 * enough that everybody has something to do. (As in `HEAT_FIGURES.lastCallMin`.)
 */
export const ORDER_AHEAD_MIN: Minutes = 60;

/**
 * After a notice went out, whoever has not confirmed it is reminded. Grade: chosen: long enough for a driver to reach a
 * safe place to stop.
 */
export const REMIND_MIN: Minutes = 10;

/** And then foreman and grower get the names. Grade: chosen: as long again after the reminder. */
export const NAMES_MIN: Minutes = 20;

/** Nobody is reminded this long after the names were due, whatever was missed. Grade: chosen: most of a shift is over. */
export const LATEST_REMINDER_MIN: Minutes = 6 * 60;

/**
 * So long before the restart that was told, foreman and grower are asked to decide where no forecast can give it. Grade:
 * chosen: time to measure roots and to ask the station.
 */
export const DECIDE_AHEAD_MIN: Minutes = 60;

/**
 * "They turn loads away" holds so long, unless a load was taken or the station opened since. Grade: chosen: what was told
 * to one truck is asked anew by the next.
 */
export const TURNED_AWAY_HOLDS_MIN: Minutes = 120;

/** What happened at the station longer ago than this is no news. Grade: chosen: a round trip in a long line. */
export const NEWS_MIN: Minutes = 120;

/** A truck that was loaded or in line longer ago than this has brought its load, and nobody said so. Grade: chosen. */
export const UNDER_WAY_MIN: Minutes = 300;

/**
 * "Off shift" ends by itself, so that nobody who forgot to say "on shift" misses the next stop. Grade: source: off duty
 * between two shifts of a truck driver (49 CFR 395.3).
 */
export const OFF_SHIFT_MIN: Minutes = 10 * 60;

/**
 * Without a usable answer of the weather service for so long, grower and foreman are told. Grade: chosen: the service is
 * asked every hour, so that two answers are missing.
 */
export const FORECAST_MISSED_MIN: Minutes = 120;

/**
 * Wall time: the coming night is announced in the afternoon, from the first hour on; cold that comes before the second is
 * announced at once.
 */
export const FROST_ANNOUNCED = {
  /** Grade: chosen: in time for the evening's topping. */
  fromHour: 16,
  /** Grade: chosen: the topping of the day itself. */
  byHour: 18,
};
