/** Figures of notices and reminders; the grades are defined in core/assumptions.ts. */
import { DAY_BEGINS_HOUR } from '../assumptions.ts';
import type { CrewRole } from '../roster.ts';
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

/** Whoever carries a stop out, and is asked to confirm it. Grade: common practice: they run topper, digger and crew. */
export const ACTING_ROLES: readonly CrewRole[] = ['foreman', 'digger-operator', 'topper-operator'];

/**
 * An order that is not confirmed: so long before the topper must stop, those who must act are reminded; then the foreman
 * gets their names, then the grower. Grade: chosen: time to find somebody on foot, then by telephone.
 */
export const ASKED_AHEAD_MIN = { remind: 45, foreman: 30, grower: 10 };

/**
 * With less than an hour left: so long after the order, where that is later. Grade: chosen: long enough for a driver to
 * reach a safe place to stop.
 */
export const ASKED_AFTER_MIN = { remind: 5, foreman: 10, grower: 20 };

/** Of an unconfirmed order nobody is told later than this after it was due. Grade: chosen: as long as a reminder holds. */
export const LATEST_ASKING_MIN: Minutes = 60;

/** What was missed is not made up for so long after it was due. Grade: chosen: most of a shift is over. */
export const LATEST_MIN: Minutes = 6 * 60;

/**
 * So long before the restart that was told, foreman and grower are asked to decide where no forecast can give it. Grade:
 * chosen: time to measure roots and to ask the station.
 */
export const DECIDE_AHEAD_MIN: Minutes = 60;

/** And not before the notice that told it has been read. Grade: chosen. */
export const DECIDE_AFTER_MIN: Minutes = 10;

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
