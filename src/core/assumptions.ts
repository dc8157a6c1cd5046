/**
 * Figures of the trade and of the bot that are not settings. Here are those that several rooms share; each room has its
 * own assumptions.ts, and the line model keeps tuning figures that are used once beside their formula.
 *
 * The comment of each figure has its grade, which says how far to trust it:
 * - source: published; the comment names where.
 * - measured: by us; the comment says on what.
 * - common practice: what crews do as far as we know, without a source.
 * - chosen: by us, with the reason if it is more than a round figure; a value nearby would do as well.
 * - from memory: of a source that was not looked up again.
 */

import type { Minutes } from './units.ts';

/** Hour of wall time at which the crew's day begins: it is awake, and digs unless a stop is in force. Grade: common practice. */
export const DAY_BEGINS_HOUR = 5;

/**
 * How far ahead of its message a report may lie, because the clocks of phones, scales and the bot differ. Later than
 * that is a report of the future. Grade: chosen.
 */
export const CLOCKS_APART_MIN: Minutes = 10;

/** How long filling a truck takes (20 tons: 10-12 min), until the crew's reports show it. Grade: common practice. */
export const USUAL_FILL_MIN: Minutes = 10;
