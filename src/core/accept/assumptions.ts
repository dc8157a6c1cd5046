/** Figures by which reports and tickets are accepted; the grades are defined in core/assumptions.ts. */
import type { Fahrenheit, Lb, Minutes } from '../units.ts';

/** Weights outside these are warned of; a truck's own setting and its own tickets go before them. Grade: from memory. */
export const USUAL_LB = {
  first: { min: 45_000, max: 110_000 },
  second: { min: 20_000, max: 42_000 },
  net: { min: 20_000, max: 70_000 },
};

/** How far a truck's second weight may stray from those before: fuel, dirt, mud. Grade: common practice. */
export const TARE_SPREAD_LB: Lb = 2_000;

/** Fewer second weights of a truck do not show its usual one. Grade: chosen. */
export const TARES_TO_LEARN_FROM = 3;

/**
 * Divisions of a vehicle scale of 200,000 lb. Some have 10 or 50 lb, so that a weight between them is only warned of.
 * Grade: source (NIST Handbook 44, Scales 2.20, class III L).
 */
export const SCALE_DIVISION_LB: Lb = 20;

/** Without a serial, the same net of the same truck within this time is the same ticket sent twice. Grade: chosen. */
export const SAME_TICKET_MIN: Minutes = 20;

/** A question about what a message meant can be answered so long: after it the day has moved on. Grade: chosen. */
export const OFFER_HOLDS_MIN: Minutes = 30;

/** A drill ends by itself after this. Grade: chosen: long enough for the reminder and the names to go out. */
export const DRILL_MIN: Minutes = 30;

/**
 * Limit for air and for roots of a station that is added to an operation without any; only a station's own word should
 * change it. Grade: common practice, for roots that are stored long.
 */
export const STATION_LIMIT_F: Fahrenheit = 55;

/** Less sugar a short ton and day is not worth a word. Grade: chosen: a tenth of what a pile loses anyhow. */
export const LEAST_LOSS_LB: Lb = 0.05;
