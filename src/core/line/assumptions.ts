/**
 * Figures of the scale line and of the round trip; the grades are defined in core/assumptions.ts. Tuning figures of the
 * model are beside their formula in model/.
 */
import type { Minutes } from '../units.ts';

/**
 * What one piler needs for one truck: about 250 tons an hour in loads of about 20 tons. Grade: source
 * (https://followthecougar.blogspot.com/2015/10/ten-days-of-work; https://rv.cjsquare.com/?p=5100).
 */
export const MIN_PER_TRUCK: Minutes = 4.8;

/** Share of the time (0-1) that pilers work, until it is learned. Grade: common practice. */
export const PILERS_BUSY = 0.75;

/**
 * From first to second weight, until tickets show it: the time of three trucks, one at the piler, one before it and one
 * on its way out. Grade: chosen, as a start of the line model; the round trip takes the same.
 */
export const YARD_MIN: Minutes = 3 * MIN_PER_TRUCK;

/** If it takes longer, the truck broke down there or a time is wrong. Grade: chosen: ten times the usual. */
export const LONGEST_YARD_MIN: Minutes = 120;

/** Fewer departures from the field do not show how long filling takes. Grade: chosen. */
export const FEWEST_DEPARTURES = 6;

/** Standard deviation of filling times, over their mean. Grade: common practice. */
export const FILL_CV = 0.2;

/** Standard deviation of travel and unloading, over their mean. Grade: common practice. */
export const AWAY_CV = 0.25;

/** The way back empty, over the way there loaded. Grade: common practice. */
export const EMPTY_HAUL_RATIO = 1;

/**
 * Trucks over what a match factor of 1 needs. Grade: measured, in runs with the scatter above: at a match factor of 1
 * (Burt & Caccetta, Int. J. Mining, Reclamation & Env. 21(4), 2007) the digger idles for 10-20 % of the time because
 * trucks bunch; with this many more, for a few percent.
 */
export const TRUCKS_OVER_MATCH = 1.15;

/** If the line stands still with this chance (0-1), a loaded truck is kept at the field. Grade: common practice. */
export const LIKELY_STANDSTILL = 0.6;

/** If fewer trucks join for each one served, little is lost by leaving later. Grade: common practice. */
export const SLACK_LINE = 0.5;

/** If none of our trucks is in line, older observations say nothing about the line now. Grade: chosen. */
export const OLDEST_USABLE_MIN: Minutes = 120;

/**
 * The same once the station's day has been learned. Grade: chosen; on some simulated days (100 waits, two stations) the
 * model did a little better than the usual wait up to 300 min, and this value was not tried.
 */
export const OLDEST_USABLE_LEARNED_MIN: Minutes = 240;

/** Waits are forecast up to this. Grade: chosen. */
export const LONGEST_WAIT_MIN: Minutes = 300;

/** Days learned from. Grade: chosen; a harvest lasts about a month, and older days were other roads and crews. */
export const DAYS_KEPT = 30;

/** A weighing whose time is less certain (standard deviation) does not show the wait. Grade: chosen. */
export const UNSURE_MIN: Minutes = 8;

/** Trips that the calibration looks back on. Grade: chosen, for what a thread can work out in seconds. */
export const TRIPS_KEPT = 100;

/** In the first estimate, a head count loses half of its weight against observed waits in this time. Grade: chosen. */
export const COUNT_HALF_LIFE_MIN: Minutes = 20;

/** In the first estimate, waits of this long before the newest one count as the same line. Grade: chosen. */
export const RECENT_WAITS_MIN: Minutes = 60;

/** Standard deviation of the first estimate: of a wait of 0, seen now, and how it grows. */
export const FIRST_ESTIMATE_SD = {
  /** Minutes. Grade: common practice. */
  leastMin: 6,
  /** Share of the median. Grade: common practice. */
  ofMedian: 0.3,
  /** Variance, min², for each minute of age and of lead. Grade: common practice. */
  variancePerMin: 4,
};
