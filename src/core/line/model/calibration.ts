/**
 * Keeps the 80 % intervals honest: they are stretched or shrunk by how well earlier ones covered the waits of the
 * operation's own trucks, separately for each lead and across days.
 *
 * Adaptive conformal inference: Gibbs & Candes, NeurIPS 2021, https://arxiv.org/abs/2106.00170. A miss lowers alpha,
 * so that the next interval is wider.
 */
import type { Minutes } from '../../units.ts';

/** What is remembered of one lead. `scores`: of the newest forecasts, oldest first. */
interface LeadCalibration {
  alpha: number;
  scores: readonly number[];
}

/** By lead: 0-7, 8-22, 23-37, 38 and more minutes. */
export type Calibration = readonly LeadCalibration[];

export interface WaitInterval {
  lowMin: Minutes;
  medianMin: Minutes;
  highMin: Minutes;
}

/** Leads that are calibrated apart, ascending. Grade: chosen, for "now" and for hauls of up to 45 min. */
export const LEADS_MIN: readonly Minutes[] = [0, 15, 30, 45];
/** A lead belongs to the nearest of them: its memory ends half way to the next. */
const LEAD_ENDS_MIN = LEADS_MIN.slice(1).map((leadMin, before) => ((LEADS_MIN[before] ?? 0) + leadMin) / 2);
/** Share of the intervals that are to be missed: they are 80 % intervals. */
const TARGET_MISS = 0.2;
/** How far one hit or miss moves alpha. Grade: chosen; Gibbs & Candes used 0.005 on longer series (from memory). */
const GAMMA = 0.02;
/** Grade: chosen. */
const SCORES_KEPT = 300;
/** Fewer scores of a lead change no interval. Grade: chosen: of 30, six are expected to miss. */
export const FEWEST_SCORES = 30;
/** So that an interval of width 0 can be missed by a little, and stretched. Grade: chosen. */
const PAD_MIN = 2;

export const FRESH_CALIBRATION: Calibration = LEADS_MIN.map(() => ({
  alpha: TARGET_MISS,
  scores: [],
}));

const leadIndex = (leadMin: Minutes): number => {
  const index = LEAD_ENDS_MIN.findIndex((end) => leadMin < end);
  return index < 0 ? LEAD_ENDS_MIN.length : index;
};

/** Distance of the wait from the median, over the length of the interval on that side; > 1 = outside. */
const scoreOf = ({ lowMin, medianMin, highMin }: WaitInterval, waitMin: Minutes): number =>
  Math.max(
    (medianMin - waitMin) / (medianMin - lowMin + PAD_MIN),
    (waitMin - medianMin) / (highMin - medianMin + PAD_MIN),
  );

/** The ceil((1 - alpha)(k + 1))-th smallest of k scores; 1 while there are too few. */
const stretchOf = ({ alpha, scores }: LeadCalibration): number => {
  if (scores.length < FEWEST_SCORES) return 1;
  const sorted = [...scores].sort((a, b) => a - b);
  const rank = Math.ceil((1 - alpha) * (sorted.length + 1));
  return sorted[Math.min(sorted.length, Math.max(1, rank)) - 1] ?? 1;
};

const stretched = ({ lowMin, medianMin, highMin }: WaitInterval, stretch: number): WaitInterval => ({
  lowMin: Math.max(0, medianMin - stretch * (medianMin - lowMin + PAD_MIN)),
  medianMin,
  highMin: medianMin + stretch * (highMin - medianMin + PAD_MIN),
});

/** `raw` as the paths gave it. */
export const calibrated = (calibration: Calibration, leadMin: Minutes, raw: WaitInterval): WaitInterval => {
  const lead = calibration[leadIndex(leadMin)];
  return lead === undefined || lead.scores.length < FEWEST_SCORES ? raw : stretched(raw, stretchOf(lead));
};

/** Takes in a ticket of ours: the wait that was forecast as `raw`, `leadMin` ahead, turned out as `waitMin`. */
export const learnedFrom = (
  calibration: Calibration,
  leadMin: Minutes,
  raw: WaitInterval,
  waitMin: Minutes,
): Calibration =>
  calibration.map((lead, index) => {
    if (index !== leadIndex(leadMin)) return lead;
    const score = scoreOf(raw, waitMin);
    const missed = score > stretchOf(lead) ? 1 : 0;
    return {
      alpha: lead.alpha + GAMMA * (TARGET_MISS - missed),
      scores: [...lead.scores, score].slice(-SCORES_KEPT),
    };
  });
