/**
 * Figures of the trade and of the bot that no setting gives. Here are those of several rooms; each room keeps its own
 * in its assumptions.ts, and the line model keeps a tuning figure that is used once beside its formula.
 *
 * The comment of each figure ends with its grade, which says how far to trust it:
 * - source: published; the comment names where.
 * - measured: by us; the comment says on what.
 * - common practice: what crews do as far as we know, without a source.
 * - chosen: by us, with the reason if it is more than a round figure; a value nearby would do as well.
 * - from memory: of a source that was not looked up again.
 */

import type { Minutes } from './units.ts';

/** Hour of wall time at which the crew's day begins: it is awake, and digs unless something holds it. Grade: common practice. */
export const DAY_BEGINS_HOUR = 5;

/**
 * How far ahead of its message a report may lie, because the clocks of phones, scales and the bot differ. Later than
 * that is a report of the future. Grade: chosen.
 */
export const CLOCKS_APART_MIN: Minutes = 10;
