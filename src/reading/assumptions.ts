import type { Lb, Minutes } from '../core/units.ts';

/**
 * From which certainty (0-1) of the ranker on something is done. Grade: measured, on learning writers that a ranker
 * had not learned from (tests/reading/training).
 */
export const CERTAINTY = {
  /** A report is taken without asking. */
  booked: 0.5,
  /** A question is answered without asking back: nothing is recorded by it. */
  answered: 0.35,
  /** A reading is among those offered. */
  offered: 0.03,
  /** The chance that it is but talk, above which nothing is offered. */
  talkInRoom: 0.25,
  talkAlone: 0.6,
  /** Danger that the grammar has read is alarmed at once from here on, else asked about. */
  alarm: 0.1,
  /** From here on the sender is asked whether somebody is in danger. */
  danger: 0.15,
  /** An act that the grammar has found among other words is believed from here on. */
  agrees: 0.5,
  /** It is doubted where the ranker is as sure of something else. */
  contradicts: 0.8,
} as const;

/** No one field of a farm has more. Grade: chosen. */
export const MOST_ACRES = 1000;

/**
 * "Lunch, back at 12:30": a time that is so soon, and was so long ago, is the end of a break and not its beginning.
 * Grade: chosen.
 */
export const BREAK_MIN: Readonly<Record<'soon' | 'longAgo', Minutes>> = { soon: 240, longAgo: 90 };

/**
 * Between these a number of a ticket can be that weight, so that numbers without a label are told apart. Grade: from
 * memory: trucks of the American West, tandem to long combinations.
 */
export const TICKET_LB: Readonly<Record<'gross' | 'tare' | 'net', { min: Lb; max: Lb }>> = {
  gross: { min: 46_000, max: 130_000 },
  tare: { min: 16_000, max: 45_000 },
  net: { min: 15_000, max: 80_000 },
};

/** Most of them weigh so much. Grade: from memory, as above. */
export const USUAL_LB: typeof TICKET_LB = {
  gross: { min: 60_000, max: 110_000 },
  tare: { min: 20_000, max: 36_000 },
  net: { min: 30_000, max: 60_000 },
};

/** A bare number between these, °F, can be a root's at harvest. Grade: from memory: soil from frost to a hot afternoon. */
export const ROOT_SAID_F = { min: 25, max: 95 } as const;

/** A report of a time longer ago is told late, or meant otherwise, and is not booked without asking. Grade: chosen. */
export const FRESH_MIN: Minutes = 180;
