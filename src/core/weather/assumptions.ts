/** Figures that heat stop, frost hold and outlook go by; the grades are defined in core/assumptions.ts. */
import { DAY_BEGINS_HOUR } from '../assumptions.ts';
import type { Fahrenheit, Minutes } from '../units.ts';

/**
 * Wall time of the afternoon, in which the day's high falls (of the errors of forecasts; a stop goes by the hours that are
 * worked): its start and its end hour, 0-24.
 * Grade: chosen, wide enough for a high that comes late.
 */
export const AFTERNOON_HOURS: readonly [fromHour: number, toHour: number] = [12, 18];

/**
 * How far the topper is ahead of the digger: less than 30 min.
 * Grade: source (Dean, "Protecting Roots", Sugar Producer, August 2012).
 */
export const TOPPING_LEAD_MIN: Minutes = 30;

/**
 * Warm spells with less between them are one: digging in between would not pay. Grade: chosen: as `worthMin` of the heat
 * stop.
 */
export const ONE_SPELL_MIN: Minutes = 240;

/**
 * Between two forecast temperatures further apart nothing is known: no line is drawn. Grade: chosen; hours are forecast one
 * by one, and one that is left out does no harm.
 */
export const LONGEST_LINE_MIN: Minutes = 120;

/**
 * Stops are rounded down to this, restarts up. Grade: chosen; forecasts in whole degrees place a crossing no better than
 * to a quarter of an hour.
 */
export const ROUNDED_TO_MIN: Minutes = 5;

/** A stop is called off, or ended, only when the air is this far on the safe side. Grade: chosen; no rule was found. */
const DEADBAND_F: Fahrenheit = 2;

/**
 * A stop that moves by less is not announced again. Grade: chosen; if the air stays near the limit for hours, a tenth of
 * a degree moves the crossing by more than this.
 */
const STOP_UPDATE_MIN: Minutes = 30;

/**
 * An older forecast may stop the dig, but not resume it. Grade: chosen; grids are issued twice a day, so that one missed
 * issue does not make a forecast stale.
 */
export const FORECAST_MAX_AGE_MIN: Minutes = 18 * 60;

export const HEAT_FIGURES = {
  toppingLeadMin: TOPPING_LEAD_MIN,
  /** Chance (0-1) for a watch. Grade: source (lower tier of the US National Weather Service, weather.gov/rlx/criteria). */
  watchChance: 0.5,
  /** Chance (0-1) for a stop. Grade: source (upper tier of the same). */
  stopChance: 0.8,
  /** A watch becomes a stop if no more than this is left before the topper must stop. Grade: chosen, so that the crew still has time to act. */
  lastCallMin: 60,
  deadbandF: DEADBAND_F,
  /** How long the air must stay below the limit by the deadband. Grade: chosen, so that a short dip does not end a stop. */
  coolForMin: 60,
  /** How long it must then stay within the limit. Grade: chosen; it does not pay to start again for less. */
  worthMin: 240,
  /**
   * How long roots cool after the air. Grade: chosen; roots at 4-6 in. follow by 3-5 h (damped wave, Hillel 1982), and
   * waiting for the deadband takes a part of that.
   */
  rootLagMin: 120,
  /** How long a measured root counts for more than the forecast. Grade: chosen; roots follow the air within hours. */
  rootHoldsMin: 240,
  /** How long measured air counts for more than the forecast. Grade: chosen; weather stations report every hour. */
  airHoldsMin: 90,
  updateMin: STOP_UPDATE_MIN,
  /** A restart that moves by less is not announced again once digging has stopped. Grade: chosen; for more, people would wait in vain. */
  restartUpdateMin: 60,
  /**
   * No all-clear sooner after the last step (the off-delay of OPC UA part 9, annex B). Grade: chosen, so that stop and
   * all-clear do not alternate.
   */
  dwellMin: 60,
  maxAgeMin: FORECAST_MAX_AGE_MIN,
  /** How long a person's all-clear keeps the forecast quiet. Grade: chosen: about half an afternoon. */
  shelvedMin: 240,
};
export type HeatFigures = typeof HEAT_FIGURES;

export const FROST_FIGURES = {
  /** How far ahead to look. Grade: chosen: the night to come. */
  horizonMin: 24 * 60,
  /** At this low, beets that are not dug before the cold are not topped. Grade: chosen, some degrees above a hold. */
  watchF: 28,
  /**
   * At this low the dig is held. Grade: chosen, between nights in the mid 20s, which hurt crowns a little with leaves on
   * and froze topped beets to the ground (agweek.com, October 2018), and 20 °F, below which all stations stopped
   * (perhamfocus.com/news/512358).
   */
  holdF: 24,
  deadbandF: DEADBAND_F,
  toppingLeadMin: TOPPING_LEAD_MIN,
  updateMin: STOP_UPDATE_MIN,
  maxAgeMin: FORECAST_MAX_AGE_MIN,
};
export type FrostFigures = typeof FROST_FIGURES;

