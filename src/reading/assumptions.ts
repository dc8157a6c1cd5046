/**
 * From which certainty (0-1) of the ranker on something is done. Grade: measured, on learning writers that a ranker
 * had not learned from (tests/reading/training).
 */
export const CERTAINTY = {
  /** A report is taken without asking. */
  booked: 0.72,
  /** A question is answered without asking back: nothing is recorded by it. */
  answered: 0.4,
  /** A reading is among those offered. */
  offered: 0.04,
  /** The chance that it is but talk, above which nothing is offered. */
  talkInRoom: 0.4,
  talkAlone: 0.6,
  /** An act that the grammar has read is believed from here on, */
  agrees: 0.04,
  /** unless the ranker is as sure of another. */
  contradicts: 0.8,
} as const;