/** How long one night's cold lasts at most: whoever calls a hold off has judged so much. Grade: chosen, half a day. */
export const NIGHT_MIN: Minutes = 12 * 60;

/** Wall time at which the night before a day's digging begins in the outlook. Grade: chosen: the warmest of the day is over. */
export const NIGHT_FROM_HOUR = 15;

/** Wall time at which it ends. Grade: chosen: what is still frozen then is frozen for the day's digging. */
export const NIGHT_TO_HOUR = 12;

/** Days of rain that the outlook adds up. Grade: chosen: as far as a crew plans its fields. */
export const RAIN_DAYS = 3;

/** Fewer pairs of forecast and measured high teach nothing. Grade: chosen; a mean of 30 is off by a fifth of the spread. */
export const FEWEST_PAIRS = 30;

/** Pairs count whose lead differs by no more, in hours. Grade: chosen: the errors of one day ahead and of two differ. */
export const SAME_LEAD_HOURS = 12;

/**
 * A chance (0-1) is never reckoned as lower or higher; people are told it in words and round tens. Grade: chosen; misses by 10 °F are four times as frequent as by the
 * normal curve (forecastadvisor.com, 24 September 2006).
 */
export const CHANCE_RANGE: readonly [least: number, most: number] = [0.02, 0.98];

/**
 * How far off forecast highs of the day are in beet country, °F, by lead in hours: bias (what came less what was forecast:
 * sunny autumns come warmer) and standard deviation. Grade: source for 9 to 45 h: forecasts of the US National Weather
 * Service and what came, from its public digests (repository speegled/weather_forecasts on GitHub), for Boise, Pocatello,
 * Billings, Fargo, North Platte, Flint and Casper, 15 September to 15 November 2021, about 390 pairs a lead: one autumn
 * only. From memory from 72 h on, by the way in which such errors grow, with the bias of 45 h.
 */
export const USUAL_ERROR: readonly (readonly [leadHours: number, biasF: Fahrenheit, sdF: Fahrenheit])[] = [
  [9, 0.8, 2.5],
  [21, 0.9, 2.7],
  [33, 0.9, 3.0],
  [45, 0.9, 3.5],
  [72, 0.9, 4.3],
  [96, 0.9, 4.9],
  [120, 0.9, 5.5],
  [144, 0.9, 6.2],
  [168, 0.9, 6.9],
];

/** With fewer hours of an afternoon measured, its high may have been missed. Grade: chosen, of the six hours. */
export const FEWEST_HOURS_MEASURED = 5;

/**
 * The forecast that is compared with what came is the last one before this hour of wall time. Grade: chosen: the one
 * that the crew had for its plan.
 */
export const COMPARED_FORECAST_HOUR = DAY_BEGINS_HOUR;

/** On the day itself and this many days before. Grade: chosen: the leads at which stops are decided and planned. */
export const COMPARED_DAYS_AHEAD: readonly number[] = [0, 1];

/** A forecast that was older by then is not compared. Grade: chosen; grids are issued twice a day. */
export const COMPARED_WITHIN_HOURS = 12;

/** Temperatures kept of each forecast: the rest of today and two days. Grade: chosen; nothing is decided further ahead. */
export const KEPT_HOURS = 60;

/** Rain kept of each forecast. Grade: chosen: the outlook of tomorrow adds up three days. */
export const KEPT_RAIN_HOURS = 96;

/** A forecast that says nothing new is kept all the same after this: its age says how far to trust it. Grade: chosen. */
export const RENEWED_HOURS = 3;

/** Daily damping depth of arable soil: 10-12 cm. Grade: from memory (Hillel; Campbell & Norman). */
export const DAMPING_DEPTH_CM = 11;

/** The body of a root lies at 10-15 cm. Grade: common practice. */
export const ROOT_DEPTH_CM = 12;

/**
 * How far the estimate of roots is off, by the days of air that it rests on, from one to six: root mean square, °F. Grade:
 * measured (hourly soil at Kings Creek, Kansas, 12 cm between the probes at 5 and 20 cm, at 15:00 of 124 days from 15
 * September to 15 November 2022 and 2023; public repository soilwater/pynotes-agriscience). More days were no better.
 */
export const ROOT_ERROR_F: readonly [Fahrenheit, ...Fahrenheit[]] = [8.2, 6.4, 5.3, 4.5, 4.1, 3.9];

/** So much of the hours of those days must be known. Grade: chosen. */
export const ROOT_HOURS_KNOWN = 0.9;

/** Four in five errors lie within so many times their root mean square. Grade: source (tables of the normal distribution). */
export const FOUR_IN_FIVE = 1.28;

/**
 * What a topped crown warms in the sun, °F an hour, faster than the air. Grade: source (Michigan State University
 * Extension, "Beat the heat when topping sugarbeets": trial of 4 October 2011).
 */
export const TOPPED_WARMING_F_PER_HOUR = 5;

/** The most by which a topped crown was warmer than beets with leaves. Grade: source (the same trial). */
export const TOPPED_WARMEST_ABOVE_F = 13.5;
